import { bench, describe } from 'vitest';
import type { Program } from '../../src/core/arranger/program';
import { sectionAt } from '../../src/core/arranger/section-at';
import { buildChart } from '../../src/core/chart/build-chart';
import { writeMidi } from '../../src/core/formats/midi';
import { writeMusicXml } from '../../src/core/formats/musicxml';
import { encodePcm } from '../../src/core/formats/wav';
import { DEFAULT_PLAN, DEFAULT_STYLE } from '../../src/core/settings/defaults';
import { createDraws } from '../../src/core/theory/random';
import { asBpm, asPitchClass } from '../../src/core/theory/units';
import { measured } from '../helpers/bench-depth';

const chart = buildChart({ form: 'jazz-swing', key: asPitchClass(5), meter: '4/4' });
const program: Program = {
  chart,
  style: { ...DEFAULT_STYLE, feel: 'swing' },
  tempo: asBpm(160),
  plan: { ...DEFAULT_PLAN, choruses: 96 },
};

describe('a MIDI file grows with the song', () => {
  for (const choruses of measured([12, 96], [2])) {
    const sections = Array.from({ length: choruses }, (_, index) => sectionAt(program, index)).filter(
      (section) => section !== null,
    );
    bench(`${choruses} choruses of swing`, () => {
      writeMidi({ title: 'Long', sections, voices: { bass: 'upright-bass', chords: 'piano' } });
    });
  }
});

describe('ten seconds of stereo as PCM', () => {
  const samples = Float32Array.from({ length: measured(480_000, 48_000) }, (_, i) => Math.sin(i / 30) / 2);
  bench('16 bits, dithered', () => {
    encodePcm([samples, samples], 16, createDraws(1));
  });
  bench('24 bits', () => {
    encodePcm([samples, samples], 24);
  });
});

describe('a lead sheet', () => {
  bench('twelve bars', () => {
    writeMusicXml({ chart, tempo: asBpm(160), feel: 'Swing', swing: { ratio: 2.75, unit: 'eighth' } });
  });
});
