import type { ComponentType, ReactNode } from 'react';
import { BandTurnSign } from '../chart/band-turn-sign';
import { ChartView } from '../chart/chart-view';
import { CountInSign } from '../chart/count-in-sign';
import { HarpQuestion } from '../chart/harp-question';
import { NextHarpSign } from '../chart/next-harp-sign';
import { SetSign } from '../chart/set-sign';
import { TurnSign } from '../chart/turn-sign';
import { WarmUpSign } from '../chart/warm-up-sign';
import { createFetched } from '../controls/fetched';
import { TempoField } from '../controls/tempo-field';
import { ChorusSign } from '../ear/chorus-sign';
import { ListenButton } from '../ear/listen-button';
import { HolesTogether } from '../fit/holes-together';
import { WhatFits } from '../fit/what-fits';
import { HarpMap } from '../harp-map/harp-map';
import { PracticeSign } from '../state/practice-context';
import { Announcer } from './announcer';
import type { PanelId } from './entries';
import { Masthead } from './masthead';
import { Notices } from './notices';
import { SongPart } from './song-part';
import { StageButton } from './stage-place';
import { Volume } from './volume';

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
    { title: 'The announcements', Show: Announcer },
    { title: 'The set', Show: SetSign },
  ],
  form: [
    { title: 'The chart', Show: ChartView },
    { title: 'The question about the harp', Show: HarpQuestion },
    { title: 'The count-in', Show: CountInSign },
    { title: 'The sign for the band’s turn', Show: BandTurnSign },
    { title: 'The sign for the next harp', Show: NextHarpSign },
    { title: 'The sign for your turn', Show: TurnSign },
    { title: 'The warm-up', Show: WarmUpSign },
    { title: 'The list of holes together', Show: HolesTogether },
    { title: 'The line or the calls', Show: PracticeSign },
    { title: 'What was heard', Show: ChorusSign },
  ],
  reading: [
    { title: 'What fits', Show: WhatFits },
    { title: 'The map of the harp', Show: HarpMap },
  ],
  transport: [
    { title: 'The tempo', Show: TempoField },
    { title: 'The choice of song', Show: SongPart },
    { title: 'The volume', Show: Volume },
    { title: 'The microphone', Show: ListenButton },
    { title: 'The button for Stage', Show: StageButton },
  ],
};

/** What panels are given. */
export interface PanelProps {
  readonly onClose: () => void;
}

type LaterParts = typeof import('./later-parts');

/** The parts that are fetched after the page is first drawn. */
export const LATER_PARTS = createFetched<LaterParts>(() => import('./later-parts'));

/** Shows a component out of the parts that are fetched later. */
const later =
  <Given extends object>(pick: (parts: LaterParts) => ComponentType<Given>) =>
  (given: Given): ReactNode => {
    const Show = pick(LATER_PARTS.read());
    return <Show {...given} />;
  };

/** The song on paper. */
export const Paper = later(({ Paper }) => Paper);

/** The tour of the page. */
export const Tour = later(({ Tour }) => Tour);

/** The panels. */
export const PANELS: Readonly<Record<PanelId, PagePart<PanelProps>>> = {
  song: { title: 'The song panel', Show: later(({ SongPanel }) => SongPanel) },
  harp: { title: 'The harp panel', Show: later(({ HarpPanel }) => HarpPanel) },
  chart: { title: 'The chart panel', Show: later(({ ChartPanel }) => ChartPanel) },
  practise: { title: 'The practice panel', Show: later(({ PractisePanel }) => PractisePanel) },
  band: { title: 'The band panel', Show: later(({ BandPanel }) => BandPanel) },
  mixer: { title: 'The mixer', Show: later(({ MixerPanel }) => MixerPanel) },
  songs: { title: 'The songs of the book', Show: later(({ SongsPanel }) => SongsPanel) },
  sets: { title: 'The sets of the book', Show: later(({ SetsPanel }) => SetsPanel) },
  'take-away': { title: 'The panel for taking away', Show: later(({ TakeAwayPanel }) => TakeAwayPanel) },
  help: { title: 'The help panel', Show: later(({ HelpPanel }) => HelpPanel) },
  signs: { title: 'The list of signs', Show: later(({ SignsPanel }) => SignsPanel) },
  care: { title: 'The care panel', Show: later(({ CarePanel }) => CarePanel) },
};
