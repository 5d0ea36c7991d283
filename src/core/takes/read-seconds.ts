/** Longest recording that has a place to begin at, in seconds: a day. */
const MOST = 86_400;
const FORM = /^(?:(\d{1,4}):)?(\d{1,5}(?:[.,]\d+)?)$/;

/**
 * A typed time: `12.5` seconds or `1:05` (minutes and seconds). A sentence where it cannot be read.
 *
 * @example
 * readSeconds('1:05') // 65
 * readSeconds('soon') // 'Type seconds such as 12.5, or minutes and seconds such as 1:05.'
 */
export const readSeconds = (text: string): number | string => {
  const [, minutes = '0', seconds = ''] = FORM.exec(text.trim()) ?? [];
  const value = 60 * Number(minutes) + Number(seconds.replace(',', '.'));
  return seconds !== '' && value <= MOST
    ? value
    : 'Type seconds such as 12.5, or minutes and seconds such as 1:05.';
};
