/** True in `npm test`, which runs every benchmark once for whether it still works: its figures mean nothing there. */
const ONCE = process.env.BENCH_ONCE !== undefined;

/** What a benchmark measures, or as little as shows that it still works. */
export const measured = <T>(whole: T, little: T): T => (ONCE ? little : whole);
