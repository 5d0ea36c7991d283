import { elementAt } from '../theory/element-at';
/** A value with what came before and what was undone. Oldest first in `past`, next to redo first in `future`. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
}

/** Steps kept; older ones are forgotten. */
export const MOST_STEPS = 200;

/** A history with nothing to undo. */
export const startHistory = <T>(present: T): History<T> => ({ past: [], present, future: [] });

/** Takes a step to a new value; what was undone is forgotten. The same value again is no step. */
export const record = <T>(history: History<T>, present: T): History<T> =>
  Object.is(present, history.present)
    ? history
    : { past: [...history.past, history.present].slice(-MOST_STEPS), present, future: [] };

/** Takes the last step back; the same history where there is none. */
export const undo = <T>({ past, present, future }: History<T>): History<T> =>
  past.length === 0
    ? { past, present, future }
    : { past: past.slice(0, -1), present: elementAt(past, past.length - 1), future: [present, ...future] };

/** Takes the last undone step again; the same history where there is none. */
export const redo = <T>({ past, present, future }: History<T>): History<T> =>
  future.length === 0
    ? { past, present, future }
    : { past: [...past, present], present: elementAt(future, 0), future: future.slice(1) };
