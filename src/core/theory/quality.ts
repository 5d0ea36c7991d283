import type { Degree } from './chord';
import { semitonesOf } from './degrees';

/**
 * Reads what stands after the root of a chord symbol, word by word, as musicians combine it (common practice, no
 * source): kind, number, then suspensions, alterations, additions and omissions in any order, with or without
 * brackets. A dictionary of whole symbols never holds every order.
 */

/** What the words so far say. Number 5 is a bare fifth, 69 a sixth with ninth. */
interface Draft {
  readonly kind: 'major' | 'minor' | 'diminished' | 'half-diminished';
  readonly number: number | null;
  /** Whether the seventh is major: of the number, asked for by `maj` after another kind, or beside a diminished one. */
  readonly majorSeventh: 'no' | 'by number' | 'asked' | 'beside';
  readonly sus: readonly Degree[];
  readonly altered: readonly Degree[];
  readonly added: readonly Degree[];
  readonly omitted: readonly string[];
}

const EMPTY: Draft = {
  kind: 'major',
  number: null,
  majorSeventh: 'no',
  sus: [],
  altered: [],
  added: [],
  omitted: [],
};

/** Words to one sign each: `m` minor, `M` major, `Δ` major seventh, `o` diminished, `h` half, `⊕` augmented. */
const WORDS: readonly (readonly [RegExp, string])[] = [
  [/6\/9/, '69'],
  [/\/(?=ma|Ma|M)/, ''],
  [/(?<=\d)\/(?=[#b]?\d)/g, ''],
  [/omit/gi, 'no'],
  [/sus/gi, 'sus'],
  [/add/gi, 'add'],
  [/alt7?/gi, 'alt'],
  [/dom(?=\d)/i, ''],
  [/dom/i, '7'],
  [/dim|°/gi, 'o'],
  [/aug/gi, '⊕'],
  [/ø/g, 'h'],
  [/maj|Maj|MAJ|MA|[Mm]a(?!dd)/g, 'M'],
  [/7j|j7/, 'M7'],
  [/j/, 'Δ'],
  [/min|Min|MIN|mi|Mi|MI/g, 'm'],
  [/\^(?=[\d#])/g, 'M'],
  [/\^/g, 'Δ'],
];

/** Plus and minus: the kind where they begin, otherwise sharp and flat before a number. */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/[()\s]/g, ','],
  [/^-(?!5)/, 'm'],
  [/^\+(?!5)/, '⊕'],
  [/-(?=,*\d)/g, 'b'],
  [/\+(?=,*\d)/g, '#'],
  [/\+/g, '⊕'],
  [/^mΔ7?/, 'mM7'],
];

/** Text without any word needs no look at each: what is pasted by mistake costs little. */
const HAS_WORDS = /[^b#\d(),+-]/;

const inSigns = (text: string): string => {
  const words = HAS_WORDS.test(text) ? WORDS : [];
  return [...words, ...SIGNS].reduce((each, [from, to]) => each.replace(from, to), text);
};

const TOKEN =
  /,|sus(?:2sus4|4sus2|24|2|4)?|add[#b]?\d+|no\d+|[#b](?:13|11|9|7|6|5|4)|69|13|11|9|7|6|5|4|2|M7(?!\d)|M|Δ7?|alt|[moh⊕]/g;

const tokensOf = (text: string): readonly string[] | null => {
  const plain = inSigns(text);
  const tokens = plain.match(TOKEN) ?? [];
  return tokens.join('') === plain ? tokens.filter((each) => each !== ',') : null;
};

const once = (list: readonly string[], entry: string): readonly string[] | null =>
  list.includes(entry) ? null : [...list, entry];

const withSus = (draft: Draft, word: string): Draft | null => {
  const degrees = word === 'sus' ? ['4'] : (word.match(/\d/g) ?? []);
  return draft.sus.length > 0 && word !== 'sus2' && word !== 'sus4'
    ? null
    : { ...draft, sus: [...new Set([...draft.sus, ...degrees])].sort() };
};

const ALTERED = ['b5', '#5', 'b6', 'b9', '#9', '#11', 'b13'];

const withAltered = (draft: Draft, word: string): Draft | null => {
  if (word === '#7') return { ...draft, majorSeventh: 'asked' };
  if (word === 'b7') return draft.number === null ? { ...draft, number: 7 } : null;
  const degree = word === '#4' ? '#11' : word;
  const altered = ALTERED.includes(degree) ? once(draft.altered, degree) : null;
  return altered && { ...draft, altered };
};

const ADDED: Readonly<Record<string, Degree>> = {
  add2: '9',
  add4: '4',
  add6: '6',
  addb6: 'b6',
  add9: '9',
  addb9: 'b9',
  'add#9': '#9',
  add11: '11',
  'add#11': '#11',
  'add#4': '#11',
  add13: '13',
  addb13: 'b13',
};

const withAdded = (draft: Draft, word: string): Draft | null => {
  const degree = Object.hasOwn(ADDED, word) ? ADDED[word] : undefined;
  const added = degree === undefined ? null : once(draft.added, degree);
  return added && { ...draft, added };
};

const OMITTED = ['no3', 'no5', 'no9', 'no11'];

const withOmitted = (draft: Draft, word: string): Draft | null => {
  const omitted = OMITTED.includes(word) ? once(draft.omitted, word.slice(2)) : null;
  return omitted && { ...draft, omitted };
};

/** Numbers that may follow another: the larger says what the chord reaches up to. */
const FOLLOWING: Readonly<Record<number, readonly number[]>> = {
  6: [9],
  7: [9, 11, 13],
  9: [11, 13],
  11: [13],
  13: [11],
};

const withNumber = (draft: Draft, number: number, isFirst: boolean): Draft | null => {
  const { number: before } = draft;
  if (before === null) {
    if (number === 2) return isFirst ? { ...draft, added: ['9'] } : null;
    if (number === 4) return isFirst ? { ...draft, sus: ['4'] } : null;
    return number === 5 && !isFirst ? null : { ...draft, number };
  }
  if (!FOLLOWING[before]?.includes(number)) return null;
  if (before === 6) return { ...draft, number: 69 };
  if (before + number === 24) return { ...draft, number: 11, added: [...draft.added, '13'] };
  return { ...draft, number: Math.max(before, number) };
};

const withAlt = (draft: Draft): Draft | null =>
  draft.altered.length > 0 || (draft.number !== null && draft.number !== 7)
    ? null
    : { ...draft, number: 7, altered: ['#5', '#9'] };

const withMajor = (draft: Draft, word: string, isFirst: boolean): Draft | null => {
  if (draft.majorSeventh === 'asked' || draft.majorSeventh === 'beside') return null;
  if (word === 'M' && isFirst) return { ...draft, majorSeventh: 'by number' };
  if (draft.kind === 'diminished' && draft.number !== null) return { ...draft, majorSeventh: 'beside' };
  const number = word === 'M7' && draft.number === null ? 7 : draft.number;
  return { ...draft, number, majorSeventh: 'asked' };
};

const KINDS: Readonly<Record<string, Draft['kind']>> = {
  m: 'minor',
  o: 'diminished',
  h: 'half-diminished',
};

const withWord = (draft: Draft, word: string, isFirst: boolean): Draft | null => {
  if (word.startsWith('sus')) return withSus(draft, word);
  if (word.startsWith('add')) return withAdded(draft, word);
  if (word.startsWith('no')) return withOmitted(draft, word);
  if (/^[#b]/.test(word)) return withAltered(draft, word);
  if (/^\d/.test(word)) return withNumber(draft, Number(word), isFirst);
  if (/^[MΔ]/.test(word)) return withMajor(draft, word, isFirst);
  if (word === 'alt') return withAlt(draft);
  if (word === '⊕') return withAltered(draft, '#5');
  const kind = KINDS[word];
  return kind === undefined || !isFirst ? null : { ...draft, kind };
};

/** Degrees a number brings beside root, third and fifth, the seventh apart. */
const REACH: Readonly<Record<number, readonly Degree[]>> = {
  6: ['6'],
  69: ['6', '9'],
  9: ['9'],
  11: ['9', '11'],
  13: ['9', '13'],
};

const seventhsOf = ({ kind, number, majorSeventh, altered }: Draft): readonly Degree[] => {
  const isMajor = majorSeventh === 'asked' || (majorSeventh === 'by number' && number !== null && number > 6);
  const major = isMajor || (majorSeventh === 'by number' && number === null && altered.includes('#11'));
  if (majorSeventh === 'beside') return ['bb7', '7'];
  if (major && number !== 69) return ['7'];
  if (number === null || number < 7 || number === 69) return [];
  return kind === 'diminished' ? ['bb7'] : ['b7'];
};

/** An alteration stands instead of the plain tone that the kind or the number brings; a flat thirteen leaves no fifth. */
export const REPLACED: Readonly<Record<string, readonly Degree[]>> = {
  b5: ['5'],
  '#5': ['5'],
  b9: ['9'],
  '#9': ['9'],
  '#11': ['11'],
  b13: ['13', '5'],
};

const thirdsOf = ({ kind, number, sus, altered }: Draft): readonly Degree[] => {
  if (sus.length > 0) return sus;
  if (kind !== 'major') return ['b3'];
  const isEleventh = number === 11 && !altered.includes('#11');
  return number === 5 || isEleventh ? [] : ['3'];
};

const contradicts = ({ kind, number, sus, altered, majorSeventh }: Draft): boolean => {
  const isDiminished = kind === 'diminished' || kind === 'half-diminished';
  return (
    (isDiminished && (sus.length > 0 || altered.includes('#5') || [6, 69, 13].includes(number ?? 0))) ||
    (kind === 'half-diminished' && majorSeventh !== 'no') ||
    (number === 5 && (kind !== 'major' || majorSeventh !== 'no' || sus.length > 0))
  );
};

/** Every tone once, by its first name: over a third, a sharp nine that sounds the same says nothing new. */
const distinct = (degrees: readonly Degree[]): readonly Degree[] => {
  const byPitch = new Map<number, Degree>();
  for (const degree of degrees) {
    const pitch = semitonesOf(degree) % 12;
    if (!byPitch.has(pitch)) byPitch.set(pitch, degree);
  }
  return [...byPitch.values()].sort((a, b) => semitonesOf(a) - semitonesOf(b));
};

const degreesOf = (draft: Draft): readonly Degree[] | null => {
  if (contradicts(draft)) return null;
  const { kind, altered, added, omitted } = draft;
  const number = draft.number ?? (kind === 'half-diminished' ? 7 : null);
  const whole = { ...draft, number };
  const fifth = kind === 'diminished' || kind === 'half-diminished' ? 'b5' : '5';
  const replaced = altered.flatMap((each) => REPLACED[each] ?? []);
  const plain = [fifth, ...seventhsOf(whole), ...(number === null ? [] : (REACH[number] ?? []))];
  const rest = plain.filter((each) => !replaced.includes(each));
  const gone = (degree: Degree): boolean => omitted.some((each) => degree.replace(/^[#b]+/, '') === each);
  const all = [...thirdsOf(whole), ...rest, ...altered, ...added].filter((each) => !gone(each));
  return all.length === 0 ? null : distinct(['R', ...all]);
};

/**
 * The degrees of a chord's quality, root first and upwards (`m7(b5)` → R b3 b5 b7), or null when it is none.
 * Never throws.
 */
export const readQuality = (text: string): readonly Degree[] | null => {
  const tokens = tokensOf(text);
  if (tokens === null) return null;
  let draft: Draft | null = EMPTY;
  for (const [index, token] of tokens.entries()) {
    draft = draft && withWord(draft, token, index === 0);
  }
  return draft && degreesOf(draft);
};
