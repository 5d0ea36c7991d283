import type { KeyMode } from '../theory/pitch';
import { isMinorMode } from './modes';

/** Information fields of ABC (standard 2.1, §3) that a chart of chords has a use for. */

/** A length as a share of a whole note. */
export type Whole = number;

/** A meter as its two numbers; null for free meter. */
export interface AbcMeter {
  readonly beats: number;
  readonly unit: number;
}

/** Reads `M:`; `C` is 4/4 and `C|` 2/2 (§3.1.6). Null for `none` and what is no meter. */
export const abcMeter = (value: string): AbcMeter | null => {
  const text = value.trim();
  if (text === 'C') return { beats: 4, unit: 4 };
  if (text === 'C|') return { beats: 2, unit: 2 };
  const [, sum = '', unit] = /^\(?([\d+\s]+)\)?\/(\d+)/.exec(text) ?? [];
  const beats = sum.split('+').reduce((total, each) => total + Number(each), 0);
  return unit === undefined || !(beats > 0 && beats <= 64 && Number(unit) > 0)
    ? null
    : { beats, unit: Number(unit) };
};

/** Whether a meter's beats have three parts each: 6/8, 9/8, 12/8. */
export const isCompound = (meter: AbcMeter | null): boolean =>
  meter !== null && meter.unit === 8 && meter.beats > 3 && meter.beats % 3 === 0;

/** The unit of note lengths where no `L:` says it: a sixteenth in meters below three quarters, else an eighth (§3.1.7). */
export const usualLength = (meter: AbcMeter | null): Whole =>
  meter !== null && meter.beats / meter.unit < 0.75 ? 1 / 16 : 1 / 8;

/** Reads a fraction such as `1/8` or `3/8`; null where it is none. */
export const abcFraction = (value: string): Whole | null => {
  const [, over, under] = /^\s*(\d+)\/(\d+)/.exec(value) ?? [];
  return over === undefined || Number(under) === 0 ? null : Number(over) / Number(under);
};

/** Reads `Q:` as quarter notes a minute: `3/8=96`, `1/4 3/8 1/4 3/8=40`, `120`; null where it gives no number (§3.1.8). */
export const abcTempo = (value: string): number | null => {
  const text = value.replace(/"[^"]*"/g, ' ').trim();
  const [, units = '', number] = /^((?:\d+\/\d+\s*)+)=\s*(\d{1,4})/.exec(text) ?? [];
  if (number !== undefined) {
    const length = units
      .trim()
      .split(/\s+/)
      .reduce((sum, unit) => sum + (abcFraction(unit) ?? 0), 0);
    return Number(number) * length * 4;
  }
  const [plain] = /^\d{1,4}$/.exec(text) ?? [];
  return plain === undefined ? null : Number(plain);
};

/** A key as a chart writes it: `Em`, `Bb`. Modes with a minor third are minor. */
export interface AbcKey {
  readonly tonic: string;
  readonly mode: KeyMode;
}

/** Reads `K:` (§3.1.14: a mode by its first three letters, none is major); null for `none` and pipes. */
export const abcKey = (value: string): AbcKey | null => {
  const [, letter, sign = '', word = ''] = /^\s*([A-G])([#b]?)\s*([A-Za-z]*)/.exec(value) ?? [];
  if (letter === undefined) return null;
  const mode = word.toLowerCase().slice(0, 3);
  return { tonic: letter + sign, mode: isMinorMode(mode) || word === 'm' ? 'minor' : 'major' };
};

/** One tune of a file: its lines from `X:` to the next blank line. */
export interface AbcTune {
  readonly lines: readonly string[];
  /** How many tunes the file holds. */
  readonly of: number;
}

/** The first tune of a file; a text without `X:` is taken as a whole. A line of comment alone is no blank line (§2.2.1, 3.3). */
export const firstTune = (source: string): AbcTune => {
  const lines = source
    .replace(/\r\n?/g, '\n')
    .split('\n')
    .filter((line) => !/^\s*%/.test(line))
    .map((line) => line.replace(/(?<!\\)%.*$/, '').trimEnd());
  const starts = lines.flatMap((line, at) => (/^X:/.test(line) ? [at] : []));
  const [first] = starts;
  if (first === undefined) return { lines, of: 1 };
  const end = lines.findIndex((line, at) => at > first && line === '');
  return { lines: lines.slice(first, end === -1 ? lines.length : end), of: starts.length };
};
