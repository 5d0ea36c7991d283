import type { ReactNode } from 'react';
import { BandSheet } from './band-sheet';
import { BandTurnSign } from './band-turn-sign';
import { CareSheet } from './care-sheet';
import { ChartSheet } from './chart-sheet';
import { ChartView } from './chart-view';
import { CountInSign } from './count-in-sign';
import { HarpMap } from './harp-map';
import { HarpSheet } from './harp-sheet';
import { HolesTogether } from './holes-together';
import { Masthead, type SheetId } from './masthead';
import { MixerSheet } from './mixer-sheet';
import { NextHarpSign } from './next-harp-sign';
import { Notices } from './notices';
import { PracticeSign } from './practice-context';
import { PractiseSheet } from './practise-sheet';
import { SongPart } from './song-part';
import { SongSheet } from './song-sheet';
import { TakeAwaySheet } from './take-away-sheet';
import { TempoField } from './tempo-field';
import { TurnSign } from './turn-sign';
import { WarmUpSign } from './warm-up-sign';
import { WhatFits } from './what-fits';

export type PanelId = SheetId | 'song';

/** What every part of the page is given; most need none of it. */
export interface PartProps {
  /** The panel that is open. */
  readonly open: PanelId | null;
  readonly onOpen: (id: PanelId) => void;
  readonly narrow: boolean;
}

/** A part of the page that can fail alone. */
export interface PagePart<Given> {
  /** As a sentence about it begins. */
  readonly title: string;
  readonly Show: (given: Given) => ReactNode;
}

/** The parts of the page by place, in their order. */
export const VIEWS: Readonly<
  Record<'head' | 'form' | 'reading' | 'transport', readonly PagePart<PartProps>[]>
> = {
  head: [
    { title: 'The head of the page', Show: Masthead },
    { title: 'The list of notices', Show: Notices },
  ],
  form: [
    { title: 'The chart', Show: ChartView },
    { title: 'The count-in', Show: CountInSign },
    { title: 'The sign for the band’s turn', Show: BandTurnSign },
    { title: 'The sign for the next harp', Show: NextHarpSign },
    { title: 'The sign for your turn', Show: TurnSign },
    { title: 'The warm-up', Show: WarmUpSign },
    { title: 'The list of holes together', Show: HolesTogether },
    { title: 'The line or the calls', Show: PracticeSign },
  ],
  reading: [
    { title: 'What fits', Show: WhatFits },
    { title: 'The map of the harp', Show: HarpMap },
  ],
  transport: [
    { title: 'The tempo', Show: TempoField },
    { title: 'The choice of song', Show: SongPart },
  ],
};

/** The panels. */
export const PANELS: Readonly<Record<PanelId, PagePart<{ readonly onClose: () => void }>>> = {
  song: { title: 'The song panel', Show: SongSheet },
  harp: { title: 'The harp panel', Show: HarpSheet },
  chart: { title: 'The chart panel', Show: ChartSheet },
  practise: { title: 'The practice panel', Show: PractiseSheet },
  band: { title: 'The band panel', Show: BandSheet },
  mixer: { title: 'The mixer', Show: MixerSheet },
  'take-away': { title: 'The panel for taking away', Show: TakeAwaySheet },
  care: { title: 'The care panel', Show: CareSheet },
};
