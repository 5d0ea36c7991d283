/** The path of a Chromium or Chrome that starts, or null; throws when CHROMIUM_PATH names none. */
export const findChromium: () => Promise<string | null>;
/** Finds a browser or installs one; throws with a clear sentence when neither works. */
export const ensureChromium: () => Promise<string>;
/** What a Chromium is tested with. */
export const CHROMIUM_FLAGS: readonly string[];
