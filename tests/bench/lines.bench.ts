import { bench, describe } from 'vitest';
import { buildChart, layChart } from '../../src/core/chart/build-chart';
import type { Chart } from '../../src/core/chart/chart';
import { buildHarp } from '../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../src/core/harp/reach';
import { RICHTER } from '../../src/core/harp/tunings';
import type { LineKind, Pace } from '../../src/core/lines/line-slots';
import { findLine } from '../../src/core/lines/lines';
import { asPitchClass } from '../../src/core/theory/units';
import { measured } from '../helpers/bench-depth';

const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const chorus = buildChart({ form: 'jazz-bebop', key: asPitchClass(7), meter: '4/4' });

const choruses = (count: number): Chart =>
  layChart({
    title: 'Jazz blues',
    mode: 'major',
    tonic: 'G',
    meter: chorus.meter,
    bars: Array.from({ length: count }, () =>
      chorus.bars.map(({ chords }) => chords.map(({ chord }) => chord)),
    ).flat(),
  });

const line = (chart: Chart, kind: LineKind, pace: Pace) =>
  findLine({ chart, harp, technique: EVERY_TECHNIQUE, kind, pace, taste: 'even', seed: 1 });

describe('lines over twelve choruses of a jazz blues, every technique on', () => {
  const twelve = choruses(measured(12, 1));
  bench('guide tones', () => {
    line(twelve, 'guide tones', 1);
  });
  for (const pace of [1, 2, 4] as const) {
    bench(`chord tones, ${pace} a bar`, () => {
      line(twelve, 'chord tones', pace);
    });
  }
  bench('arpeggio', () => {
    line(twelve, 'arpeggio', 1);
  });
});

/** The time must grow as the length does: twice as long for twice the choruses. */
describe('an arpeggio against its length', () => {
  for (const count of measured([3, 6, 12, 24], [1])) {
    const chart = choruses(count);
    bench(`${count} choruses`, () => {
      line(chart, 'arpeggio', 1);
    });
  }
});
