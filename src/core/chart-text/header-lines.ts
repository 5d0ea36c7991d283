import { type BarKey, METER_NAMES, type MeterName } from '../chart/chart';
import { cutText } from '../theory/kept-text';
import { isNoteName, type KeyMode } from '../theory/pitch';
import { plainSigns } from '../theory/symbol-parts';
import { headerAgain, headerUnread, type Problem, type TextSpan } from './chart-problems';
import type { HeaderName } from './chart-signs';
import type { Item } from './scan-chart';
import { tonicIn } from './written-key';

/** What a chart says of itself in lines such as `Key: G`; null where it says nothing. */
export interface ChartSays {
  readonly title: string | null;
  readonly key: BarKey | null;
  readonly meter: MeterName | null;
  /** As written: whether there is such a feel is not a chart's to know. */
  readonly feel: string | null;
  /** Beats a minute. */
  readonly tempo: number | null;
  /** The last bar is held. */
  readonly fermata: boolean;
}

/** A chart that says nothing of itself. */
export const SAYS_NOTHING: ChartSays = {
  title: null,
  key: null,
  meter: null,
  feel: null,
  tempo: null,
  fermata: false,
};

/** Lines with a colon, read. */
export interface HeaderReading {
  readonly says: ChartSays;
  /** Keys of sections by the item they stand at; each holds until the next name of a section. */
  readonly sectionKeys: ReadonlyMap<number, BarKey>;
  readonly problems: readonly Problem[];
}

/** The longest title and name of a feel. */
const LONGEST = 80;

/** Reads a key such as `G`, `B♭ major`, `F#m` or `C minor`; null where it is none. */
export const readKey = (text: string): BarKey | null => {
  const shape = /^([A-Ga-g])([#b]?)(|m|min|minor|maj|major)$/i.exec(plainSigns(text));
  const [, letter = '', sign = '', word = ''] = shape ?? [];
  const name = letter.toUpperCase() + sign;
  if (shape === null || !isNoteName(name)) return null;
  const mode: KeyMode = /^m(in(or)?)?$/i.test(word) && word !== 'M' ? 'minor' : 'major';
  return { tonic: tonicIn(name, mode), mode };
};

const readMeter = (text: string): MeterName | null => METER_NAMES.find((name) => name === text) ?? null;

/** The last number of the text: `120`, `♩ = 120`, `3/8=96`. Between 20 and 400 beats a minute. */
const readTempo = (text: string): number | null => {
  const [digits] = /\d{1,4}(?=\D*$)/.exec(text) ?? [];
  const tempo = Number(digits);
  return digits !== undefined && tempo >= 20 && tempo <= 400 ? tempo : null;
};

const words = (text: string): string | null => (text === '' ? null : cutText(text, LONGEST));

interface Kind<T> {
  readonly read: (text: string) => T | null;
  readonly what: string;
  readonly example: string;
}

const KINDS = {
  title: { read: words, what: 'title', example: 'Title: and a name' },
  key: { read: readKey, what: 'key', example: 'a key such as Key: G or Key: F#m' },
  meter: { read: readMeter, what: 'meter that is played here', example: `one of ${METER_NAMES.join(', ')}` },
  feel: { read: words, what: 'feel', example: 'Feel: and its name, such as Feel: Shuffle' },
  tempo: { read: readTempo, what: 'tempo', example: 'beats a minute from 20 to 400, such as Tempo: 96' },
} as const satisfies Readonly<Record<Exclude<HeaderName, 'order' | 'pick-up'>, Kind<unknown>>>;

type Said = Exclude<HeaderName, 'order' | 'pick-up'>;

interface Draft {
  says: ChartSays;
  readonly sectionKeys: Map<number, BarKey>;
  readonly problems: Problem[];
}

interface Place {
  readonly at: number;
  readonly span: TextSpan;
  readonly inSection: boolean;
}

const take = (draft: Draft, name: Said, text: string, { at, span, inSection }: Place): void => {
  const { read, what, example } = KINDS[name];
  const value = read(text);
  if (value === null) draft.problems.push(headerUnread(span, what, example));
  else if (name === 'key' && inSection && typeof value === 'object') draft.sectionKeys.set(at, value);
  else if (draft.says[name] !== null) draft.problems.push(headerAgain(span));
  else draft.says = { ...draft.says, [name]: value };
};

/**
 * Reads all lines with a colon. A key before any bar or section is the chart's, a later one that of its section;
 * everything else is said of the whole chart, and what is said first holds. Never throws.
 */
export const readHeaders = (items: readonly Item[]): HeaderReading => {
  const draft: Draft = { says: SAYS_NOTHING, sectionKeys: new Map(), problems: [] };
  let inSection = false;
  let ordered = false;
  let held = false;
  for (const [at, item] of items.entries()) {
    if (item.kind === 'label' || item.kind === 'bar') inSection = true;
    if (item.kind === 'bar') held = false;
    if (item.kind === 'road' && item.road.sign === 'fermata') held = true;
    if (item.kind !== 'header' || item.name === 'pick-up') continue;
    if (item.name !== 'order') {
      take(draft, item.name, item.value.text, { at, span: item.span, inSection });
    } else {
      if (ordered) draft.problems.push(headerAgain(item.span));
      ordered = true;
    }
  }
  return { ...draft, says: { ...draft.says, fermata: held } };
};

/** For every item the key of its section, where that has one of its own. */
export const keysInForce = (
  items: readonly Item[],
  sectionKeys: ReadonlyMap<number, BarKey>,
): readonly (BarKey | null)[] => {
  let key: BarKey | null = null;
  return items.map((item, at) => {
    if (item.kind === 'label') key = null;
    key = sectionKeys.get(at) ?? key;
    return key;
  });
};
