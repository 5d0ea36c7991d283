import type { Chart } from '../chart/chart';
import type { Harp } from '../harp/harp';
import type { TechniqueChoice } from '../harp/reach';
import type { LineTaste } from '../lines/line-tastes';
import { seedFrom } from '../theory/random';
import { type MadeCall, makeCall } from './call';
import type { CallLevel } from './call-levels';
import { rolesOf } from './call-rhythm';
import type { TradeRoom } from './trade-plan';

/** What the calls of a chorus are made from. */
export interface ChorusCallSpec {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly taste: LineTaste;
  readonly level: CallLevel;
  /** Another for each chorus. */
  readonly seed: number;
  readonly rooms: readonly TradeRoom[];
}

/** How often a call that came out like the one before it is made anew. */
const TRIES = 8;

const same = (a: MadeCall, b: MadeCall | undefined): boolean =>
  b !== undefined && JSON.stringify(a.phrase.notes) === JSON.stringify(b.phrase.notes);

/**
 * The calls of one chorus, which together tell something: an idea, the idea over another chord, an end that comes home.
 * No call is like the one before it, the last of the chorus before included where it is given.
 */
export const chorusCalls = (spec: ChorusCallSpec, before?: MadeCall): readonly MadeCall[] => {
  const { chart, rooms, seed, ...given } = spec;
  const roles = rolesOf(rooms.length);
  const calls: MadeCall[] = [];
  for (const [i, room] of rooms.entries()) {
    const bars = chart.bars.slice(room.bar, room.bar + room.bars);
    const motif = calls[i - (i % 4)] ?? null;
    const make = (attempt: number): MadeCall =>
      makeCall({
        ...given,
        bars,
        meter: chart.meter,
        role: roles[i] ?? 'motif',
        // Where the idea leads to the same notes again, something else is said.
        motif: attempt < TRIES / 2 ? motif : null,
        seed: seedFrom(seed, room.bar, ...(attempt === 0 ? [] : [attempt])),
      });
    const last = calls[i - 1] ?? (i === 0 ? before : undefined);
    let call = make(0);
    for (let attempt = 1; attempt < TRIES && same(call, last); attempt += 1) call = make(attempt);
    calls.push(call);
  }
  return calls;
};
