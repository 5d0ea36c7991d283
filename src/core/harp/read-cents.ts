import { readDecimal } from '../theory/decimal';
import { quoted } from '../theory/wording';
import { REED_CENTS } from './harp-case';

/** Never a negative zero, which would print with a sign. */
const toHundredth = (cents: number): number => Math.round(cents * 100) / 100 + 0;

/**
 * Cents of a reed as typed, to a hundredth: a sign or none, either minus (- or −), a dot or comma before decimals.
 * @returns the cents, or a sentence that says what was wrong: no number, or further from 0 than `REED_CENTS`.
 */
export const readCents = (text: string): number | string => {
  const typed = text.trim();
  const range = `Type cents from −${REED_CENTS} to ${REED_CENTS}.`;
  const cents = readDecimal(text);
  if (cents === null) return `${quoted(typed)} is not a number. ${range}`;
  return Math.abs(cents) <= REED_CENTS ? toHundredth(cents) : `${quoted(typed)} is too far off. ${range}`;
};

/** Cents as a player types them, to a hundredth: `readCents` reads them back. */
export const printCents = (cents: number): string => String(toHundredth(cents)).replace('-', '−');
