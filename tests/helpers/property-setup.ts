import fc from 'fast-check';

/**
 * One seed for every property of `npm test`: a rare case that is found by chance refuses a change that has nothing to
 * do with it, and is gone when one looks for it. Chance is for `npm run soak`, which prints the seed it found it with.
 */
const SEED = 12;

if (process.env.SOAK_RUNS === undefined) fc.configureGlobal({ seed: SEED });
