import type { HeardChorus } from '../../core/practice/heard-chorus';

/** What was heard of a chorus, with the sentence about it. */
export interface ChorusReport {
  /** From 0. */
  readonly chorus: number;
  readonly heard: HeardChorus;
  /** The form it was a chorus of. */
  readonly formId: string;
  /** For each bar of it, its index in the whole chorus. */
  readonly numbers: readonly (number | null)[];
  readonly advice: string;
}
