/** Planned notes become sound and truth: every reed is a sum of harmonics that follows its gesture. */

import type { Harp, Sound } from '../../../src/core/harp/harp';
import { soundHz } from '../../../src/core/harp/intonation';
import { createRandom, seedFrom } from '../../../src/core/theory/random';
import { asHz } from '../../../src/core/theory/units';
import { amplitude, between, normal, ratio } from './chance';
import { type Gesture, gestureOf, type PlannedNote } from './gesture';
import { HARMONICS, type Reeds } from './reed';
import type { PitchTrack, TrueNote } from './take';

export interface Performance {
  readonly samples: Float32Array;
  readonly notes: readonly TrueNote[];
  readonly track: PitchTrack;
}

export interface Player {
  readonly harp: Harp;
  readonly reference: number;
  readonly reeds: Reeds;
  readonly seed: number;
}

/** Samples for which pitch and colour are read once. */
const BLOCK = 32;
const STEP = 0.001;
/** Harmonics above this are left out, as is all that would fold back. */
const HIGHEST = 15000;
const PLAIN = amplitude(-12);
const HEARD = amplitude(-30);

interface Voice {
  readonly note: PlannedNote;
  readonly gesture: Gesture;
  readonly sound: Sound;
  /** Settled pitch. */
  readonly hz: number;
  readonly gain: number;
}

const addVoice = (out: Float64Array, rate: number, voice: Voice, reeds: Reeds): void => {
  const { note, gesture, sound, hz, gain } = voice;
  const spectrum = reeds.spectrumOf(sound);
  const phases = reeds.phasesOf(sound);
  const sines = spectrum.map((a, i) => a * Math.cos(phases[i]));
  const cosines = spectrum.map((a, i) => a * Math.sin(phases[i]));
  const from = Math.round(note.at * rate);
  const until = Math.min(out.length, from + Math.round((note.length + 2 * gesture.release) * rate));
  const weights = new Float64Array(HARMONICS);
  let phase = 0;
  let level = 0;
  for (let start = from; start < until; start += BLOCK) {
    const time = (start + BLOCK - from) / rate;
    const f = hz * ratio(gesture.cents(time));
    const next = gain * gesture.level(time);
    const count = Math.min(HARMONICS, Math.floor(Math.min(HIGHEST, 0.46 * rate) / f));
    const bright = Math.log2(Math.max(0.05, gesture.level(time))) * 0.25;
    const shut = gesture.closed(time);
    for (let k = 1; k <= count; k += 1) {
      const dark = k * f > 900 ? amplitude(-shut * Math.min(1, Math.log2((k * f) / 900))) : 1;
      weights[k - 1] = reeds.colour(k * f) * dark * k ** bright;
    }
    const turn = (2 * Math.PI * f) / rate;
    const step = (next - level) / BLOCK;
    const end = Math.min(until, start + BLOCK);
    for (let i = start; i < end; i += 1) {
      phase += turn;
      level += step;
      out[i] += level * harmonicSum({ phase, count, sines, cosines, weights });
    }
    level = next;
  }
};

interface Sum {
  readonly phase: number;
  readonly count: number;
  readonly sines: Float64Array;
  readonly cosines: Float64Array;
  readonly weights: Float64Array;
}

/** Harmonics by the recurrence sin((k + 1)x) = 2 cos x sin kx − sin((k − 1)x), and the same for cosines. */
const harmonicSum = ({ phase, count, sines, cosines, weights }: Sum): number => {
  const c = Math.cos(phase);
  let [s0, s1, c0, c1] = [0, Math.sin(phase), 1, c];
  let sum = 0;
  for (let k = 0; k < count; k += 1) {
    sum += weights[k] * (sines[k] * s1 + cosines[k] * c1);
    const s2 = 2 * c * s1 - s0;
    const c2 = 2 * c * c1 - c0;
    s0 = s1;
    s1 = s2;
    c0 = c1;
    c1 = c2;
  }
  return sum;
};

/** Breath: noise in a broad band that follows the level and comes a little before the reed speaks. */
const addBreath = (out: Float64Array, rate: number, voice: Voice, breath: number, seed: number): void => {
  const { note, gesture } = voice;
  const random = createRandom(seedFrom(seed, 'breath', Math.round(note.at * 1000)));
  const lead = note.attack === 'legato' ? 0 : between(random, 0, 0.012);
  const burst = note.attack === 'tongue' ? amplitude(between(random, -6, 10)) : 0.5;
  const share = breath * (note.failed === 'choke' ? 4 : 1);
  const from = Math.max(0, Math.round((note.at - lead) * rate));
  const until = Math.min(out.length, Math.round((note.at + note.length + gesture.release) * rate));
  const low = Math.exp((-2 * Math.PI * between(random, 2500, 7000)) / rate);
  const high = Math.exp((-2 * Math.PI * between(random, 200, 900)) / rate);
  let [slow, base] = [0, 0];
  for (let i = from; i < until; i += 1) {
    slow = low * slow + (1 - low) * (random() - random()) * 3;
    base = high * base + (1 - high) * slow;
    const time = (i - from) / rate;
    const rise = Math.min(1, time / 0.006);
    const shape =
      time < note.length + lead ? 1 : Math.exp(-5 * ((time - note.length - lead) / gesture.release));
    out[i] += voice.gain * share * rise * shape * (1 + burst * Math.exp(-time / 0.012)) * (slow - base);
  }
};

/** A breath may hold several notes: each glide half-way ends one and begins the next. */
export const truthOf = ({ note, hz }: Pick<Voice, 'note' | 'hz'>): readonly TrueNote[] => {
  const turns = note.path.map((step) => note.at + step.at + step.seconds / 2);
  const common = {
    vibrato: note.vibrato === null ? null : { rate: note.vibrato.rate, cents: note.vibrato.cents },
    failed: note.failed !== null,
  };
  const end = note.at + note.length;
  const first: TrueNote = {
    from: note.at,
    to: turns[0] ?? end,
    sounds: note.sounds,
    hz,
    scoop: note.approach?.cents ?? 0,
    ...common,
  };
  return [
    first,
    ...note.path.map(({ sound, cents }, i) => ({
      from: turns[i],
      to: turns[i + 1] ?? end,
      sounds: [sound],
      hz: hz * ratio(cents),
      scoop: (note.path[i - 1]?.cents ?? 0) - cents,
      ...common,
    })),
  ];
};

/** What is not plain from the beginning of an attack on. */
const UNPLAIN_SECONDS = 0.012;

const mark = (track: PitchTrack, voice: Voice, tail: number): void => {
  const { note, gesture, hz } = voice;
  const several = note.sounds.length > 1 || note.failed !== null;
  const end = note.at + note.length;
  const last = Math.min(track.hz.length - 1, Math.ceil((end + gesture.release + tail) / track.step));
  for (let i = Math.max(0, Math.floor((note.at - 0.015) / track.step)); i <= last; i += 1) {
    const time = i * track.step - note.at;
    const level = time < 0 ? 0 : gesture.level(time);
    const sounding = level > HEARD && time <= note.length + gesture.release;
    if (sounding) track.hz[i] = hz * ratio(gesture.cents(time));
    track.judged[i] =
      !several && sounding && level > PLAIN && time > UNPLAIN_SECONDS && time < note.length - 0.004 ? 1 : 0;
  }
};

/** The reed that sounds along when the lips do not seal: the same breath in the next hole. */
const neighbourOf = (sound: Sound, harp: Harp): Sound | undefined =>
  harp.sounds.find(
    ({ hole, breath, technique }) =>
      hole === sound.hole + 1 && breath === sound.breath && technique === 'natural',
  );

const voicesOf = (note: PlannedNote, player: Player): readonly Voice[] => {
  const { harp, reeds, reference, seed } = player;
  const gain = amplitude(note.level);
  return note.sounds.map((sound, i) => {
    const expected = soundHz(sound, asHz(reference));
    const random = createRandom(seedFrom(seed, 'voice', Math.round(note.at * 1000), i));
    // Breath lowers the pitch of a reed a little, the more the louder.
    const pressed = -Math.max(0, 1.5 + 0.3 * note.level);
    const off = sound.technique === 'natural' ? reeds.mistuning(sound) + pressed : note.aim;
    const share = note.sounds.length > 1 ? amplitude(2 * normal(random)) / Math.sqrt(note.sounds.length) : 1;
    return {
      note,
      gesture: gestureOf(note, reeds.rise(expected), seedFrom(seed, harp.key, i)),
      sound,
      hz: expected * ratio(off),
      gain: gain * share,
    };
  });
};

/** Plays planned notes, in the order of their times, into a stretch of so many seconds. `tail` is the room's. */
export const perform = (
  plan: readonly PlannedNote[],
  player: Player,
  { seconds, sampleRate, tail }: { seconds: number; sampleRate: number; tail: number },
): Performance => {
  const out = new Float64Array(Math.round(seconds * sampleRate));
  const steps = Math.ceil(seconds / STEP);
  const track: PitchTrack = {
    step: STEP,
    hz: new Float64Array(steps),
    judged: new Uint8Array(steps).fill(1),
  };
  const { reeds, harp, seed } = player;
  const all = plan.map((note) => voicesOf(note, player));
  for (const voices of all) {
    for (const voice of voices) {
      addVoice(out, sampleRate, voice, reeds);
      addBreath(out, sampleRate, voice, reeds.breath, seed);
      const beside = neighbourOf(voice.sound, harp);
      if (reeds.leak > 0 && voices.length === 1 && beside !== undefined) {
        const hz = soundHz(beside, asHz(player.reference)) * ratio(reeds.mistuning(beside));
        addVoice(out, sampleRate, { ...voice, sound: beside, hz, gain: voice.gain * reeds.leak }, reeds);
      }
    }
    if (voices[0] !== undefined) mark(track, voices[0], tail);
  }
  return {
    samples: Float32Array.from(out),
    notes: all.flatMap(([first]) => (first === undefined ? [] : truthOf(first))),
    track,
  };
};
