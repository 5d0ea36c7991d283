/** The greatest whole number that divides both (Euclid, Elements VII.2). */
export const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));
