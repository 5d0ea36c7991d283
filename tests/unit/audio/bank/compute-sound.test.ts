import { describe, expect, it } from 'vitest';
import { createSoundMaker } from '../../../../src/audio/bank/compute-sound';
import { gainInLayer, LAYERS, type SoundKey } from '../../../../src/audio/bank/sound-key';
import type { Voice, VoiceId, VoiceNote } from '../../../../src/audio/synthesis/voice';
import { VOICES } from '../../../../src/audio/voices/voices';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asHz, asMidi, asSeconds } from '../../../../src/core/theory/units';
import { momentaryLoudness } from '../../../helpers/instrument-measure';
import { inSoak } from '../../../helpers/soak';

const asked: VoiceNote[] = [];
const note: Voice = (wanted) => {
  asked.push(wanted);
  return { samples: new Float32Array(1), loop: null, release: asSeconds(0) };
};
const NOTING = Object.fromEntries(Object.keys(VOICES).map((id) => [id, note])) as Record<VoiceId, Voice>;

const seedOf = (changes: Partial<SoundKey>): number => {
  const key = { voice: 'sticks', midi: asMidi(36), hz: asHz(65), layer: 1, stroke: 0, ...changes } as const;
  createSoundMaker(NOTING)(key, 48_000);
  return asked.at(-1)?.seed ?? Number.NaN;
};

describe('the seed of a computed sound', () => {
  it('differs by stroke and by pitch', () => {
    const seeds = [{}, { stroke: 1 }, { stroke: 2 }, { midi: asMidi(38) }].map(seedOf);
    expect(new Set(seeds).size).toBe(4);
  });

  it('is one for all layers of a stroke, so that nearly equal velocities sound nearly equal', () => {
    expect(seedOf({ layer: 2 })).toBe(seedOf({ layer: 0 }));
  });

  it('is one whatever file lacks the sound, so that saved music is the same at every visit', () => {
    expect(seedOf({ source: 7 })).toBe(seedOf({}));
  });
});

const keyOf = (voice: VoiceId, midi: number, changes: Partial<SoundKey> = {}): SoundKey => ({
  voice,
  midi: asMidi(midi),
  hz: hzOf(asMidi(midi)),
  layer: 3,
  stroke: 0,
  ...changes,
});
const make = createSoundMaker(VOICES);

/** How alike two sounds are, sample by sample, over their first half second; −1 to 1. */
const likeness = (a: Float32Array, b: Float32Array): number => {
  let [both, first, second] = [0, 0, 0];
  for (let i = 0; i < Math.min(24_000, a.length, b.length); i += 1) {
    both += a[i] * b[i];
    first += a[i] ** 2;
    second += b[i] ** 2;
  }
  return both / Math.sqrt(first * second);
};

/** Voices of chords at some of the keys that comping hands have. */
const CHORD_KEYS = inSoak<readonly [VoiceId, number]>(
  (['piano', 'electric-piano', 'organ', 'guitar'] as const).flatMap((voice) =>
    [48, 53, 57, 60, 64, 67, 72].map((midi) => [voice, midi] as const),
  ),
  [
    ['piano', 60],
    ['electric-piano', 57],
    ['organ', 60],
    ['guitar', 60],
  ],
);

describe('the strokes of a key', () => {
  it.each<readonly [VoiceId, number]>([
    ...CHORD_KEYS,
    ['piano', 52],
    ['upright-bass', 33],
    ['fingered-bass', 40],
    ['sticks', 42],
    ['sticks', 51],
  ])('are four that differ: %s %i', (voice, midi) => {
    const strokes = [0, 1, 2, 3].map((stroke) => make(keyOf(voice, midi, { stroke }), 48_000).samples);
    for (const [i, one] of strokes.entries())
      for (const other of strokes.slice(0, i)) expect(likeness(one, other)).toBeLessThanOrEqual(0.95);
  });
});

describe('the layers of a key', () => {
  it.each([
    ['sticks', 36],
    ['sticks', 44],
    ['brushes', 38],
    ['upright-bass', 33],
  ] as const)('go over into each other: %s %i', (voice, midi) => {
    const layers = LAYERS.map((velocity, layer) => ({
      velocity,
      ...make(keyOf(voice, midi, { layer }), 48_000),
    }));
    const softest = layers[0];
    for (const [i, { samples, velocity }] of layers.entries()) {
      const level = momentaryLoudness(samples, 48_000) - momentaryLoudness(softest.samples, 48_000);
      expect(Math.abs(level - 40 * Math.log10(velocity / softest.velocity))).toBeLessThan(2);
      if (i > 0) expect(likeness(layers[i - 1].samples, samples)).toBeGreaterThan(0.99);
    }
  });

  it.each(CHORD_KEYS)(
    'of chords are as loud and sound alike where one gives way to the next: %s %i',
    (voice, midi) => {
      const layers = LAYERS.map((_, layer) => make(keyOf(voice, midi, { layer }), 48_000).samples);
      const loudness = layers.map((samples) => momentaryLoudness(samples, 48_000));
      for (const layer of LAYERS.keys()) {
        if (layer === 0) continue;
        const border = Math.sqrt(LAYERS[layer - 1] * LAYERS[layer]);
        const [softer, harder] = [layer - 1, layer].map(
          (each) => loudness[each] + 20 * Math.log10(gainInLayer(border, each, voice)),
        );
        // About the least step that is heard (1 dB: Zwicker & Fastl 2007, from memory); the guitar's was 2.3 dB.
        expect(Math.abs(harder - softer)).toBeLessThan(1.3);
        expect(likeness(layers[layer - 1], layers[layer])).toBeGreaterThan(0.96);
      }
    },
  );

  it('are made whole at three velocities alone', () => {
    asked.length = 0;
    const noting = createSoundMaker(NOTING);
    for (const layer of LAYERS.keys())
      for (const stroke of [0, 1, 2, 3]) noting(keyOf('piano', 60, { layer, stroke }), 48_000);
    expect(asked.map(({ velocity }) => velocity).toSorted((a, b) => a - b)).toEqual([45, 80, 110]);
  });
});

describe('a sound that is held for a known time', () => {
  it.each<[VoiceId, number]>([
    ['piano', 60],
    ['upright-bass', 33],
    ['electric-piano', 55],
    ['guitar', 64],
  ])('of %s is the same as the whole one as far as it can be heard, and costs less', (voice, midi) => {
    for (const layer of [0, 1, 5]) {
      const key = keyOf(voice, midi, { layer, stroke: 2 });
      const whole = createSoundMaker(VOICES)(key, 48_000);
      const part = createSoundMaker(VOICES)(key, 48_000, 0.4);
      expect(part.release).toBe(whole.release);
      expect(part.samples.length).toBeGreaterThan((0.4 + whole.release) * 48_000);
      expect(part.samples.length).toBeLessThan(whole.samples.length / 2);
      let furthest = 0;
      part.samples.forEach((value, i) => {
        furthest = Math.max(furthest, Math.abs(value - whole.samples[i]));
      });
      expect(furthest).toBeLessThan(1e-6);
    }
  });
});
