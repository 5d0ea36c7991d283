/**
 * Ways musicians write chord symbols, turned into the ones the chord dictionary lists (common practice, no source).
 * In order: glyphs and brackets, signs for alterations after a number, words for the kind, then where sus stands.
 */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/[()\s,]/g, ''],
  [/♭/g, 'b'],
  [/♯/g, '#'],
  [/[−–]/g, '-'],
  [/[△∆]/g, 'Δ'],
  [/\^(?!\d|#)/g, 'Δ'],
  [/6\/9/, '69'],
  [/(?<=\d)-(?=\d)/g, 'b'],
  [/(?<=\d)\+(?=\d)/g, '#'],
  [/^([A-G][#b]{0,2})(?:min|mi|MIN|MI|Mi|Min|m|-)(?:ma|MA|Ma|maj|MAJ|Maj|Δ)(?=7|$)7?/, '$1mMaj7'],
  [/^([A-G][#b]{0,2})(?:ma|MA|Ma|MAJ)(?=\d)/, '$1maj'],
  [/^([A-G][#b]{0,2})(?:mi|MI|Mi|MIN|Min)(?=\d|$)/, '$1m'],
  [/^([A-G][#b]{0,2})dom(?=\d)/, '$1'],
  [/sus4?((?:[#b]\d{1,2})+)/, '$1sus4'],
  [/(?<=[#b]\d{1,2})sus$/, 'sus4'],
];

/** A chord symbol in the dictionary's spelling: `C7(♭9)` → `C7b9`, `CMI7` → `Cm7`, `C7-5` → `C7b5`. */
export const plainSymbol = (text: string): string =>
  SPELLINGS.reduce((each, [from, to]) => each.replace(from, to), text);

const ALTERED =
  /^([A-G][#b]{0,2}(?:m|maj|M|-)?)(7|9|11|13)((?:[#b](?:1[13]|[4569])|9|1[13]){1,4})(\/[A-G][#b]{0,2})?$/;

const orders = (items: readonly string[]): readonly (readonly string[])[] =>
  items.length < 2
    ? [items]
    : items.flatMap((item, i) => orders(items.toSpliced(i, 1)).map((rest) => [item, ...rest]));

/** Additions in every order, as players write them: `C7#9b5` is also `C7b5#9`, `C7b913` also `C13b9`. */
const additionOrders = (plain: string): readonly string[] => {
  const [, head = '', base = '', tail = '', bass = ''] = ALTERED.exec(plain) ?? [];
  if (tail === '') return [];
  const additions = tail.match(/[#b]?(?:1[13]|[4569])/g) ?? [];
  const altered = additions.filter((each) => /[#b]/.test(each));
  const top = Math.max(Number(base), ...additions.filter((each) => !altered.includes(each)).map(Number));
  return orders(altered).map((order) => `${head}${top}${order.join('')}${bass}`);
};

/** A plain symbol and the same chord in spellings the dictionary may hold instead, the likelier first. */
export const otherSpellings = (plain: string): readonly string[] => [
  plain,
  plain.replace(/M(?=\d)/, 'maj'),
  plain.replace(/maj(?=\d)/, 'M'),
  ...additionOrders(plain),
];
