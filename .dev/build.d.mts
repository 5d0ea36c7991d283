/** Makes dist agree with the sources and resolves with its path; throws when the build fails. */
export const ensureBuilt: () => Promise<string>;
/** A name for what files and folders hold, given from the project's folder. */
export const hashOf: (paths: readonly string[]) => string;
