/** How full a bar is played: light, normal, driving. */
export type Level = 0 | 1 | 2;

/** One of something for each level. */
export type ByLevel<T> = readonly [T, T, T];
