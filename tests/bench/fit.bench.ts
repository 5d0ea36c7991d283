import { bench, describe } from 'vitest';
import { buildChart, layChart, METERS } from '../../src/core/chart/build-chart';
import type { Chart } from '../../src/core/chart/chart';
import { advise } from '../../src/core/fit/advice';
import { fitChart } from '../../src/core/fit/fit';
import { gripsFor } from '../../src/core/fit/grips';
import { buildHarp } from '../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../src/core/harp/reach';
import { findTuning, RICHTER } from '../../src/core/harp/tunings';
import { chordOf } from '../../src/core/theory/chords';
import { PITCH_CLASSES } from '../../src/core/theory/pitch';
import { asPitchClass } from '../../src/core/theory/units';
import { measured } from '../helpers/bench-depth';

const ROOTS = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const QUALITIES = ['7', 'm7', 'dim7', 'm7b5', '7b9', 'maj7', '13', '9'];

/** A chart of all different chords, the worst case for a fit that works each chord out once. */
const variedChart = (bars: number): Chart =>
  layChart({
    title: 'Varied',
    mode: 'major',
    tonic: 'G',
    meter: METERS['4/4'],
    bars: Array.from({ length: bars }, (_, i) => [
      chordOf({
        root: ROOTS[i % ROOTS.length] ?? 'C',
        quality: QUALITIES[Math.floor(i / ROOTS.length) % QUALITIES.length] ?? '7',
        ...(i >= ROOTS.length * QUALITIES.length ? { bass: ROOTS[(i + 4) % ROOTS.length] ?? 'E' } : {}),
      }),
    ]),
  });

const HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const JAZZ = buildChart({ form: 'jazz-bebop', key: asPitchClass(7), meter: '4/4' });
const MINOR = findTuning('natural-minor') ?? RICHTER;
const TWELVE_HARPS = PITCH_CLASSES.map((key) => buildHarp({ tuning: RICHTER, key, octave: 0 }));
const CASE = [...TWELVE_HARPS, ...PITCH_CLASSES.map((key) => buildHarp({ tuning: MINOR, key, octave: 0 }))];
const technique = EVERY_TECHNIQUE;

describe('fit', () => {
  for (const bars of measured([32, 64, 128], [32])) {
    const chart = variedChart(bars);
    bench(`${bars} bars, every chord different`, () => {
      fitChart({ chart, harp: HARP, technique });
    });
  }
  bench('a jazz twelve on twelve harps', () => {
    for (const harp of TWELVE_HARPS) fitChart({ chart: JAZZ, harp, technique });
  });
});

describe('building', () => {
  bench('a harp', () => {
    buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
  });
  bench('a jazz twelve', () => {
    buildChart({ form: 'jazz-bebop', key: asPitchClass(7), meter: '4/4' });
  });
});

describe('grips and advice', () => {
  bench('grips of a jazz twelve, chord by chord', () => {
    for (const { chord } of JAZZ.bars.flatMap(({ chords }) => chords)) gripsFor({ chord, harp: HARP });
  });
  bench('advice for 24 harps in the song key', () => {
    advise({ chart: JAZZ, harps: CASE, technique });
  });
  bench('advice for 24 harps in 12 positions', () => {
    advise({ chart: JAZZ, harps: CASE, technique, keys: measured(PITCH_CLASSES, PITCH_CLASSES.slice(0, 1)) });
  });
});
