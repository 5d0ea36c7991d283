import { abcFraction, type Whole } from './abc-fields';

/** Signs that lead through a tune by another way than onwards, as charts write them. */
export type RoadSign = 'Segno' | 'Coda' | 'Fine' | 'D.C.' | 'D.S.' | 'To Coda';

/** Decorations that are such signs (§4.14). */
const ROADS: Readonly<Record<string, RoadSign>> = {
  ...{ segno: 'Segno', coda: 'Coda', fine: 'Fine', dacoda: 'To Coda' },
  ...{ 'D.C.': 'D.C.', dacapo: 'D.C.', 'D.S.': 'D.S.' },
};

/** The music of an ABC tune cut into what matters to its chords: notes with their lengths, symbols, bar lines, endings. */
export type AbcToken =
  | { readonly kind: 'road'; readonly sign: RoadSign }
  | {
      readonly kind: 'note';
      readonly length: Whole;
      readonly isRest: boolean;
      /** As they are written (`^c'`): none of a rest, several of notes in brackets. */
      readonly pitches: readonly string[];
    }
  | { readonly kind: 'tie' }
  | { readonly kind: 'bars rest'; readonly bars: number }
  | { readonly kind: 'symbol'; readonly symbol: string }
  | {
      readonly kind: 'line';
      readonly closes: number;
      readonly opens: number;
      readonly double: boolean;
      /** Where it parts a very long bar for the eye alone. */
      readonly dotted: boolean;
    }
  | { readonly kind: 'ending'; readonly numbers: string }
  | { readonly kind: 'field'; readonly name: string; readonly value: string };

const PITCH = /[_^=]{0,2}[A-Ga-g][,']*/g;

/** Length of a note as written behind it: `2`, `/`, `//`, `3/2` (§4.3). */
const lengthOf = (text: string): number => {
  const [, over = '', strokes = '', under = ''] = /^(\d*)(\/*)(\d*)$/.exec(text) ?? [];
  const top = over === '' ? 1 : Number(over);
  if (strokes === '') return top;
  return top / (under === '' ? 2 ** strokes.length : Number(under) || 1);
};

/** Notes in a tuplet and the time they take: `(3` is three in the time of two; others go by the meter (§4.13). */
const TUPLETS: Readonly<Record<number, number>> = { 2: 3, 3: 2, 4: 3, 6: 2, 8: 3 };
const BY_METER = { simple: 2, compound: 3 } as const;

/** Nothing is looked for from every place to the end of a line: such a line of half a million signs would take minutes. */
const SHAPES = [
  { kind: 'symbol', shape: /"([^"]*)"?/y },
  { kind: 'field', shape: /\[([A-Za-z]):([^\]]*)\]?/y },
  { kind: 'ending', shape: /(?<=[|:\]])(\d+(?:[,-]\d+)*)|\[(\d+(?:[,-]\d+)*)/y },
  { kind: 'line', shape: /\.\||:*\[?\|+\]?[:|]*|::+/y },
  { kind: 'grace', shape: /\{[^}]*\}?/y },
  { kind: 'decoration', shape: /!([^!\s]*)!|\+([^+\s]*)\+/y },
  { kind: 'tuplet', shape: /\((\d)(?::(\d?)(?::(\d?))?)?/y },
  { kind: 'stack', shape: /\[[^[\]|"]{0,200}\](\d*\/*\d*)/y },
  { kind: 'bars rest', shape: /[ZX](\d*)/y },
  { kind: 'note', shape: /(?:[_^=]{0,2}[A-Ga-g][,']*|[zx])(\d*\/*\d*)/y },
  { kind: 'broken', shape: /([<>]{1,3})/y },
  { kind: 'tie', shape: /-/y },
  { kind: 'overlay', shape: /&/y },
] as const;

interface Piece {
  readonly kind: (typeof SHAPES)[number]['kind'];
  readonly match: RegExpExecArray;
}

/** The next thing in a line, or a single sign that matters to nothing here (slurs, ties, spacing). */
const pieceAt = (line: string, at: number): Piece | null => {
  for (const { kind, shape } of SHAPES) {
    shape.lastIndex = at;
    const match = shape.exec(line);
    if (match !== null && match[0] !== '') return { kind, match };
  }
  return null;
};

const count = (text: string, sign: string): number => text.split(sign).length - 1;

const barLine = (text: string): AbcToken => {
  const [lead = ''] = /^:*/.exec(text) ?? [];
  const isBare = /^:+$/.test(text);
  const [trail = ''] = isBare ? [':'.repeat(Math.floor(text.length / 2))] : (/:*$/.exec(text) ?? []);
  return {
    kind: 'line',
    closes: isBare ? Math.ceil(text.length / 2) : lead.length,
    opens: trail.length,
    // `[|]` is a bar line that is not to be seen, `.|` a dotted one (§4.8).
    double: count(text, '|') > 1 || (/[[\]]/.test(text) && text !== '[|]'),
    dotted: text === '.|',
  };
};

/** What stands under a voice that is laid over another (§7.4): it begins its bar once more, and takes no time. */
const goesOn = (kind: Piece['kind']): boolean => kind === 'line' || kind === 'field';

/** What is open while a line is read: how the next notes' lengths are changed. */
interface Changing {
  tuplet: { left: number; factor: number };
  broken: number;
  last: number;
  /** The length of a note without a number, which a field within the line may change. */
  unit: Whole;
  /** True from the sign of an overlay to the end of its bar. */
  overlaid: boolean;
}

/** Words above or below the music begin with where they stand (§4.19). */
const ANNOTATION = /^[\^_<>@](.*)$/s;
const SILENCE = /^\s*N\.?C\.?\s*$/i;

/** The chord symbol that stands in quotes; null where words do, but for those that say that no chord is played. */
export const symbolIn = (quoted: string): string | null => {
  const [, words] = ANNOTATION.exec(quoted) ?? [];
  if (words === undefined) return quoted || null;
  return SILENCE.test(words) ? 'N.C.' : null;
};

/**
 * Cuts one line of music. `unit` is the length of a note without a number, until the line says another; in a compound meter fives, sevens and nines
 * take the time of three. Of voices laid over each other the first is read. Text that is no music is passed over, as
 * the standard asks of programs that meet what they do not know (§1.2).
 */
export const musicTokens = (line: string, unit: Whole, isCompound: boolean): readonly AbcToken[] => {
  const tokens: AbcToken[] = [];
  const open: Changing = { tuplet: { left: 0, factor: 1 }, broken: 1, last: -1, unit, overlaid: false };
  const addNote = (text: string, written: string): void => {
    // Notes in brackets have the length of the first of them, times the one behind the bracket (§4.17).
    const [, inner = ''] = /^\[[_^=]*[A-Ga-g][,']*(\d*\/*\d*)/.exec(written) ?? [];
    let length = lengthOf(text) * lengthOf(inner) * open.unit * open.broken;
    open.broken = 1;
    if (open.tuplet.left > 0) {
      length *= open.tuplet.factor;
      open.tuplet.left -= 1;
    }
    const isRest = /^[zx]/.test(written);
    open.last = tokens.push({ kind: 'note', length, isRest, pitches: written.match(PITCH) ?? [] }) - 1;
  };
  const breakRhythm = (signs: string): void => {
    const short = 0.5 ** signs.length;
    const long = 2 - short;
    const before = tokens[open.last];
    const isLong = signs.startsWith('>');
    if (before?.kind === 'note') {
      tokens[open.last] = { ...before, length: before.length * (isLong ? long : short) };
    }
    open.broken = isLong ? short : long;
  };
  const take = ({ kind, match }: Piece): void => {
    const [whole, first = '', second = '', third = ''] = match;
    open.overlaid = kind === 'overlay' || (open.overlaid && kind !== 'line');
    if (open.overlaid && !goesOn(kind)) return;
    const road = ROADS[first || second];
    if (kind === 'decoration' && road !== undefined) tokens.push({ kind: 'road', sign: road });
    const symbol = kind === 'symbol' ? symbolIn(first) : null;
    if (symbol !== null) tokens.push({ kind: 'symbol', symbol });
    if (kind === 'field') tokens.push({ kind, name: first, value: second });
    if (kind === 'field' && first === 'L') open.unit = abcFraction(second) ?? open.unit;
    if (kind === 'ending') tokens.push({ kind, numbers: first || second });
    if (kind === 'line') tokens.push(barLine(whole));
    if (kind === 'bars rest') tokens.push({ kind, bars: first === '' ? 1 : Number(first) });
    if (kind === 'broken') breakRhythm(first);
    if (kind === 'note' || kind === 'stack') addNote(first, whole);
    if (kind === 'tie') tokens.push({ kind });
    if (kind === 'tuplet') {
      const notes = Number(first);
      const time =
        second === '' ? (TUPLETS[notes] ?? BY_METER[isCompound ? 'compound' : 'simple']) : Number(second);
      open.tuplet = { left: third === '' ? notes : Number(third), factor: time / notes };
    }
  };
  for (let at = 0; at < line.length; ) {
    const piece = pieceAt(line, at);
    if (piece !== null) take(piece);
    at += piece?.match[0].length ?? 1;
  }
  return tokens;
};
