import type { Chart } from '../chart/chart';
import type { NoteNames } from '../theory/note-names';
import { counted } from '../theory/wording';

/** A pick-up as it stands before the first bar: `Pick-up: D7, 2 beats`. Null where there is none. */
export const pickUpText = (
  { pickUp, meter }: Pick<Chart, 'pickUp' | 'meter'>,
  names: NoteNames,
): string | null => {
  if (pickUp === undefined) return null;
  const parts = pickUp.chords.map(({ chord, band, length }) => {
    const beats = length / meter.beatTicks;
    const what = band === 'rest' ? 'N.C.' : names.chord(chord);
    return `${what}, ${counted(beats, 'beat')}`;
  });
  return `Pick-up: ${parts.join('; ')}`;
};
