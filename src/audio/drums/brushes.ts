import type { Voice } from '../synthesis/voice';
import { BRUSH_SLAP, BRUSH_SWIRL, BRUSH_TAP } from './drum-brushes';
import { type KitSounds, kitLoudness, kitVoice } from './drum-keys';
import { KICK_SOFT } from './drum-kicks';
import type { DrumRecipe } from './drum-recipe';
import { STICK_SOUNDS } from './sticks';

/** Drums and cymbals that brushes strike instead of sticks; the pedal hi-hat and hand percussion stay as they are. */
const BRUSHED: readonly number[] = [41, 42, 43, 45, 46, 47, 48, 49, 50, 51, 53];

/** Wires instead of a tip: a softer onset, less of the stroke's noise, a quieter sound. By design. */
const SOFTER_RISE = 2;
const SOFTER_STRIKE = -5;
const SOFTER_LOUDNESS = -2.5;

const brushed = (recipe: DrumRecipe): DrumRecipe => ({
  ...recipe,
  loudness: recipe.loudness + SOFTER_LOUDNESS,
  rise: recipe.rise + SOFTER_RISE,
  noise: recipe.noise.map(([hz, strike, ring, t60]) => [hz, strike + SOFTER_STRIKE, ring, t60]),
});

/** The kit played with brushes. Taps, slaps and swirls lie where the General MIDI 2 brush kit has them (from memory). */
const BRUSH_SOUNDS: KitSounds = new Map([
  ...[...STICK_SOUNDS].map(([key, recipe]): [number, DrumRecipe] => [
    key,
    BRUSHED.includes(key) ? brushed(recipe) : recipe,
  ]),
  [35, KICK_SOFT],
  [36, KICK_SOFT],
  [38, BRUSH_TAP],
  [39, BRUSH_SLAP],
  [40, BRUSH_SWIRL],
]);

/** The brush kit: tap 38, slap 39, swirl 40, a soft kick; keys it lacks have stand-ins (`soundOfKey`). */
export const brushes: Voice = kitVoice(BRUSH_SOUNDS);

export const brushesLoudness = kitLoudness(BRUSH_SOUNDS);
