import type { Harp, Sound } from '../harp/harp';
import { effortOf, isInReach, type TechniqueChoice } from '../harp/reach';
import type { MidiMessage } from './midi-message';

/** What the keys of a keyboard do. */
export const KEY_USES = ['split', 'chords', 'harp'] as const;
export type KeyUse = (typeof KEY_USES)[number];

/** Drums have a channel of their own (General MIDI 1, channel 10). */
export const DRUM_CHANNEL = 10;
/** Controllers that end every note: all sound off, all notes off (MIDI 1.0, channel mode messages). */
const SILENCE: readonly number[] = [120, 123];

/** Keys held down, as MIDI numbers, after a message; the same set where nothing changed. */
export const heldAfter = (held: ReadonlySet<number>, message: MidiMessage): ReadonlySet<number> => {
  if (message.kind === 'control') {
    return SILENCE.includes(message.controller) && held.size > 0 ? new Set() : held;
  }
  if (message.kind === 'program' || message.channel === DRUM_CHANNEL) return held;
  if (message.kind === 'on') return held.has(message.key) ? held : new Set([...held, message.key]);
  return held.has(message.key) ? new Set([...held].filter((key) => key !== message.key)) : held;
};

/** Whether a key belongs to the hand that holds chords. @param split the lowest key of the other hand. */
export const isChordKey = (key: number, use: KeyUse, split: number): boolean =>
  use === 'chords' || (use === 'split' && key < split);

/** Sounds in reach at a pitch, the easiest first; none where this harp, or this player, does not have it. */
export const soundsAt = (harp: Harp, technique: TechniqueChoice, pitch: number): readonly Sound[] =>
  harp.sounds
    .filter((sound) => sound.pitch === pitch && isInReach(sound, technique))
    .toSorted((a, b) => effortOf(a, harp) - effortOf(b, harp));
