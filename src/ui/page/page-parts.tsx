import type { ComponentType, ReactNode } from 'react';
import { ChartView } from '../chart/chart-view';
import { HarpQuestion } from '../chart/harp-question';
import { TempoField } from '../controls/tempo-field';
import { ListenButton } from '../ear/listen-button';
import { HolesTogether } from '../fit/holes-together';
import { WhatFits } from '../fit/what-fits';
import { HarpMap } from '../harp-map/harp-map';
import { createFetched, useHere } from '../state/fetched';
import { PracticeSign } from '../state/practice-context';
import { PAGES, type PanelId, type PanelPage, type PanelProps } from './entries';
import { Masthead } from './masthead';
import { Notices } from './notices';
import { SongPart } from './song-part';
import { StageButton } from './stage-place';
import { Volume } from './volume';

/** What every part of the page is given; most need none of it. */
export interface PartProps {
  /** The panel that is open, which the head alone is told. */
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

type LaterParts = typeof import('./later-parts');

/** The parts that are fetched after the page is first drawn. */
export const LATER_PARTS = createFetched<LaterParts>(() => import('./later-parts'));

/** A view that nothing needs before the page is drawn: its place is empty until what comes later is here. */
const whenHere = (pick: (parts: LaterParts) => ComponentType) => (): ReactNode => {
  const parts = useHere(LATER_PARTS);
  if (parts === null) return null;
  const Show = pick(parts);
  return <Show />;
};

/** The parts of the page by place, in their order. */
export const VIEWS: Readonly<
  Record<'head' | 'form' | 'reading' | 'transport', readonly PagePart<PartProps>[]>
> = {
  head: [
    { title: 'The head of the page', Show: Masthead },
    { title: 'The list of notices', Show: Notices },
    { title: 'The set', Show: whenHere(({ SetSign }) => SetSign) },
  ],
  form: [
    { title: 'The chart', Show: ChartView },
    { title: 'The question about the harp', Show: HarpQuestion },
    { title: 'The count-in', Show: whenHere(({ CountInSign }) => CountInSign) },
    { title: 'The sign for the band’s turn', Show: whenHere(({ BandTurnSign }) => BandTurnSign) },
    { title: 'The sign for the next harp', Show: whenHere(({ NextHarpSign }) => NextHarpSign) },
    { title: 'The sign for your turn', Show: whenHere(({ TurnSign }) => TurnSign) },
    { title: 'What came of your answer', Show: whenHere(({ TradeResult }) => TradeResult) },
    { title: 'The sign of today', Show: whenHere(({ TodaySign }) => TodaySign) },
    { title: 'The signs of the chorus', Show: whenHere(({ ChorusMarks }) => ChorusMarks) },
    { title: 'The warm-up', Show: whenHere(({ WarmUpSign }) => WarmUpSign) },
    { title: 'The list of holes together', Show: HolesTogether },
    { title: 'The line or the calls', Show: PracticeSign },
    { title: 'What was heard', Show: whenHere(({ ChorusSign }) => ChorusSign) },
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

/** What is told to those who read the page by ear: outside of stand and Stage, since one of them is always hidden. */
export const Announcements = whenHere(({ Announcer }) => Announcer);

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

const panel = ({ id, title }: PanelPage): PagePart<PanelProps> => ({
  title,
  Show: later((parts) => parts.PANELS[id]),
});

const PANELS: ReadonlyMap<PanelId, PagePart<PanelProps>> = new Map(
  PAGES.map((page) => [page.id, panel(page)]),
);

/** The panel of a page, shown by what `later-parts.ts` has under its id. */
export const panelOf = (id: PanelId): PagePart<PanelProps> => {
  const found = PANELS.get(id);
  if (found === undefined) throw new Error(`No panel ${id}`);
  return found;
};
