import { USUAL_VELOCITY } from '../formats/phrase-midi';
import type { Harp, Sound } from '../harp/harp';
import { soundId } from '../harp/tab';
import { DYNAMICS, USUAL_DYNAMIC, velocityBy } from '../phrase/dynamics';
import { type PhraseNote, phraseSound } from '../phrase/phrase';
import { readNote } from '../phrase/read-note';
import { asTicks } from '../theory/units';
import type { MelodyNote } from './melody';

/** The dynamic whose velocity is nearest. */
const dynamicOf = (velocity: number, accented: boolean) =>
  DYNAMICS.toSorted(
    (a, b) =>
      Math.abs(USUAL_VELOCITY + velocityBy(a, accented) - velocity) -
      Math.abs(USUAL_VELOCITY + velocityBy(b, accented) - velocity),
  )[0];

/** A note of a melody as a phrase has it: by the sound found, or by its own tab where that sound is part of it. */
export const phraseNoteOf = (
  { tab, length, velocity }: MelodyNote,
  sound: Sound,
  { at, harp }: { readonly at: number; readonly harp: Harp },
): PhraseNote => {
  const place = { at: asTicks(at), length: asTicks(length) };
  const own = tab === undefined ? null : readNote(tab, { text: tab, line: 1, column: 1 });
  const ids = own?.sounds.map(soundId) ?? [];
  const isThere = ids.every((id) => harp.sounds.some((each) => soundId(each) === id));
  if (own === null || !ids.includes(soundId(sound)) || !isThere)
    return { ...place, sounds: [phraseSound(sound)] };
  const dynamic = velocity === undefined ? USUAL_DYNAMIC : dynamicOf(velocity, own.manner.accent === true);
  const loud = dynamic === undefined || dynamic === USUAL_DYNAMIC ? {} : { dynamic };
  return { ...place, sounds: own.sounds.map(phraseSound), ...loud, ...own.manner };
};
