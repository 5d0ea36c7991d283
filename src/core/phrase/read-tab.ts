import { HOLES } from '../harp/build-harp';
import type { Breath } from '../harp/harp';
import type { PhraseSound } from './phrase';

/**
 * One sound in any of the trade's three styles (the ones `tab` writes): sign, hole, letters, arrow, marks for bends,
 * mark for an overbend. Where the breath is not written, the hole is blown.
 */
const TAB =
  /^(?<sign>[+\-−–])?(?<hole>\d{1,2})(?<letters>o?[bd])?(?<arrow>[↑↓])?(?<bends>['’′"″”/]*)(?<over>[o○°#])?$/i;

/** Semitones each mark stands for. */
const BEND_MARKS: Readonly<Record<string, number>> = {
  "'": 1,
  '’': 1,
  '′': 1,
  '/': 1,
  '"': 2,
  '″': 2,
  '”': 2,
};

/** No two reeds of a hole lie further apart than an octave. */
export const DEEPEST_BEND = 11;

const breathOf = (sign: string, letters: string, arrow: string): Breath | null => {
  const signs = [
    sign === '' ? null : sign === '+' ? 'blow' : 'draw',
    letters === '' ? null : letters.endsWith('b') ? 'blow' : 'draw',
    arrow === '' ? null : arrow === '↑' ? 'blow' : 'draw',
  ] as const;
  const said = signs.filter((each) => each !== null);
  return said.length > 1 ? null : (said[0] ?? 'blow');
};

/** Reads one sound of tab (`-3''`, `3D''`, `3↓//`, `6o`, `6OB`, `6↑○`), or null when it is none. Never throws. */
export const readTab = (text: string): PhraseSound | null => {
  const {
    sign = '',
    hole = '',
    letters = '',
    arrow = '',
    bends = '',
    over = '',
  } = TAB.exec(text)?.groups ?? {};
  const number = Number(hole);
  const breath = breathOf(sign, letters.toLowerCase(), arrow);
  if (!(number >= 1 && number <= HOLES.most) || breath === null) return null;
  const bend = [...bends].reduce((sum, mark) => sum + (BEND_MARKS[mark] ?? 0), 0);
  const isOver = over !== '' || letters.length === 2;
  if (bend > DEEPEST_BEND || (isOver && bend > 0) || (over !== '' && letters.length === 2)) return null;
  const technique = isOver ? 'overbend' : bend > 0 ? 'bend' : 'natural';
  return { hole: number, breath, technique, bend };
};
