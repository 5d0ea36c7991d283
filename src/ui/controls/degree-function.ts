import { isSafe } from '../../core/fit/plain-words';
import type { Degree } from '../../core/theory/chord';

/** What a degree does in a chord; each has a colour of its own, never without its text. */
export type ChordFunction = 'root' | 'third' | 'fifth' | 'seventh' | 'other';

const FUNCTIONS: Readonly<Record<string, ChordFunction>> = {
  R: 'root',
  '3': 'third',
  b3: 'third',
  '5': 'fifth',
  b5: 'fifth',
  '#5': 'fifth',
  '7': 'seventh',
  b7: 'seventh',
  bb7: 'seventh',
};

/** In plain words there are two: what is safe has the colour of a third, what leans that of a seventh. */
export const plainFunction = (degree: Degree): ChordFunction => (isSafe(degree) ? 'third' : 'seventh');

/** The function a degree has in a chord; ninths, sixths and the like are `other`. */
export const functionOf = (degree: Degree): ChordFunction => FUNCTIONS[degree] ?? 'other';
