import type { Midi } from '../theory/units';
import type { Harp, Sound } from './harp';
import { soundId } from './tab';

/** Which techniques a player uses; natural notes always count. */
export interface TechniqueChoice {
  readonly drawBends: boolean;
  readonly blowBends: boolean;
  readonly overbends: boolean;
  /** Ids of single sounds that do not come yet, whatever their technique. */
  readonly off: readonly string[];
}

/** Everything the harp has. */
export const EVERY_TECHNIQUE: TechniqueChoice = {
  drawBends: true,
  blowBends: true,
  overbends: true,
  off: [],
};

/** Natural notes alone. */
export const NATURAL_NOTES: TechniqueChoice = {
  drawBends: false,
  blowBends: false,
  overbends: false,
  off: [],
};

/** Octaves of a harp, counted from its lowest reed. */
export const REGISTERS = ['low', 'middle', 'high'] as const;
export type Register = (typeof REGISTERS)[number];

/**
 * Distance from the easy, in the order teachers introduce techniques (common practice, no source): a natural note
 * is 0; a draw bend starts at 1, a blow bend on the short high reeds at 2, an overblow at 4 and an overdraw at 5.
 * Each semitone of depth adds `perSemitone`; a bend that stops short of the hole's floor has nothing to lean on and
 * adds `unsupported`.
 */
export const EFFORT = {
  natural: 0,
  drawBend: 1,
  blowBend: 2,
  overblow: 4,
  overdraw: 5,
  perSemitone: 0.25,
  unsupported: 0.5,
} as const;

/** Whether a bend is the deepest of its hole, or a sound has none deeper. */
export const isFloor = (sound: Sound, harp: Harp): boolean =>
  !harp.sounds.some(
    (other) => other.hole === sound.hole && other.breath === sound.breath && other.bend > sound.bend,
  );

/** How far a sound is from the easy, 0 for natural notes; the scale is `EFFORT`. */
export const effortOf = (sound: Sound, harp: Harp): number => {
  if (sound.technique === 'natural') return EFFORT.natural;
  if (sound.technique === 'overbend') return sound.breath === 'blow' ? EFFORT.overblow : EFFORT.overdraw;
  const start = sound.breath === 'draw' ? EFFORT.drawBend : EFFORT.blowBend;
  return start + EFFORT.perSemitone * (sound.bend - 1) + (isFloor(sound, harp) ? 0 : EFFORT.unsupported);
};

/** True when the technique itself is used, single sounds apart. */
export const usesTechnique = (sound: Sound, choice: TechniqueChoice): boolean => {
  if (sound.technique === 'overbend') return choice.overbends;
  if (sound.technique === 'bend') return sound.breath === 'draw' ? choice.drawBends : choice.blowBends;
  return true;
};

/** True when a player with this technique can play the sound. */
export const isInReach = (sound: Sound, choice: TechniqueChoice): boolean =>
  usesTechnique(sound, choice) && !choice.off.includes(soundId(sound));

/** The lowest pitch of a harp's reeds. */
const lowestPitch = (harp: Harp): number => Math.min(...harp.reeds.map(({ pitch }) => pitch));

/** The octave a pitch lies in, from the harp's lowest reed; what lies above the third octave counts as high. */
export const registerOf = (pitch: Midi, harp: Harp): Register => {
  const octave = Math.floor((pitch - lowestPitch(harp)) / 12);
  return REGISTERS[Math.min(2, Math.max(0, octave))] ?? 'high';
};
