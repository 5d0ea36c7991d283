/** Below this a state is silence; smaller numbers still would slow the processor down (denormals). */
const SILENCE = 1e-30;

/** What a filter holds of so much between two blocks: nothing where it has died away. */
export const settled = (state: number): number => (Math.abs(state) < SILENCE ? 0 : state);
