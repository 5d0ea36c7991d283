import { METERS } from '../chart/build-chart';
import type { Harp, Sound } from '../harp/harp';
import { type LeadSound, leadNotes } from '../players/lead';
import { createGrid, swingOver } from '../score/grid';
import type { NoteEvent } from '../score/score';
import { asMidi, asTicks, type Ticks } from '../theory/units';
import { type HarpNote, onHarp, type Phrase } from './phrase';
import { playManner } from './play-manner';

/** Where and how a phrase is played. */
export interface PhrasePlace {
  readonly harp: Harp;
  /** Where its first tick falls. */
  readonly at: Ticks;
  /** Long : short of the off-beats, 1–3.5. */
  readonly swing: number;
}

/** A phrase note where it sounds. */
export interface PlacedPhraseNote extends LeadSound {
  /** Further holes of the same breath. */
  readonly others: readonly Sound[];
  readonly played: HarpNote;
}

/** Notes at their swung places; where a triplet meets a swung eighth, each still begins after the one before. */
export const placePhrase = (
  phrase: Phrase,
  { harp, at, swing }: PhrasePlace,
): readonly PlacedPhraseNote[] => {
  const grid = createGrid(METERS[phrase.meter], swing);
  const { notes } = onHarp(phrase, harp);
  const swung = swingOver(
    grid,
    notes.flatMap((note) => [note.at, note.at + note.length]),
  );
  const place = (tick: number): number => at + Math.round(swung(tick));
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
    return sound === undefined
      ? []
      : [{ at: asTicks(start), length: asTicks(end - start), sound, others, played: note }];
  });
};

/** A phrase as the harp voice plays it, swung, in order; sounds the harp lacks are silent. */
export const phraseLead = (phrase: Phrase, where: PhrasePlace): readonly NoteEvent[] => {
  const placed = placePhrase(phrase, where);
  return leadNotes(placed).flatMap((note, i): readonly NoteEvent[] => {
    const from = placed[i];
    if (from === undefined) return [];
    const events = playManner(note, from.played);
    const [first] = events;
    if (first === undefined || from.others.length === 0) return events;
    const { part, at, length, velocity } = first;
    return [
      first,
      ...from.others.map(({ pitch }): NoteEvent => ({ part, at, length, pitch: asMidi(pitch), velocity })),
    ].sort((a, b) => a.pitch - b.pitch);
  });
};
