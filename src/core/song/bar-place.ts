import type { Bar, Chart } from '../chart/chart';
import type { NoteNames } from '../theory/note-names';

/** A section's name with its key, where that is another than the chart's: `B, in E♭`. Null in a tune of one section. */
export const sectionName = ({ place, key }: Bar, names: NoteNames): string | null => {
  if (place === undefined) return null;
  const mode = key?.mode === 'minor' ? ' minor' : '';
  const name = place.once === true ? `${place.section}, once` : place.section;
  return key === undefined ? name : `${name}, in ${names.key(key.tonic)}${mode}`;
};

/** The number that stands at a bar, from 1: within its section where the tune has some, otherwise in the chart. */
export const barNumber = (bar: Bar | undefined, index: number): number => (bar?.place?.bar ?? index) + 1;

/** Where a bar stands, in the middle of a sentence: `bar 5`, or `Verse, bar 5`. */
export const barPlace = (bar: Bar | undefined, index: number): string => {
  const number = `bar ${barNumber(bar, index)}`;
  return bar?.place === undefined ? number : `${bar.place.section}, ${number}`;
};

/** The chords of a pick-up as they stand before the first bar: `(D7)`. Null where there is none. */
export const pickUpText = ({ pickUp }: Pick<Chart, 'pickUp'>, names: NoteNames): string | null =>
  pickUp === undefined
    ? null
    : `(${pickUp.chords.map(({ chord, band }) => (band === 'rest' ? 'N.C.' : names.chord(chord))).join(' ')})`;

/** What is played in a bar, in words: `C7 then F7`, `C7, one stroke`, `no chord`. */
export const barChords = ({ chords }: Bar, names: NoteNames): string =>
  chords
    .map(({ chord, band }) => {
      if (band === 'rest') return 'no chord';
      return names.chord(chord) + (band === 'stop' ? ', one stroke' : '');
    })
    .join(' then ');
