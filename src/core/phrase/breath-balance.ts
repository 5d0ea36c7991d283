import type { Breath } from '../harp/harp';
import type { Phrase } from './phrase';

/** A rest of this share of a beat lets the lungs come back. */
const BREATHER = 240;

/** The longest way on one breath without a rest of an eighth or a turn, in ticks. */
export const longestBreath = ({ notes }: Phrase): number => {
  let longest = 0;
  let run: { readonly breath: Breath | undefined; readonly from: number; readonly to: number } | null = null;
  for (const { at, length, sounds } of notes) {
    const breath = sounds[0]?.breath;
    const goesOn: boolean = run !== null && run.breath === breath && at - run.to < BREATHER;
    run = { breath, from: goesOn && run !== null ? run.from : at, to: at + length };
    longest = Math.max(longest, run.to - run.from);
  }
  return longest;
};
