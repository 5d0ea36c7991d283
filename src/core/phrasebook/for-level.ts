/** The same call reduced to what each level of a class reaches. */

import { METERS } from '../chart/build-chart';
import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import { soundId } from '../harp/tab';
import { onHarp, type Phrase, type PhraseNote, phraseSound } from '../phrase/phrase';
import type { ClassLevel } from '../practice/class-levels';
import { asTicks } from '../theory/units';

/** The nearest sound in reach, an octave counting as near as a semitone; of two the one on the same breath. */
const nearest = (wanted: Sound, harp: Harp, technique: TechniqueChoice): Sound | null => {
  const distance = (sound: Sound): number => {
    const straight = Math.abs(sound.pitch - wanted.pitch);
    const octave = straight % 12 === 0 && straight > 0 ? 0.75 * (straight / 12) : straight;
    return Math.min(straight, octave) + (sound.breath === wanted.breath ? 0 : 0.5);
  };
  return (
    harp.sounds
      .filter((sound) => isInReach(sound, technique))
      .toSorted((a, b) => distance(a) - distance(b))[0] ?? null
  );
};

/** Notes with the short ones taken into those before them. */
const thinned = (notes: readonly PhraseNote[], shortest: number): readonly PhraseNote[] => {
  const kept: PhraseNote[] = [];
  for (const note of notes) {
    const last = kept.at(-1);
    const joins = last !== undefined && note.length < shortest && note.at <= last.at + last.length;
    if (joins) kept[kept.length - 1] = { ...last, length: asTicks(note.at + note.length - last.at) };
    else kept.push(note);
  }
  return kept;
};

/** A phrase as a level of the class plays it: what is out of its reach is the nearest note in it, or plainer. */
export const forLevel = (phrase: Phrase, level: ClassLevel, harp: Harp): Phrase => {
  const { technique, shortest } = level;
  const notes = onHarp(phrase, harp).notes.map(({ note, sounds }): PhraseNote => {
    const reached = sounds.every((sound) => isInReach(sound, technique));
    const curved = note.curve !== undefined && !technique.drawBends;
    if (reached && !curved) return note;
    const { curve: _, shake: __, slide: ___, ...plain } = note;
    const found = new Map(
      sounds.flatMap((sound) => {
        const near = nearest(sound, harp, technique);
        return near === null ? [] : [[soundId(near), near] as const];
      }),
    );
    const [first] = found.values();
    const kept = [...found.values()].filter(({ breath }) => breath === first?.breath);
    return { ...plain, sounds: kept.map(phraseSound) };
  });
  const beat = METERS[phrase.meter].beatTicks;
  return {
    ...phrase,
    notes: thinned(
      notes.filter(({ sounds }) => sounds.length > 0),
      shortest * beat,
    ),
  };
};
