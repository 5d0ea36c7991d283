/** The path of a Firefox that starts, or null; throws when FIREFOX_PATH names none. */
export const findFirefox: () => Promise<string | null>;
