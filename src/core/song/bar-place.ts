import type { Bar } from '../chart/chart';
import type { NoteNames } from '../theory/note-names';

const named = ({ place, key }: Bar, names: NoteNames, once: string): string | null => {
  if (place === undefined) return null;
  const mode = key?.mode === 'minor' ? ' minor' : '';
  const name = place.section + (place.once === true ? once : '');
  return key === undefined ? name : `${name}, in ${names.key(key.tonic)}${mode}`;
};

/** A section's name with its key, where that is another than the chart's: `B, in E♭`. Null in a tune of one section. */
export const sectionName = (bar: Bar, names: NoteNames): string | null => named(bar, names, ', once');

/** The same as it stands over a bar, short: `Intro 1×`. */
export const sectionSign = (bar: Bar, names: NoteNames): string | null => named(bar, names, ' 1×');

/** The number that stands at a bar, from 1: within its section where the tune has some, otherwise in the chart. */
export const barNumber = (bar: Bar | undefined, index: number): number => (bar?.place?.bar ?? index) + 1;

/** Where a bar stands, in the middle of a sentence: `bar 5`, or `Verse, bar 5`. */
export const barPlace = (bar: Bar | undefined, index: number): string => {
  const number = `bar ${barNumber(bar, index)}`;
  return bar?.place === undefined ? number : `${bar.place.section}, ${number}`;
};

/** A bar as short as can be: `5`, or `Trio 5`. */
export const barSign = (bar: Bar | undefined, index: number): string =>
  bar?.place === undefined ? `${index + 1}` : `${bar.place.section} ${bar.place.bar + 1}`;

/** What is played in a bar, in words: `C7 then F7`, `C7, one stroke`, `no chord`. */
export const barChords = ({ chords }: Pick<Bar, 'chords'>, names: NoteNames): string =>
  chords
    .map(({ chord, band }) => {
      if (band === 'rest') return 'no chord';
      return names.chord(chord) + (band === 'stop' ? ', one stroke' : '');
    })
    .join(' then ');
