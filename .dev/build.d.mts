/** Makes dist agree with the sources and resolves with its path; throws when the build fails. */
export const ensureBuilt: () => Promise<string>;
