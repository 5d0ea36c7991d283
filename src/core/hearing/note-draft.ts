import { elementAt } from '../theory/element-at';
import { highMedian } from '../theory/statistics';
import { asHz } from '../theory/units';
import type { Reading } from './readings';

/** How a note goes on from the one before: after an attack of its own, by a leap, or by a glide within one breath. */
export type Joined = 'attack' | 'leap' | 'glide';

/** A stretch that is one note. */
export interface Span {
  readonly id: number;
  readonly from: number;
  /** Null while it sounds. */
  readonly to: number | null;
  readonly readings: readonly Reading[];
  /** Where the pitch has settled, cents as in readings; null when it never did. */
  readonly anchor: number | null;
  readonly joined: Joined;
}

/** When a pitch (Hz) first read at a time was attacked; null when nothing rose there, as in the tail of a room. */
export type FindAttack = (frequency: number, first: number) => number | null;

/** A note that is being heard. */
export interface Draft {
  readonly from: number;
  /** True when silence lies before it, so that its attack is to be looked for. */
  readonly fresh: boolean;
  readings: Reading[];
  anchor: number | null;
  /** Index of the reading with which the pitch left the anchor. */
  left: number | null;
  id: number | null;
  readonly joined: Joined;
}

/** Makes spans of drafts. */
export interface DraftReporter {
  /** The draft as a span that has begun, or has ended at a time. */
  report(one: Draft, to: number | null): Span;
  /** The draft from its attack on, once its pitch is known; null when nothing was attacked. */
  begun(one: Draft, cents: number): Draft | null;
  /** Ends the draft; what is too short, or has no attack, was no note. */
  close(one: Draft, to: number): readonly Span[];
}

const SHORTEST = 0.03;

/** Hz of cents as in readings. */
export const hzOfReading = (cents: number): number => asHz(440 * 2 ** ((cents - 6900) / 1200));

/** A draft after silence, whose pitch is not known yet. */
export const newDraft = (from: number, readings: Reading[]): Draft => ({
  from,
  fresh: true,
  readings,
  anchor: null,
  left: null,
  id: null,
  joined: 'attack',
});

/** Counts the spans of one stream. @param attackOf finds where a note begins. */
export const createDraftReporter = (attackOf: FindAttack): DraftReporter => {
  let ids = 0;
  const report: DraftReporter['report'] = (one, to) => {
    one.id ??= ids++;
    const { id, from, readings, anchor, joined } = one;
    return { id, from, to, readings, anchor, joined };
  };
  const begun: DraftReporter['begun'] = (one, cents) => {
    if (!one.fresh) return one;
    const from = attackOf(hzOfReading(cents), elementAt(one.readings, 0).time);
    return from === null ? null : { ...one, from, fresh: false };
  };
  return {
    report,
    begun,
    close(one, to) {
      const readings = one.readings.filter(({ time }) => time <= to);
      if (one.id !== null) return [report({ ...one, readings }, to)];
      const first = readings[0];
      if (first === undefined || to - first.time < SHORTEST) return [];
      const known = begun({ ...one, readings }, highMedian(readings.map(({ cents }) => cents)));
      return known === null ? [] : [report(known, to)];
    },
  };
};
