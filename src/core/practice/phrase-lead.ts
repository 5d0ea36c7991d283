import { METERS } from '../chart/build-chart';
import type { Meter } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import { type LeadNote, type LeadSound, leadNotes } from '../harp/lead';
import { asMidi, asTicks, type Ticks } from '../theory/units';
import { onHarp, type Phrase } from './phrase';

/** A sixth of the beat that is no half: part of a triplet, which players keep even. */
const isTriplet = (within: number, beatTicks: number): boolean =>
  (within * 6) % beatTicks === 0 && (within * 2) % beatTicks !== 0;

/**
 * Where a written tick falls when off-beats swing: the first half of a beat is stretched to the long share, the
 * second pressed into the short one, and triplets stay. Beats of compound meters are divided in three already and
 * never swing.
 * @param ratio long : short, 1 for even eighths.
 */
export const swungTick = (tick: number, { name, beatTicks }: Meter, ratio: number): number => {
  const within = tick % beatTicks;
  if (name === '12/8' || name === '6/8' || isTriplet(within, beatTicks)) return tick;
  const half = beatTicks / 2;
  const long = (ratio / (ratio + 1)) * beatTicks;
  const swung = within < half ? (within / half) * long : long + ((within - half) / half) * (beatTicks - long);
  return tick - within + swung;
};

/** Where and how a phrase is played. */
export interface PhrasePlace {
  readonly harp: Harp;
  /** Where its first tick falls. */
  readonly at: Ticks;
  /** Long : short of the off-beats, 1–3.5. */
  readonly swing: number;
}

interface PlacedNote extends LeadSound {
  /** Further holes of the same breath. */
  readonly others: readonly Sound[];
}

/** Notes at their swung places; where a triplet meets a swung eighth, each still begins after the one before. */
const placeNotes = (phrase: Phrase, { harp, at, swing }: PhrasePlace): readonly PlacedNote[] => {
  const meter = METERS[phrase.meter];
  const place = (tick: number): number => at + Math.round(swungTick(tick, meter, swing));
  const { notes } = onHarp(phrase, harp);
  let earliest: number = at;
  const starts = notes.map((note) => {
    const start = Math.max(earliest, place(note.at));
    earliest = start + 1;
    return start;
  });
  return notes.flatMap((note, i) => {
    const [sound, ...others] = note.sounds;
    const start = starts[i] ?? at;
    const end = Math.max(
      start + 1,
      Math.min(place(note.at + note.length), starts[i + 1] ?? Number.MAX_VALUE),
    );
    return sound === undefined ? [] : [{ at: asTicks(start), length: asTicks(end - start), sound, others }];
  });
};

/** A phrase as the harp voice plays it, swung, in order; sounds the harp lacks are silent. */
export const phraseLead = (phrase: Phrase, where: PhrasePlace): readonly LeadNote[] => {
  const placed = placeNotes(phrase, where);
  return leadNotes(placed).flatMap((note, i): readonly LeadNote[] => {
    const { part, at, length, velocity } = note;
    const others = placed[i]?.others ?? [];
    return [
      note,
      ...others.map(({ pitch }): LeadNote => ({ part, at, length, pitch: asMidi(pitch), velocity })),
    ].sort((a, b) => a.pitch - b.pitch);
  });
};
