/** What is said of the bar that begins, for players who read the page by ear. */
import type { Announcements } from '../settings/page-settings';
import { elementAt } from '../theory/element-at';
import type { NoteNames } from '../theory/note-names';
import { keyName } from '../theory/pitch';
import { barChords, sectionName } from './bar-place';
import type { BarView } from './bar-view';

/** A bar and whose turn it is in it; no turn where nobody trades. */
export interface HeardBar {
  readonly view: BarView;
  readonly turn: string | null;
}

const chordsOf = ({ tune, bar }: BarView, names: NoteNames): string =>
  barChords(elementAt(tune.chart.bars, bar), names);

const sectionOf = ({ tune, bar }: BarView, names: NoteNames): string | null => {
  const at = tune.chart.bars[bar];
  return at === undefined ? null : sectionName(at, names);
};

const keyOf = ({ tune }: BarView, names: NoteNames): string =>
  names.key(
    `${tune.chart.tonic}${tune.chart.mode === 'minor' ? ' minor' : ''}, ${keyName(tune.harp.key, 'major')} harp`,
  );

const PLACES: Readonly<Record<BarView['kind'], string>> = {
  rest: 'Stopped',
  'count-in': 'Count-in',
  intro: 'Intro',
  chorus: 'Chorus',
  ending: 'Ending',
};

const placeOf = ({ kind, chorus }: BarView): string =>
  kind === 'chorus' ? `Chorus ${chorus + 1}` : PLACES[kind];

/** `[now]`, or nothing where it says what was said of the bar before. */
const whereOther = (now: string | null, before: string | null | undefined): readonly string[] =>
  now === null || now === before ? [] : [now];

/**
 * What is new in a bar since the bar before it: form, key, part of the song and turn, and where asked its chords;
 * empty when that is nothing. Never more than one sentence a bar.
 * @param before the bar heard before; null when the band has just begun.
 */
export const announcementOf = (
  wish: Announcements,
  now: HeardBar,
  before: HeardBar | null,
  names: NoteNames,
): string => {
  if (wish === 'off') return '';
  const { view } = now;
  const last = before?.view;
  const said = [
    ...whereOther(view.tune.chart.title, last?.tune.chart.title),
    ...whereOther(keyOf(view, names), last && keyOf(last, names)),
    ...whereOther(placeOf(view), last && placeOf(last)),
    ...whereOther(sectionOf(view, names), last && sectionOf(last, names)),
    ...whereOther(now.turn, before?.turn),
    ...(wish === 'chords' && view.kind !== 'count-in' && view.kind !== 'rest'
      ? whereOther(chordsOf(view, names), last?.kind === view.kind ? chordsOf(last, names) : null)
      : []),
  ];
  return said.join(', ');
};
