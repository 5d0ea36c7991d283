/**
 * How well notes are heard, on seeds that nothing was tuned on (tuning used seeds from 100 to 199). The table is printed
 * before the times; `npm test`, which runs every benchmark once, measures fewer takes. Rows by what is played and how
 * loud the band comes back; F is the field's note measure (onset ±50 ms, pitch ±50 cents).
 */
import { bench, describe } from 'vitest';
import { makeTake } from '../helpers/hearing/corpus';
import { measureGrips } from '../helpers/hearing/grip-figures';
import { hearTake } from '../helpers/hearing/hear-take';
import { measureNotes, NOTE_FIGURES_HEAD, noteFiguresLine } from '../helpers/hearing/note-figures';
import { installedSoundSet, NO_SOUND_SET } from '../helpers/hearing/sound-set';

const FIRST_SEED = 5000;
const many = process.env.HEARING_TAKES === undefined ? 2 : Number(process.env.HEARING_TAKES);
const seeds = Array.from({ length: many }, (_, i) => FIRST_SEED + i);

const rows = (
  [
    ['line', null],
    ['repeats', null],
    ['bends', null],
    ['held', null],
    ['line', -12],
    ['line', -6],
  ] as const
).map(([kind, leak]) => noteFiguresLine(measureNotes({ kind, leak, seeds, seconds: 10 })));
/** The same lines by a harmonica that nobody here made, where a sound set is installed. */
const set = installedSoundSet();
const foreign =
  set === null
    ? [NO_SOUND_SET]
    : (
        [
          ['line', null],
          ['repeats', null],
          ['line', -6],
        ] as const
      ).map(([kind, leak]) => noteFiguresLine(measureNotes({ kind, leak, seeds, seconds: 10, set })));
const grips = ([null, -12] as const).map((leak) => {
  const { grips: count, exact } = measureGrips(seeds, { seconds: 10, leak });
  const band = leak === null ? 'without a band' : `with the band at ${leak} dB`;
  return `grips ${band}: ${(100 * exact).toFixed(1)} % of ${count} exact`;
});
process.stdout.write(
  `\n${[NOTE_FIGURES_HEAD, ...rows, 'by a sound set:', ...foreign, ...grips].join('\n')}\n\n`,
);

describe('notes of ten seconds', () => {
  const take = makeTake({ seed: FIRST_SEED, kind: 'line', seconds: 10, leak: null });
  bench('a line', () => {
    hearTake(take);
  });
});
