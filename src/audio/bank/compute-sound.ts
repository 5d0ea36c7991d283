/**
 * Makes the sounds of keys. Few of them are computed whole: a tone's four strokes and the layers between the outer ones
 * are made from sounds that are there already, which costs a fifth.
 */
import { elementAt } from '../../core/theory/element-at';
import { seedFrom } from '../../core/theory/random';
import { velocityGain } from '../synthesis/levels';
import { tonedStroke } from '../synthesis/stroke-variation';
import type { Voice, VoiceId, VoiceNote, VoiceSound } from '../synthesis/voice';
import { isStruck, LAYERS, type SoundKey } from './sound-key';

/** Computes one sound of the bank at a rate in Hz, as far as it is heard when it is held for so many seconds at most. */
export type MakeSound = (key: SoundKey, sampleRate: number, held?: number) => VoiceSound;

/** Velocities at which sounds are computed whole; those between cross from one over into the next. */
const WHOLE: readonly number[] = [45, 80, 110];
/** Whole sounds kept at a time, in bytes. */
const KEPT_BYTES = 40e6;

/** What a sound is computed for: the velocity, the rate in Hz, and the seconds it is held at most. */
type Playing = Pick<VoiceNote, 'velocity' | 'sampleRate' | 'held'>;

type Whole = (key: SoundKey, playing: Playing) => VoiceSound;

/**
 * The seed follows from the pitch and the stroke, so that the same key always sounds the same and different strokes
 * differ, but the layers of one stroke only in what velocity does.
 */
const wholeOf =
  (voices: Readonly<Record<VoiceId, Voice>>): Whole =>
  ({ voice, midi, hz, stroke }, playing) =>
    voices[voice]({ midi, hz, ...playing, seed: seedFrom(stroke, voice, midi) });

/** Keeps the whole sounds used last. */
const remembering = (make: Whole): Whole => {
  const kept = new Map<string, VoiceSound>();
  let bytes = 0;
  return (key, playing) => {
    const { velocity, sampleRate, held } = playing;
    const name = [key.voice, key.midi, key.hz.toFixed(2), key.stroke, velocity, sampleRate, held].join('/');
    const known = kept.get(name);
    const sound = known ?? make(key, playing);
    if (known === undefined) bytes += sound.samples.byteLength;
    kept.delete(name);
    kept.set(name, sound);
    for (const [oldest, { samples }] of kept) {
      if (bytes <= KEPT_BYTES || oldest === name) break;
      kept.delete(oldest);
      bytes -= samples.byteLength;
    }
    return sound;
  };
};

/** One sound over into another of the same stroke, both as loud as the velocity asks. */
const crossed = (
  [from, softer]: readonly [VoiceSound, number],
  [to, harder]: readonly [VoiceSound, number],
  velocity: number,
): VoiceSound => {
  const share = (velocity - softer) / (harder - softer);
  const near = share < 0.5 ? from : to;
  const fromGain = (1 - share) * (velocityGain(velocity) / velocityGain(softer));
  const toGain = share * (velocityGain(velocity) / velocityGain(harder));
  const samples = new Float32Array(near.samples.length);
  for (let i = 0; i < samples.length; i += 1)
    samples[i] = fromGain * (from.samples[i] ?? 0) + toGain * (to.samples[i] ?? 0);
  return { ...near, samples };
};

/** Makes sounds with the given voices, and remembers what it makes them from. */
export const createSoundMaker = (voices: Readonly<Record<VoiceId, Voice>>): MakeSound => {
  const whole = remembering(wholeOf(voices));
  return (key, sampleRate, held) => {
    const velocity = elementAt(LAYERS, key.layer);
    // Partials stand still from stroke to stroke of a tone, noise does not: a kit's strokes are computed each.
    const model = isStruck(key.voice) ? key : { ...key, stroke: 0 };
    const at = (wanted: number) =>
      [
        whole(model, { velocity: wanted, sampleRate, ...(held === undefined ? {} : { held }) }),
        wanted,
      ] as const;
    const softer = WHOLE.findLast((each) => each <= velocity) ?? velocity;
    const harder = WHOLE.find((each) => each >= velocity) ?? velocity;
    const sound = softer === harder ? at(softer)[0] : crossed(at(softer), at(harder), velocity);
    if (isStruck(key.voice)) return sound;
    const { hz, stroke, voice, midi } = key;
    const seed = seedFrom(stroke, voice, midi);
    return { ...sound, samples: tonedStroke(sound.samples, hz, sampleRate, { stroke, seed }) };
  };
};
