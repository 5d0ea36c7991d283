/**
 * A number in decimal digits, as it is typed and as files have it (`decimal` of XML Schema 1.1, part 2, 3.3.3): a sign
 * or none, and a dot or comma before decimals. Null for anything else, also for what programming languages take for
 * a number: `0x50`, `1e3`, nothing.
 *
 * @example
 * readDecimal('−12,5') // -12.5
 */
export const readDecimal = (text: string): number | null => {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  const number = /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
  return Number.isFinite(number) ? number : null;
};
