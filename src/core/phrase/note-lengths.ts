import { asTicks, type Ticks } from '../theory/units';

/** The trade's note values by letter, in ticks: whole, half, quarter, eighth, sixteenth. */
const VALUES: Readonly<Record<string, number>> = { w: 1920, h: 960, q: 480, e: 240, s: 120 };

/** `.` makes half as long again, `t` a third of a triplet. */
const MODIFIERS: Readonly<Record<string, number>> = { '': 1, '.': 3 / 2, t: 2 / 3 };

const PART = /^(?:([whqes])([.t]?)|(\d{1,6}))$/;

/** All single values, longest first. */
const NAMED: readonly (readonly [string, number])[] = Object.entries(VALUES)
  .flatMap(([letter, ticks]) =>
    Object.entries(MODIFIERS).map(([sign, factor]): readonly [string, number] => [
      letter + sign,
      ticks * factor,
    ]),
  )
  .sort(([, a], [, b]) => b - a);

/**
 * Reads a note length: a letter (`w h q e s`) with `.` for dotted or `t` for triplet, a number of ticks (480 to the
 * quarter), or several tied with `+` (`h+e`). Null when it is none or shorter than a tick.
 */
export const readLength = (text: string): Ticks | null => {
  let sum = 0;
  for (const part of text.split('+')) {
    const [, letter, sign = '', ticks] = PART.exec(part) ?? [];
    if (letter === undefined && ticks === undefined) return null;
    sum += letter === undefined ? Number(ticks) : (VALUES[letter] ?? 0) * (MODIFIERS[sign] ?? 1);
  }
  return sum >= 1 ? asTicks(sum) : null;
};

/** Writes a note length so that it reads back: one value, two tied, or a number of ticks. */
export const printLength = (length: Ticks): string => {
  const single = NAMED.find(([, ticks]) => ticks === length);
  if (single !== undefined) return single[0];
  for (const [name, ticks] of NAMED) {
    const rest = NAMED.find(([, other]) => other === length - ticks);
    if (rest !== undefined) return `${name}+${rest[0]}`;
  }
  return String(length);
};
