import type { BarKey, Chart } from '../chart/chart';
import { keyAt } from '../chart/key-at';
import { onceBars } from '../chart/once';
import { harpKeyFor, positionOf, positionTitle } from '../harp/positions';
import type { NoteNames } from '../theory/note-names';
import { keyName, pitchClassOf } from '../theory/pitch';
import type { PitchClass } from '../theory/units';

/** A section in another key than what is heard before it. */
export interface SectionAhead {
  /** Its name; empty in a tune that names no sections. */
  readonly section: string;
  readonly key: BarKey;
  /** The position there of the harp in hand, 1–12. */
  readonly position: number;
  /** The harp that plays it in the position that was chosen for the song. */
  readonly harpKey: PitchClass;
}

/** What is played on. */
export interface InHand {
  readonly harp: { readonly key: PitchClass };
  /** The position chosen for the song, 1–12. */
  readonly position: number;
}

/** Bars ahead in which a change of key is told: a line of the chart. */
const LINE = 4;

const tonicAt = (chart: Chart, bar: number): PitchClass => pitchClassOf(keyAt(chart, bar).tonic);

const sectionAt = (chart: Chart, bar: number, { harp, position }: InHand): SectionAhead => {
  const key = keyAt(chart, bar);
  const tonic = pitchClassOf(key.tonic);
  return {
    section: chart.bars[bar]?.place?.section ?? '',
    key,
    position: positionOf(harp.key, tonic),
    harpKey: harpKeyFor(tonic, position),
  };
};

/**
 * The change of key that comes within a line of the chart, round the form where another chorus follows; null where none
 * does. @param bar index in the whole chorus.
 */
export const sectionAhead = (
  chart: Chart,
  bar: number,
  inHand: InHand,
  goesOn: boolean,
): SectionAhead | null => {
  const round = goesOn ? chart.bars.map((_, i) => i).slice(onceBars(chart)) : [];
  const ahead = [...chart.bars.map((_, i) => i).slice(bar + 1), ...round].slice(0, LINE);
  const other = ahead.find((each) => tonicAt(chart, each) !== tonicAt(chart, bar));
  return other === undefined ? null : sectionAt(chart, other, inHand);
};

/** Each section in another key than the song's, once, in the order they come. */
export const sectionsElsewhere = (chart: Chart, inHand: InHand): readonly SectionAhead[] => {
  const others = chart.bars.flatMap(({ place }, bar) =>
    tonicAt(chart, bar) === chart.key || (place !== undefined && place.bar > 0)
      ? []
      : [sectionAt(chart, bar, inHand)],
  );
  return [...new Map(others.map((each) => [`${each.section} ${each.key.tonic}`, each])).values()];
};

/** Where a section stands, in words: `Trio in C`. */
export const sectionWords = ({ section, key }: SectionAhead, names: NoteNames): string =>
  `${section === '' ? '' : `${section} `}in ${names.key(`${key.tonic}${key.mode === 'minor' ? ' minor' : ''}`)}`;

/** How it is played, in words: `1st position (straight) on the C harp, or take the F harp`. */
export const sectionWays = (
  { position, harpKey }: SectionAhead,
  { harp }: InHand,
  names: NoteNames,
): string => {
  const named = (key: PitchClass): string => names.key(`${keyName(key, 'major')} harp`);
  const here = `${positionTitle(position)} on the ${named(harp.key)}`;
  return harpKey === harp.key ? here : `${here}, or take the ${named(harpKey)}`;
};
