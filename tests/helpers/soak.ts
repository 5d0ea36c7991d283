/** Times each property of hostile input is tried in `npm test`; a soak raises it by the environment variable. */
const RUNS = Number(process.env.SOAK_RUNS ?? 100_000);

/**
 * How often a property is to be tried.
 * @param dearness how many cheap tries one of this property costs; dear ones are tried so much less often.
 */
export const soakRuns = (dearness = 1): number => Math.max(1, Math.round(RUNS / dearness));

/** How long a test of so many tries may take: a minute where `npm test` runs it, as long as it needs in a soak. */
export const SOAK_TIMEOUT = 60_000 + RUNS;
