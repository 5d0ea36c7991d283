/**
 * How well notes are heard, on seeds that nothing was tuned on (tuning used seeds from 100 to 199). The table is printed
 * before the times, of two takes; HEARING_TAKES=24 measures as many. Rows by what is played and how loud the band comes
 * back; F is the field's note measure (onset ±50 ms, pitch ±50 cents).
 */
import { bench, describe } from 'vitest';
import { measured } from '../helpers/bench-depth';
import { makeTake } from '../helpers/hearing/corpus';
import { measureGrips } from '../helpers/hearing/grip-figures';
import { hearTake } from '../helpers/hearing/hear-take';
import type { LineKind } from '../helpers/hearing/lines';
import { measureNotes, NOTE_FIGURES_HEAD, noteFiguresLine } from '../helpers/hearing/note-figures';
import { installedSoundSet, NO_SOUND_SET } from '../helpers/hearing/sound-set';

const FIRST_SEED = 5000;
const many = Number(process.env.HEARING_TAKES ?? measured(2, 1));
const seconds = measured(10, 3);
const seeds = Array.from({ length: many }, (_, i) => FIRST_SEED + i);

type Row = readonly [kind: 'line' | 'repeats' | 'bends' | 'held', leak: number | null];
const ROWS: readonly Row[] = [
  ['line', null],
  ['repeats', null],
  ['bends', null],
  ['held', null],
  ['line', -12],
  ['line', -6],
];
const FOREIGN: readonly Row[] = [
  ['line', null],
  ['repeats', null],
  ['line', -6],
];
const rows = measured(ROWS, ROWS.slice(-1)).map(([kind, leak]) =>
  noteFiguresLine(measureNotes({ kind, leak, seeds, seconds })),
);
/** The same lines by a harmonica that nobody here made, where a sound set is installed. */
const set = installedSoundSet();
const foreign =
  set === null
    ? [NO_SOUND_SET]
    : measured(FOREIGN, FOREIGN.slice(-1)).map(([kind, leak]) =>
        noteFiguresLine(measureNotes({ kind, leak, seeds, seconds, set })),
      );
/** What is played, how loud the band comes back, and whether each reed was heard alone before. */
type GripRow = readonly [kind: LineKind, leak: number | null, taught: boolean];
const GRIPS: readonly GripRow[] = [
  ['grips', null, false],
  ['grips', null, true],
  ['grips', -12, false],
  ['line', null, false],
  ['bends', null, false],
  ['held', null, false],
];
const grips = measured(GRIPS, GRIPS.slice(0, 1)).map(([kind, leak, taught]) => {
  const figures = measureGrips({ seeds, kind, seconds, leak, taught });
  const where = `${kind}, ${leak === null ? 'no band' : `band at ${leak} dB`}${taught ? ', reeds heard before' : ''}`;
  const exact =
    figures.grips === 0 ? '' : ` ${(100 * figures.exact).toFixed(1)} % of ${figures.grips} grips exact,`;
  return `${where}:${exact} ${(100 * figures.mistaken).toFixed(2)} % of ${figures.singles} single notes taken for grips`;
});
process.stdout.write(
  `\n${[NOTE_FIGURES_HEAD, ...rows, 'by a sound set:', ...foreign, ...grips].join('\n')}\n\n`,
);

describe('notes of ten seconds', () => {
  const take = makeTake({ seed: FIRST_SEED, kind: 'line', seconds, leak: null });
  bench('a line', () => {
    hearTake(take);
  });
});
