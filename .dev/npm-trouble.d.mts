/** What kept npm from installing, told from its error output, and what to do about it. */
export const npmTrouble: (output: string, root: string) => string;
/** Whether an installation that npm calls done has left files out. */
export const leftFilesOut: (output: string) => boolean;
