import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { openSoundFont, type SoundFont } from '../../../../src/audio/soundfont/soundfont';
import type { VoiceId, VoiceNote, VoiceSound } from '../../../../src/audio/synthesis/voice';
import { VOICES } from '../../../../src/audio/voices/voices';
import { findSoundFontFlaw } from '../../../../src/core/formats/sound-font';
import { createRandom } from '../../../../src/core/theory/random';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asHz, asMidi, asSeconds } from '../../../../src/core/theory/units';
import { heldFor } from '../../../helpers/held-note';
import { momentaryLoudness } from '../../../helpers/instrument-measure';
import { firstDifference } from '../../../helpers/samples';
import { soakRuns } from '../../../helpers/soak';
import {
  BAND_PRESETS,
  BAND_SAMPLES,
  bandSoundFont,
  type FontPreset,
  type FontSample,
  GENERATOR,
  makeSoundFont,
} from '../../../helpers/sound-font';

const RATE = 48000;

const noteOf = (midi: number, velocity = 80, cents = 0, sampleRate = RATE): VoiceNote => ({
  midi: asMidi(midi),
  hz: asHz(hzOf(asMidi(midi)) * 2 ** (cents / 1200)),
  velocity,
  sampleRate,
  seed: 1,
});

const must = (sound: VoiceSound | null): VoiceSound => {
  if (sound === null) throw new Error('the file has no such sound');
  return sound;
};

const open = (presets: readonly FontPreset[], samples: readonly FontSample[] = BAND_SAMPLES) =>
  openSoundFont(makeSoundFont(presets, samples).buffer);

/** Strength and phase of a frequency around a time, through a raised-cosine window of 0.4 s. */
const partialAt = (samples: Float32Array, sampleRate: number, hz: number, time: number) => {
  const width = Math.round(0.4 * sampleRate);
  const from = Math.round((time - 0.2) * sampleRate);
  let [re, im] = [0, 0];
  for (let i = 0; i < width; i += 1) {
    const windowed = (samples[from + i] ?? 0) * (1 - Math.cos((2 * Math.PI * i) / width));
    re += windowed * Math.cos((2 * Math.PI * hz * (from + i)) / sampleRate);
    im -= windowed * Math.sin((2 * Math.PI * hz * (from + i)) / sampleRate);
  }
  return { strength: Math.hypot(re, im) / width, phase: Math.atan2(im, re) };
};

/** How far a sound lies from a frequency, in cents, by the turn of its phase within 50 ms. */
const centsFrom = (samples: Float32Array, sampleRate: number, hz: number): number => {
  const turn = partialAt(samples, sampleRate, hz, 0.35).phase - partialAt(samples, sampleRate, hz, 0.3).phase;
  const wrapped = Math.atan2(Math.sin(turn), Math.cos(turn));
  return 1200 * Math.log2(1 + wrapped / (2 * Math.PI * 0.05) / hz);
};

/** Level of the second partial against the first, in dB. */
const brightness = ({ samples }: VoiceSound, hz: number): number =>
  20 *
  Math.log10(partialAt(samples, RATE, 2 * hz, 0.3).strength / partialAt(samples, RATE, hz, 0.3).strength);

const tried = (make: () => VoiceSound | null): VoiceSound | null => {
  try {
    return make();
  } catch {
    return null;
  }
};

describe('a SoundFont of the whole band', () => {
  let font: SoundFont;
  beforeAll(async () => {
    font = await openSoundFont(bandSoundFont().buffer);
  });
  const sounds: readonly (readonly [VoiceId, number])[] = [
    ['upright-bass', 33],
    ['fingered-bass', 40],
    ['piano', 60],
    ['electric-piano', 64],
    ['organ', 67],
    ['guitar', 55],
    ['harmonica', 79],
  ];

  it('has every voice but the click', () => {
    expect(font.voices.toSorted()).toEqual(
      Object.keys(VOICES)
        .filter((voice) => voice !== 'click')
        .toSorted(),
    );
    expect(font.render('click', noteOf(76))).toBeNull();
  });

  it('plays the program of each voice', () => {
    // The bright sample has a second partial 2 dB below its first; the dull one has none.
    for (const [voice, expected] of [
      ['piano', -1.94],
      ['organ', -1.94],
      ['harmonica', -1.94],
    ] as const) {
      expect(brightness(must(font.render(voice, noteOf(60))), hzOf(asMidi(60)))).toBeCloseTo(expected, 1);
    }
    for (const voice of ['electric-piano', 'upright-bass', 'fingered-bass'] as const) {
      expect(brightness(must(font.render(voice, noteOf(60))), hzOf(asMidi(60)))).toBeLessThan(-40);
    }
  });

  it.each(sounds)('tunes %s to the asked hertz', (voice, midi) => {
    for (const [cents, rate] of [
      [0, 48000],
      [23.4, 44100],
      [-31.2, 48000],
    ]) {
      const note = noteOf(midi, 80, cents, rate);
      const { samples } = must(font.render(voice, note));
      expect(Math.abs(centsFrom(samples, rate, note.hz))).toBeLessThan(0.5);
    }
  });

  it.each(sounds)('brings %s to the loudness of the built-in voice, loud or soft', (voice, midi) => {
    for (const velocity of [45, 80, 110]) {
      const note = noteOf(midi, velocity);
      const mine = momentaryLoudness(heldFor(must(font.render(voice, note)), 1.2, RATE), RATE);
      const builtIn = momentaryLoudness(heldFor(VOICES[voice](note), 1.2, RATE), RATE);
      expect(Math.abs(mine - builtIn)).toBeLessThan(0.5);
    }
  });

  it('brings drums to the loudness of the kit', () => {
    for (const key of [36, 38, 42]) {
      const note = noteOf(key, 110);
      const pad = (samples: Float32Array) =>
        heldFor({ samples, loop: null, release: asSeconds(0.02) }, 1, RATE);
      for (const kit of ['sticks', 'brushes'] as const) {
        const mine = momentaryLoudness(pad(must(font.render(kit, note)).samples), RATE);
        expect(Math.abs(mine - momentaryLoudness(pad(VOICES[kit](note).samples), RATE))).toBeLessThan(0.5);
      }
    }
  });

  it('has no sound for a drum that is not in the set', () => {
    expect(font.render('sticks', noteOf(49))).toBeNull();
    expect(font.render('sticks', noteOf(38))).not.toBeNull();
  });

  it('lets strings die and loops what is held, at one level and without a step', () => {
    const dying = must(font.render('piano', noteOf(60)));
    expect(dying.loop).toBeNull();
    expect(dying.samples.at(-1)).toBeCloseTo(0, 5);
    const held = must(font.render('organ', noteOf(60)));
    expect(held.loop).not.toBeNull();
    const long = heldFor(held, 9, RATE);
    const levels = Array.from({ length: 40 }, (_, i) =>
      Math.hypot(...long.subarray((1 + i * 0.2) * RATE, (1.2 + i * 0.2) * RATE)),
    );
    expect(20 * Math.log10(Math.max(...levels) / Math.min(...levels))).toBeLessThan(0.2);
    const slope = (from: number, to: number) => {
      let most = 0;
      for (let i = from * RATE; i < to * RATE; i += 1) most = Math.max(most, Math.abs(long[i] - long[i - 1]));
      return most;
    };
    expect(slope(3, 9)).toBeLessThan(1.05 * slope(0.5, 0.9));
  });

  it('fades as the file does after a note is let go', () => {
    // 100 dB in the time of releaseVolEnv (section 8.1.2) carry as much as a straight fade of 0.13 times that.
    const share = (3 * 10) / (Math.LN10 * 100);
    for (const [voice, seconds] of [
      ['organ', 0.3],
      ['piano', 0.4],
    ] as const) {
      const { release } = must(font.render(voice, noteOf(60)));
      expect(Math.abs(release - share * seconds)).toBeLessThan(0.01);
    }
  });

  it('gives the same samples every time', () => {
    const once = must(font.render('guitar', noteOf(52)));
    font.render('piano', noteOf(72, 110, 14));
    const again = must(font.render('guitar', noteOf(52)));
    expect(firstDifference(again.samples, once.samples)).toBe(-1);
    expect({ ...again, samples: null }).toEqual({ ...once, samples: null });
  });
});

describe('other SoundFonts', () => {
  it('are played for the voices they have', async () => {
    const font = await open(BAND_PRESETS.filter(({ name }) => name === 'Guitar' || name === 'Kit'));
    expect(font.voices).toEqual(['guitar', 'sticks', 'brushes']);
    expect(font.render('piano', noteOf(60))).toBeNull();
    expect(font.render('guitar', noteOf(60))).not.toBeNull();
  });

  it('play brushes from a brush set', async () => {
    const kit = BAND_PRESETS.filter(({ name }) => name === 'Kit');
    const generators = [[GENERATOR.overridingRootKey, 38]] as const;
    const zones = [{ sample: 3, keys: [38, 38] as const, generators }];
    const font = await open([...kit, { name: 'Brushes', bank: 128, program: 40, zones }]);
    const length = (voice: VoiceId) => must(font.render(voice, noteOf(38))).samples.length / RATE;
    expect(length('sticks')).toBeCloseTo(0.4, 1);
    expect(length('brushes')).toBeCloseTo(0.08, 1);
    expect(font.render('brushes', noteOf(36))).toBeNull();
  });

  it('are not taken for another bank', async () => {
    const font = await open([
      { name: 'Variation', bank: 8, program: 0, zones: [{ sample: 0 }] },
      { name: 'Strings', bank: 0, program: 48, zones: [{ sample: 0 }] },
    ]);
    expect(font.voices).toEqual([]);
  });

  it('choose the sample by velocity and key', async () => {
    const generators = [[GENERATOR.sampleModes, 1]] as const;
    const zones = [
      { sample: 0, velocities: [1, 100] as const, generators },
      { sample: 1, velocities: [101, 127] as const, keys: [0, 70] as const, generators },
    ];
    const font = await open([{ name: 'Piano', bank: 0, program: 0, zones }]);
    const hz = hzOf(asMidi(60));
    expect(brightness(must(font.render('piano', noteOf(60, 80))), hz)).toBeLessThan(-40);
    expect(brightness(must(font.render('piano', noteOf(60, 110))), hz)).toBeGreaterThan(-3);
    expect(font.render('piano', noteOf(75, 110))).toBeNull();
  });

  it('begin without the air before their sound', async () => {
    const [dull] = BAND_SAMPLES;
    const silence = Array.from({ length: 2600 }, () => 0);
    const late = { ...dull, samples: [...silence, ...dull.samples], loop: [2600, 3000] as const };
    const font = await open(
      [{ name: 'Piano', bank: 0, program: 0, zones: [{ sample: 0, generators: [[54, 1]] }] }],
      [late],
    );
    const { samples } = must(font.render('piano', noteOf(60)));
    const peak = Math.max(...samples);
    expect(samples.findIndex((sample) => Math.abs(sample) > peak / 10)).toBeLessThan(0.003 * RATE);
  });

  it('may be compressed, as files of version 3 are', async () => {
    const ogg = Uint8Array.from(readFileSync('tests/helpers/tone.ogg'));
    const file = makeSoundFont(
      [{ name: 'Piano', bank: 0, program: 0, zones: [{ sample: 0 }] }],
      [{ name: 'tone', samples: ogg, rate: 22050, root: 69 }],
    );
    expect(findSoundFontFlaw(file)).toBeNull();
    const font = await openSoundFont(file.buffer);
    const { samples } = must(font.render('piano', noteOf(69)));
    expect(samples.length / RATE).toBeCloseTo(0.6, 1);
    expect(Math.abs(centsFrom(samples, RATE, hzOf(asMidi(69))))).toBeLessThan(2);
  });

  it('count a silent sound as none', async () => {
    const silent = { ...BAND_SAMPLES[0], samples: Array.from({ length: 400 }, () => 0) };
    const generators = [[GENERATOR.sampleModes, 1]] as const;
    const font = await open(
      [{ name: 'Piano', bank: 0, program: 0, zones: [{ sample: 0, generators }] }],
      [silent],
    );
    expect(font.render('piano', noteOf(60))).toBeNull();
  });
});

it('gives numbers, nothing or an error for files with changed bytes, never anything else', async () => {
  const whole = bandSoundFont();
  const random = createRandom(7);
  let opened = 0;
  const runs = soakRuns(5000);
  for (let run = 0; run < runs; run += 1) {
    const file = whole.slice();
    // The articulation data are the last 2 kB: changes there matter most.
    for (let i = 0; i < 3; i += 1)
      file[file.length - 1 - Math.floor(random() * 2000)] = Math.floor(random() * 256);
    if (findSoundFontFlaw(file) !== null) continue;
    const font = await openSoundFont(file.buffer).catch((error: unknown) => String(error));
    if (typeof font === 'string') continue;
    opened += 1;
    for (const voice of ['piano', 'upright-bass'] as const) {
      const sound = tried(() => font.render(voice, noteOf(48)));
      if (sound === null) continue;
      expect(sound.samples.every(Number.isFinite)).toBe(true);
      expect(Math.max(...sound.samples.subarray(0, RATE).map(Math.abs))).toBeLessThan(4);
    }
  }
  expect(opened).toBeGreaterThan(runs / 4);
});
