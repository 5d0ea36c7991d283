/** What was played becomes a phrase: notes snapped to the grid of the feel. */
import { METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import type { Sound } from '../harp/harp';
import { type Phrase, type PhraseNote, phraseSound } from '../phrase/phrase';
import { createGrid, swungTicks } from '../score/grid';
import { asTicks } from '../theory/units';

/** A note as it was played: ticks from the beginning, swung as the band swings. */
export interface LooseNote {
  readonly at: number;
  readonly length: number;
  /** Holes that sounded on one breath, lowest first; one as a rule. */
  readonly sounds: readonly Sound[];
}

/** How notes are snapped. */
export interface Snapping {
  readonly meter: MeterName;
  /** Ticks of the whole; notes beyond are left out. */
  readonly length: number;
  /** Long : short of the off-beats that were played along to. */
  readonly swing: number;
  /** Steps a beat: 2 eighths, 3 triplets, 4 sixteenths; 0 leaves notes where they are. */
  readonly steps: number;
}

/** Straight places in a beat that the grid has, with where they fall when they swing. */
const placesOf = ({
  meter,
  swing,
  steps,
}: Snapping): readonly (readonly [straight: number, swung: number])[] => {
  const { beatTicks } = METERS[meter];
  const grid = createGrid(METERS[meter], swing);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const straight = (i * beatTicks) / steps;
    return [straight, steps === 3 ? straight : swungTicks(grid, straight)] as const;
  });
};

const snapTo = (at: number, snapping: Snapping, places: ReturnType<typeof placesOf>): number => {
  const { beatTicks } = METERS[snapping.meter];
  const beat = Math.floor(at / beatTicks);
  const within = at - beat * beatTicks;
  const nearest = places.reduce(
    (a, b) => (Math.abs(b[1] - within) < Math.abs(a[1] - within) ? b : a),
    [0, 0],
  );
  return beat * beatTicks + nearest[0];
};

/**
 * Breath and tongue take a moment between notes, and the ear hears an end early: what ends less than this share of a step
 * before the next one was held (by the takes of the tests; no source).
 */
const JOINED = 0.7;

/** Notes as a phrase. Two that fall on one place are one, the longer of them; ends meet the next note where they were near it. */
export const quantise = (notes: readonly LooseNote[], snapping: Snapping): Phrase => {
  const { meter, length, steps } = snapping;
  const { beatTicks } = METERS[meter];
  const step = steps === 0 ? 1 : beatTicks / steps;
  const places = steps === 0 ? [] : placesOf(snapping);
  const snap = (at: number): number => (steps === 0 ? Math.round(at) : snapTo(at, snapping, places));
  const byPlace = new Map<number, LooseNote>();
  for (const note of notes) {
    const at = Math.max(0, snap(note.at));
    const there = byPlace.get(at);
    if (at < length && (there === undefined || there.length < note.length)) byPlace.set(at, note);
  }
  const placed = [...byPlace].sort(([a], [b]) => a - b);
  return {
    meter,
    length: asTicks(length),
    notes: placed.map(([at, note], i): PhraseNote => {
      const next = Math.min(placed[i + 1]?.[0] ?? length, length);
      const end = note.at + note.length;
      const held = next - end < JOINED * step ? next : Math.min(Math.max(at + step, snap(end)), next);
      return {
        at: asTicks(at),
        length: asTicks(Math.max(1, held - at)),
        sounds: note.sounds.map(phraseSound),
      };
    }),
  };
};
