/**
 * How well pitch is heard, frame by frame, by our tracker and by detectors of others, on seeds that nothing was tuned
 * on (tuning used seeds 1 to 24). The table is printed before the times, of two short takes; HEARING_TAKES=24 measures as
 * many of 15 seconds.
 */
import { bench, describe } from 'vitest';
import { measured } from '../helpers/bench-depth';
import { makeTake } from '../helpers/hearing/corpus';
import { DETECTORS } from '../helpers/hearing/detectors';
import { measureFrames } from '../helpers/hearing/frame-figures';

const FIRST_SEED = 501;
const KINDS = ['line', 'bends', 'held', 'repeats'] as const;
const asked = process.env.HEARING_TAKES;
const takes = asked === undefined ? measured(2, 1) : Number(asked);
const seconds = asked === undefined ? measured(3, 1) : 15;

const takesAt = (leak: number | null) =>
  Array.from({ length: takes }, (_, i) =>
    makeTake({ seed: FIRST_SEED + i, kind: KINDS[i % KINDS.length], seconds, leak }),
  );

/** Time to the first report that stays right: after the breath, and after the reed is at −12 dB of its note. */
const HEAD =
  'leak   detector             ≤50 c %  octave %  false %  cents  breath p50/p90  reed p50/p90   CPU %';

const pair = (ms: readonly number[]): string =>
  ms
    .map((value) => value.toFixed(1))
    .join(' / ')
    .padStart(15);

const rows = measured([null, -20, -12, -6, 0], [-12]).flatMap((leak) => {
  const heard = takesAt(leak);
  return DETECTORS.filter(({ name }) => leak !== null || !name.includes('band')).map((detector) => {
    const { right, octave, falselyVoiced, cents, latency, afterPlain, cpu } = measureFrames(detector, heard);
    return [
      (leak === null ? 'none' : `${leak} dB`).padEnd(6),
      detector.name.padEnd(20),
      right.toFixed(2).padStart(7),
      octave.toFixed(2).padStart(9),
      falselyVoiced.toFixed(1).padStart(8),
      cents.toFixed(1).padStart(6),
      pair(latency),
      pair(afterPlain),
      cpu.toFixed(1).padStart(7),
    ].join(' ');
  });
});
process.stdout.write(`\n${[HEAD, ...rows].join('\n')}\n\n`);

describe('ten seconds of a line', () => {
  const take = makeTake({ seed: FIRST_SEED, kind: 'line', seconds: measured(10, 1), leak: -12 });
  for (const detector of DETECTORS.slice(0, 3)) {
    bench(detector.name, () => {
      detector.listen(take);
    });
  }
});
