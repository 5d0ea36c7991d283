/**
 * The pitched voices against figures of real instruments; the source of the figures stands beside them. They ask for
 * the balance and decay of partials, attack, noise and loudness. The set plays one recording at all velocities
 * (the guitar excepted), so what velocity does to the tone is ours: those figures are only checked at velocity 80.
 */
import { describe, expect, it } from 'vitest';
import { REFERENCE_LOUDNESS_LUFS } from '../../src/audio/synthesis/levels';
import { VOICES } from '../../src/audio/voices/voices';
import { asHz, asMidi } from '../../src/core/theory/units';
import { heldFor } from '../helpers/held-note';
import { deviationsOf, meanDeviation } from '../helpers/instrument-deviation';
import {
  centroidOf,
  measureNote,
  momentaryLoudness,
  type NoteFigures,
  release20,
} from '../helpers/instrument-measure';
import { inSoak } from '../helpers/soak';
import {
  GUITAR_CENTROIDS,
  PITCHED_TARGETS,
  type PitchedTarget,
  type PitchedVoiceId,
} from './pitched-voice-figures';

const RATE = 48000;
const STROKES = inSoak([1, 2], [1]);
/** A computed note fades out before its fourth second ends, so later falls by 20 dB cannot be compared; ms. */
const LONGEST_T20 = 3500;

const hzOfKey = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
const play = (id: PitchedVoiceId, midi: number, velocity: number, seed = 1) =>
  VOICES[id]({ midi: asMidi(midi), hz: asHz(hzOfKey(midi)), velocity, sampleRate: RATE, seed });

/** What partials are counted from: an organ's from its 16' stop. */
const fundamentalOf = (id: PitchedVoiceId, midi: number): number => hzOfKey(midi) / (id === 'organ' ? 2 : 1);

const measured = (id: PitchedVoiceId, { midi }: PitchedTarget, seed: number): NoteFigures => {
  const sound = play(id, midi, 80, seed);
  const whole = sound.loop === null ? sound.samples : heldFor(sound, 1, RATE);
  return measureNote(whole, RATE, fundamentalOf(id, midi));
};

/** Levels in dB re all of them, by octaves around 125 Hz times powers of two, of partials given in dB. */
const octavesOf = (partials: readonly (number | null)[], fundamental: number): Map<number, number> => {
  const powers = new Map<number, number>();
  for (const [i, level] of partials.entries()) {
    const octave = 125 * 2 ** Math.round(Math.log2(((i + 1) * fundamental) / 125));
    powers.set(octave, (powers.get(octave) ?? 0) + 10 ** ((level ?? -90) / 10));
  }
  const whole = [...powers.values()].reduce((sum, power) => sum + power, 0);
  return new Map([...powers].map(([octave, power]) => [octave, 10 * Math.log10(power / whole)]));
};

const compared = (target: PitchedTarget, figures: NoteFigures) => {
  const { t20, ...rest } = target;
  return deviationsOf(figures, {
    ...rest,
    ...(t20 !== undefined && t20 !== null && t20 < LONGEST_T20 ? { t20 } : {}),
    loudness: target.loudness + REFERENCE_LOUDNESS_LUFS,
  });
};

/** Mean deviation in tolerances a voice may have, and its figures that lie more than two tolerances off. */
const ACHIEVED: readonly (readonly [PitchedVoiceId, mean: number, outside: readonly string[]])[] = [
  ['upright-bass', 0.25, ['28 hnr']],
  ['fingered-bass', 0.2, []],
  [
    'piano',
    0.5,
    // The set reads 20–60 ms where its strings beat at first; ours rises as a hammer strikes, see below.
    ['54 attack', '54 timeToPeak', '60 attack', '60 timeToPeak', '60 t20', '66 attack', '66 timeToPeak'],
  ],
  ['electric-piano', 0.15, []],
  ['organ', 0.4, ['48 bandwidth40', '54 bandwidth40', '66 harmonics500[4]']],
  ['guitar', 0.2, []],
  ['harmonica', 0.15, []],
];

describe.each(ACHIEVED)('%s', (id, mean, outside) => {
  const targets = PITCHED_TARGETS[id];
  const notes = targets.flatMap((target) =>
    STROKES.map((seed) => ({ target, figures: measured(id, target, seed) })),
  );
  const all = notes.flatMap(({ target, figures }) =>
    compared(target, figures).map((found) => ({ ...found, midi: target.midi })),
  );

  it(`keeps to the measured figures within ${mean} tolerances on average`, () => {
    expect(all.length).toBeGreaterThan(150 * STROKES.length);
    expect(meanDeviation(all)).toBeLessThan(mean);
  });

  it('is more than two tolerances off only where stated', () => {
    const off = all
      .filter(({ deviation }) => Math.abs(deviation) > 2)
      .map(({ midi, figure }) => `${midi} ${figure}`);
    const stated = inSoak(
      outside,
      outside.filter((figure) => off.includes(figure)),
    );
    expect([...new Set(off)]).toEqual(stated);
  });

  it('has every octave of the measured spectrum, those above 2 kHz too, within 3 dB, and within 1 dB but for the piano', () => {
    for (const { target, figures } of notes) {
      const fundamental = fundamentalOf(id, target.midi);
      const ours = octavesOf(figures.harmonics100, fundamental);
      for (const [octave, level] of octavesOf(target.harmonics100 ?? [], fundamental)) {
        if (level < -25) continue;
        expect(Math.abs((ours.get(octave) ?? -90) - level)).toBeLessThan(id === 'piano' ? 3 : 1);
      }
    }
  });

  it('answers velocity with the measured change of loudness', () => {
    for (const target of targets) {
      const [soft, middle, hard] = [45, 80, 110].map((velocity) =>
        momentaryLoudness(heldFor(play(id, target.midi, velocity), 0.8, RATE), RATE),
      );
      expect(Math.abs((soft ?? 0) - (middle ?? 0) - target.soft)).toBeLessThan(1.5);
      expect(Math.abs((hard ?? 0) - (middle ?? 0) - target.hard)).toBeLessThan(1.5);
    }
  });

  it('lets go as fast as measured', () => {
    for (const { midi, release20: target } of targets) {
      const reading = release20(heldFor(play(id, midi, 80), 1, RATE), RATE, 1);
      expect(reading).not.toBeNull();
      expect(Math.abs(Math.log((reading ?? 1) / target))).toBeLessThan(Math.log(1.35));
    }
  });
});

/** Seconds from a tenth to nine tenths of the loudest 5 ms. */
const attackOf = (samples: Float32Array): number => {
  const levels = Array.from({ length: 600 }, (_, i) =>
    Math.sqrt(samples.subarray(i * 24, i * 24 + 240).reduce((sum, x) => sum + x * x, 0) / 240),
  );
  const loudest = Math.max(...levels);
  const reaches = (share: number) => levels.findIndex((level) => level > share * loudest);
  return ((reaches(0.9) - reaches(0.1)) * 24) / RATE;
};

it('the piano speaks as fast as a hammer lets go: felt hammers stay 1–4 ms on the string (common practice, no source)', () => {
  for (const midi of [52, 57, 60, 64, 67, 72])
    expect(attackOf(play('piano', midi, 80).samples)).toBeLessThanOrEqual(0.012);
});

it.each(GUITAR_CENTROIDS)('guitar key $midi opens with velocity as measured', ({ midi, soft, hard }) => {
  const times = [0.01, 0.05, 0.2, 0.5];
  for (const [velocity, targets] of [
    [45, soft],
    [110, hard],
  ] as const) {
    const { samples } = play('guitar', midi, velocity);
    const ratios = times.map((time, i) =>
      Math.log((centroidOf(samples, RATE, time) ?? 1) / (targets[i] ?? 1)),
    );
    const mean = ratios.reduce((sum, value) => sum + Math.abs(value), 0) / ratios.length;
    expect(mean).toBeLessThan(Math.log(1.25));
  }
});
