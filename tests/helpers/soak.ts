import { describe, it } from 'vitest';

/**
 * How deep properties are tried: the one place that says so. `npm test` tries each as often as finds what is broken by
 * a change; the rare cases are for `npm run soak`, which sets the variable.
 */
const { SOAK_RUNS } = process.env;

/** Tries of a cheap property in `npm test`, where they are the same each time: a tenth of a second each. */
const CHEAP = 1000;

/**
 * How often a property is to be tried. A soak tries dear ones so much less often; `npm test` by the root of that only,
 * because a property that is tried ten times holds nothing.
 * @param dearness how many cheap tries, of some 0.1 ms, one of this property costs.
 */
export const soakRuns = (dearness = 1): number =>
  SOAK_RUNS === undefined
    ? Math.ceil(CHEAP / Math.sqrt(dearness))
    : Math.max(1, Math.round(Number(SOAK_RUNS) / dearness));

/** How long a test of so many tries may take, in ms: a day in a soak, which is as long as it needs. */
export const SOAK_TIMEOUT = SOAK_RUNS === undefined ? 60_000 : 86_400_000;

/** All there is in a soak, a few that stand for the rest in `npm test`. */
export const inSoak = <Each>(all: readonly Each[], few: readonly Each[]): readonly Each[] =>
  SOAK_RUNS === undefined ? few : all;

/**
 * All there is in a soak, every third in `npm test`: who asks with the next number gets the next third, so that three
 * together have them all.
 */
export const inTurn = <Each>(all: readonly Each[], turn: number): readonly Each[] =>
  inSoak(
    all,
    all.filter((_, at) => at % 3 === turn % 3),
  );

/**
 * A test that only a soak runs: what it holds is held in `npm test` by others of its file, or without a browser. It is
 * not declared there, as a test that is skipped counts as failed.
 */
export const soakIt = (name: string, test: () => Promise<void> | void): void => {
  if (SOAK_RUNS !== undefined) it(name, test);
};

/** A group of such tests. */
export const soakDescribe = (name: string, group: () => void): void => {
  if (SOAK_RUNS !== undefined) describe(name, group);
};
