import { REED_CENTS } from './harp-case';

/**
 * Cents of a reed as typed: a sign or none, either minus (- or −), a dot or comma before decimals. Null when it is
 * no number or further from 0 than `REED_CENTS`.
 */
export const readCents = (text: string): number | null => {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  if (!/^[+-]?\d+(\.\d+)?$/.test(plain)) return null;
  const cents = Number(plain);
  return Math.abs(cents) <= REED_CENTS ? cents + 0 : null;
};
