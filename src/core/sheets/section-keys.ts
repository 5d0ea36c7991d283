const KEY_LINE = /^Key: (.*)$/;
const HEADING = /^\[.*\]$/;

/**
 * Lines of a chart with its keys where a chart has them. In a sheet of music a key holds until the next one; in a
 * chart it holds to the end of its section, and a heading goes back to the key of the whole. So each key is written
 * behind the heading, and once more where it goes on beyond the next one. @param main the key of the whole, as a
 * `Key:` line has it; null where there is none.
 */
export const withSectionKeys = (lines: readonly string[], main: string | null): readonly string[] => {
  let key = main;
  let written = main;
  return lines.flatMap((line) => {
    const named = KEY_LINE.exec(line)?.[1];
    if (named !== undefined) {
      key = named;
      return [];
    }
    if (HEADING.test(line)) written = main;
    if (!line.startsWith('|') || key === written || key === null) return [line];
    written = key;
    return [`Key: ${key}`, line];
  });
};
