import { asSeconds } from '../../core/theory/units';
import type { Voice, VoiceNote } from '../synthesis/voice';
import { strikeDrum, struckLoudness } from './drum-hit';
import type { DrumRecipe } from './drum-recipe';

/** The sounds of a kit by General MIDI percussion key. */
export type KitSounds = ReadonlyMap<number, DrumRecipe>;

/**
 * What stands in for General MIDI keys that a kit does not have: another of the same family. Names of the keys: General
 * MIDI percussion map (GM System Level 1).
 */
const STAND_INS: ReadonlyMap<number, number> = new Map([
  [39, 38], // hand clap: snare
  [52, 49], // china cymbal: crash
  [55, 49], // splash: crash
  [57, 49], // crash 2: crash
  [58, 54], // vibraslap: tambourine
  [59, 51], // ride 2: ride
  [65, 50], // timbales: toms
  [66, 47],
  [67, 56], // agogos: cowbell
  [68, 56],
  [69, 70], // cabasa: maracas
  [71, 75], // whistles: claves
  [72, 75],
  [73, 70], // guiros: maracas
  [74, 70],
  [78, 62], // cuicas: congas
  [79, 64],
  [80, 53], // triangles: ride bell
  [81, 53],
]);

/** The kit's own sound of a key, or its stand-in's, or that of the nearest key the kit has (the lower of two). */
const soundOfKey = (sounds: KitSounds, midi: number): DrumRecipe => {
  const key = Math.round(midi);
  const own = sounds.get(key) ?? sounds.get(STAND_INS.get(key) ?? key);
  if (own) return own;
  const nearest = [...sounds.entries()].reduce((best, entry) => {
    const difference = Math.abs(entry[0] - key) - Math.abs(best[0] - key);
    return difference < 0 || (difference === 0 && entry[0] < best[0]) ? entry : best;
  });
  return nearest[1];
};

/** A voice that strikes a kit. Hits ring by themselves: they have no loop, and their release is their whole length. */
export const kitVoice =
  (sounds: KitSounds): Voice =>
  (note) => {
    const recipe = soundOfKey(sounds, note.midi);
    return { samples: strikeDrum(recipe, note), loop: null, release: asSeconds(recipe.seconds) };
  };

/** How loud a kit's hits are, in LUFS over their first 400 ms, without computing them. */
export const kitLoudness =
  (sounds: KitSounds) =>
  (note: VoiceNote): number =>
    struckLoudness(soundOfKey(sounds, note.midi), note);
