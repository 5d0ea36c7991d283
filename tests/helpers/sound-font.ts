/**
 * Small SoundFont files, written byte by byte after the SoundFont Technical Specification 2.04: section 3 (RIFF),
 * 4 (file), 5 (INFO), 6 (samples), 7 (presets, instruments and sample headers), 8.1 (generators).
 */
import { createRandom } from '../../src/core/theory/random';

export interface FontSample {
  readonly name: string;
  /** −1 … 1; or, in a file of version 3, an Ogg Vorbis stream. */
  readonly samples: readonly number[] | Uint8Array;
  readonly rate: number;
  /** MIDI key at which the sample sounds as recorded. */
  readonly root: number;
  /** Cents that are added to the pitch on playback. */
  readonly correction?: number;
  /** Frames of the loop, the end not included. */
  readonly loop?: readonly [number, number];
}

export interface FontZone {
  /** Index into the samples. */
  readonly sample: number;
  readonly keys?: readonly [number, number];
  readonly velocities?: readonly [number, number];
  /** Pairs of generator number and amount. */
  readonly generators?: readonly (readonly [number, number])[];
}

export interface FontPreset {
  readonly name: string;
  readonly bank: number;
  readonly program: number;
  readonly zones: readonly FontZone[];
}

/** Numbers of the generators used here, from section 8.1.2. */
export const GENERATOR = {
  attackVolEnv: 34,
  decayVolEnv: 36,
  sustainVolEnv: 37,
  releaseVolEnv: 38,
  instrument: 41,
  keyRange: 43,
  velRange: 44,
  initialAttenuation: 48,
  sampleID: 53,
  sampleModes: 54,
  overridingRootKey: 58,
} as const;

/** Time in the unit of the envelopes: 1200 times the logarithm to base 2 of seconds. */
export const timecents = (seconds: number): number => Math.round(1200 * Math.log2(seconds));

const word = (value: number): number[] => [value & 0xff, (value >> 8) & 0xff];
const dword = (value: number): number[] => [...word(value & 0xffff), ...word(value >>> 16)];
const text = (value: string, size: number): number[] =>
  Array.from({ length: size }, (_, i) => (i < size - 1 ? value.charCodeAt(i) || 0 : 0));
const fourCC = (value: string): number[] => [...value].map((letter) => letter.charCodeAt(0));

const chunk = (id: string, body: readonly number[]): number[] => [
  ...fourCC(id),
  ...dword(body.length),
  ...body,
  ...(body.length % 2 === 1 ? [0] : []),
];
const list = (id: string, ...chunks: readonly (readonly number[])[]): number[] =>
  chunk('LIST', [...fourCC(id), ...chunks.flat()]);

/** Zero points that follow each sample (section 6.1). */
const GAP = 46;

const range = (generator: number, ends: readonly [number, number] | undefined): number[] =>
  ends === undefined ? [] : [...word(generator), ends[0], ends[1]];

const generatorsOf = (zone: FontZone): number[] => [
  ...range(GENERATOR.keyRange, zone.keys),
  ...range(GENERATOR.velRange, zone.velocities),
  ...(zone.generators ?? []).flatMap(([generator, amount]) => [...word(generator), ...word(amount & 0xffff)]),
  ...word(GENERATOR.sampleID),
  ...word(zone.sample),
];

/** Marks a sample of version 3 as compressed: its place in the pool is counted in bytes then, its loop in points. */
const MONO = 1;
const COMPRESSED = 0x10;

const samplePool = (samples: readonly FontSample[]) => {
  const data: number[] = [];
  const headers: number[] = [];
  for (const { name, samples: points, rate, root, correction = 0, loop } of samples) {
    const compressed = points instanceof Uint8Array;
    const start = compressed ? data.length : data.length / 2;
    const [from, to] = loop ?? [0, points.length];
    if (compressed) data.push(...points, ...(points.length % 2 === 1 ? [0] : []));
    else for (const point of points) data.push(...word(Math.round(point * 32767) & 0xffff));
    for (let i = 0; i < GAP; i += 1) data.push(0, 0);
    const ends = compressed ? [from, to] : [start + from, start + to];
    headers.push(...text(name, 20), ...[start, start + points.length, ...ends, rate].flatMap(dword));
    headers.push(root, correction & 0xff, ...word(0), ...word(MONO | (compressed ? COMPRESSED : 0)));
  }
  headers.push(...text('EOS', 20), ...dword(0), ...dword(0), ...dword(0), ...dword(0), ...dword(0));
  headers.push(0, 0, ...word(0), ...word(0));
  return { data, headers };
};

/** A SoundFont file of these presets, an instrument for each. */
export const makeSoundFont = (
  presets: readonly FontPreset[],
  samples: readonly FontSample[],
): Uint8Array<ArrayBuffer> => {
  const { data, headers } = samplePool(samples);
  const isCompressed = samples.some((sample) => sample.samples instanceof Uint8Array);
  const [phdr, pbag, pgen, inst, ibag, igen]: number[][] = [[], [], [], [], [], []];
  const modulator = Array.from({ length: 10 }, () => 0);
  presets.forEach(({ name, bank, program, zones }, index) => {
    phdr.push(...text(name, 20), ...word(program), ...word(bank), ...word(pbag.length / 4));
    phdr.push(...dword(0), ...dword(0), ...dword(0));
    pbag.push(...word(pgen.length / 4), ...word(0));
    pgen.push(...word(GENERATOR.instrument), ...word(index));
    inst.push(...text(name, 20), ...word(ibag.length / 4));
    for (const zone of zones) {
      ibag.push(...word(igen.length / 4), ...word(0));
      igen.push(...generatorsOf(zone));
    }
  });
  phdr.push(...text('EOP', 20), ...word(0), ...word(0), ...word(pbag.length / 4));
  phdr.push(...dword(0), ...dword(0), ...dword(0));
  inst.push(...text('EOI', 20), ...word(ibag.length / 4));
  pbag.push(...word(pgen.length / 4), ...word(0));
  ibag.push(...word(igen.length / 4), ...word(0));
  for (const generators of [pgen, igen]) generators.push(0, 0, 0, 0);
  const info = list(
    'INFO',
    chunk('ifil', [...word(isCompressed ? 3 : 2), ...word(isCompressed ? 0 : 4)]),
    chunk('isng', text('Test', 6)),
    chunk('INAM', text('Tiny band', 10)),
  );
  const pdta = list(
    'pdta',
    chunk('phdr', phdr),
    chunk('pbag', pbag),
    chunk('pmod', modulator),
    chunk('pgen', pgen),
    chunk('inst', inst),
    chunk('ibag', ibag),
    chunk('imod', modulator),
    chunk('igen', igen),
    chunk('shdr', headers),
  );
  return Uint8Array.from(
    chunk('RIFF', [...fourCC('sfbk'), ...info, ...list('sdta', chunk('smpl', data)), ...pdta]),
  );
};

/** A hundred points a turn at this rate are C4 to within a twentieth of a cent: 261.63 Hz. */
const C4_RATE = 26163;
const TURN = 100;

const tone = (name: string, partials: readonly number[]): FontSample => ({
  name,
  samples: Array.from({ length: 4 * TURN }, (_, i) =>
    partials.reduce((sum, level, k) => sum + level * Math.sin((2 * Math.PI * (k + 1) * i) / TURN), 0),
  ),
  rate: C4_RATE,
  root: 60,
  loop: [0, 4 * TURN],
});

const burst = (name: string, seconds: number, seed: number): FontSample => {
  const random = createRandom(seed);
  const length = Math.round(22050 * seconds);
  return {
    name,
    samples: Array.from({ length }, (_, i) => (random() * 2 - 1) * 0.8 * Math.exp((-6 * i) / length)),
    rate: 22050,
    root: 60,
  };
};

const LOOPED = [GENERATOR.sampleModes, 1] as const;
const DYING = [
  LOOPED,
  [GENERATOR.decayVolEnv, timecents(4)],
  [GENERATOR.sustainVolEnv, 1000],
  [GENERATOR.releaseVolEnv, timecents(0.4)],
] as const;
const HELD = [LOOPED, [GENERATOR.releaseVolEnv, timecents(0.3)]] as const;

/** Samples of the small band: a dull tone, a bright one, and two bursts of noise. */
export const BAND_SAMPLES: readonly FontSample[] = [
  tone('dull', [0.6]),
  tone('bright', [0.25, 0.2, 0.15, 0.1, 0.08]),
  burst('long noise', 0.4, 1),
  burst('short noise', 0.08, 2),
];

const tonal = (name: string, program: number, sample: number, held = false): FontPreset => ({
  name,
  bank: 0,
  program,
  zones: [{ sample, generators: held ? HELD : DYING }],
});

/** Every program the band asks for, and a kit of bass drum, snare and closed hi-hat. */
export const BAND_PRESETS: readonly FontPreset[] = [
  tonal('Piano', 0, 1),
  tonal('Electric piano', 4, 0),
  tonal('Organ', 16, 1, true),
  tonal('Harmonica', 22, 1, true),
  tonal('Guitar', 26, 1),
  tonal('Upright bass', 32, 0),
  tonal('Fingered bass', 33, 0),
  {
    name: 'Kit',
    bank: 128,
    program: 0,
    zones: [
      {
        sample: 0,
        keys: [36, 36],
        generators: [LOOPED, [GENERATOR.decayVolEnv, timecents(0.3)], [GENERATOR.sustainVolEnv, 1000]],
      },
      { sample: 2, keys: [38, 38], generators: [[GENERATOR.overridingRootKey, 38]] },
      { sample: 3, keys: [42, 42], generators: [[GENERATOR.overridingRootKey, 42]] },
    ],
  },
];

/** The small band as a file, about 25 kB. */
export const bandSoundFont = (): Uint8Array<ArrayBuffer> => makeSoundFont(BAND_PRESETS, BAND_SAMPLES);
