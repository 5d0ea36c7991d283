/** A melody on its way to a harp: notes one after the other, wherever they were read from. */

import { barTicks, METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import { MOST_PHRASE_BARS } from '../phrase/read-phrase';
import type { PitchClass } from '../theory/units';
import { counted } from '../theory/wording';

/** A note of a melody: ticks (480 to the quarter) and MIDI key; null for a rest. */
export interface MelodyNote {
  readonly length: number;
  readonly key: number | null;
  /** How it is played as tab, where the file says it; believed where it gives the key on the harp looked at. */
  readonly tab?: string;
  /** Softer or louder than usual, as tab writes it. */
  readonly velocity?: number;
}

/** A melody as it was read from a file. */
export interface Melody {
  readonly name: string;
  readonly meter: MeterName;
  /** The key note, where the file says it. */
  readonly tonic: PitchClass | null;
  readonly notes: readonly MelodyNote[];
  /** What the file had that the melody has not, in sentences. */
  readonly left: readonly string[];
}

/** A note at its place, ticks from the beginning; notes may sound together. */
export interface PlacedKey extends MelodyNote {
  readonly at: number;
  readonly key: number;
}

/** What is known of a melody beside its notes. */
export type MelodyHead = Omit<Melody, 'notes' | 'left'>;

/** Most notes of a melody: sixteen bars of sixteenths. */
export const MOST_NOTES = 256;

/** Notes that overlap by less than this were meant one after the other: a thirty-second. */
const SLACK = 60;

/** The highest of notes that begin together, each ending where the next begins. */
const oneVoice = (placed: readonly PlacedKey[], left: Set<string>): readonly PlacedKey[] => {
  const kept: PlacedKey[] = [];
  for (const note of placed.toSorted((a, b) => a.at - b.at || b.key - a.key)) {
    const last = kept.at(-1);
    if (last !== undefined && note.at === last.at) {
      const isGroup = note.tab !== undefined && note.tab === last.tab;
      if (note.key !== last.key && !isGroup) left.add('Of notes that begin together the highest was taken.');
      continue;
    }
    if (last !== undefined && note.at < last.at + last.length) {
      if (last.at + last.length - note.at > SLACK) left.add('A note that sounded on under the next was cut.');
      kept[kept.length - 1] = { ...last, length: note.at - last.at };
    }
    kept.push(note);
  }
  return kept;
};

/** Notes and the rests between them, up to the end of a bar. */
const withRests = (placed: readonly PlacedKey[], bar: number): readonly MelodyNote[] => {
  const notes: MelodyNote[] = [];
  let now = 0;
  const rest = (until: number): void => {
    if (until > now) notes.push({ length: until - now, key: null });
  };
  for (const { at, ...note } of placed) {
    rest(at);
    notes.push(note);
    now = at + note.length;
  }
  rest(Math.ceil(now / bar) * bar);
  return notes;
};

/**
 * Placed notes as a melody of one voice, as long as a phrase may be. Empty bars before it go; what else is lost is
 * added to `left`. A sentence where no note is left.
 */
export const melodyFrom = (
  head: MelodyHead,
  placed: readonly PlacedKey[],
  left: Set<string>,
): Melody | string => {
  const bar = barTicks(METERS[head.meter]);
  const single = oneVoice(
    placed.filter(({ length, key }) => length > 0 && key >= 0 && key <= 127),
    left,
  );
  const [first] = single;
  if (first === undefined)
    return 'There are no notes with a pitch in it, so there is nothing to find on a harp.';
  const from = Math.floor(first.at / bar) * bar;
  if (from > 0) left.add(`${counted(from / bar, 'empty bar')} before the first note went.`);
  const most = MOST_PHRASE_BARS * bar;
  const moved = single.map((note) => ({ ...note, at: note.at - from }));
  const kept = moved
    .filter(({ at }) => at < most)
    .slice(0, MOST_NOTES)
    .map((note) => ({ ...note, length: Math.min(note.length, most - note.at) }));
  const lost = moved.length - kept.length;
  if (lost > 0)
    left.add(`A phrase holds ${MOST_PHRASE_BARS} bars: ${counted(lost, 'note')} after them were left out.`);
  return { ...head, notes: withRests(kept, bar), left: [...left] };
};

/** Says how a meter that is no phrase's is written. */
export const noteMeter = (left: Set<string>, written: string, meter: MeterName): void => {
  if (written !== meter) left.add(`Its meter, ${written}, is written in bars of ${meter}; the lengths stay.`);
};
