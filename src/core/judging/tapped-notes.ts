import { median } from '../theory/statistics';
import type { AskedNote, PlayedNote } from './asked-notes';

/**
 * How far a player's taps as a whole are taken to lie before or behind the music, in seconds: taps lead a beat by some
 * tens of milliseconds in most people (review by Repp and Su, Psychon. Bull. Rev. 20, 2013; from memory).
 */
const MOST_LEAD = 0.08;

/**
 * Taps in place of notes, for players without a microphone: each stands for the asked note that begins nearest, in tune
 * and held, so that only the rhythm is judged. The player's usual lead is taken off.
 * @param taps seconds from the phrase's beginning, in order.
 */
export const tappedNotes = (asked: readonly AskedNote[], taps: readonly number[]): readonly PlayedNote[] => {
  const nearest = (tap: number): AskedNote | undefined =>
    asked.toSorted((a, b) => Math.abs(a.at - tap) - Math.abs(b.at - tap))[0];
  const late = median(taps.flatMap((tap) => tap - (nearest(tap)?.at ?? tap)));
  const lead = Math.max(-MOST_LEAD, Math.min(MOST_LEAD, late));
  return taps.flatMap((tap): readonly PlayedNote[] => {
    const want = nearest(tap - lead);
    if (want === undefined) return [];
    const { length, pitches, sound } = want;
    return [{ at: tap - lead, length, pitch: pitches[0] ?? sound.pitch, sounds: [sound] }];
  });
};
