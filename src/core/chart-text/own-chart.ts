import { respell, withChords } from '../chart/build-chart';
import { type Chart, METER_NAMES, type MeterName } from '../chart/chart';
import { isFormId } from '../chart/forms';
import { romanChord, romanOf } from '../chart/roman';
import type { NoteName } from '../theory/chord';
import { isRecord } from '../theory/is-record';
import { keptText } from '../theory/kept-text';
import { isNoteName, type KeyMode, keyName } from '../theory/pitch';
import type { PitchClass } from '../theory/units';
import { type ChartReading, readChart } from './read-chart';
import { tonicIn } from './written-key';

/** A chart the player wrote. The text is kept as typed; what it stands for is read from it whenever it is needed. */
export interface OwnChart {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  /** The key the text is written in, one of `TONICS`. */
  readonly tonic: NoteName;
  readonly mode: KeyMode;
  readonly meter: MeterName;
}

/** Reads an own chart in its written key, in its own meter unless another is given. */
export const readOwnChart = (
  { text, tonic, mode, meter, name }: OwnChart,
  played: MeterName = meter,
): ChartReading => readChart(text, { tonic, mode, meter: played, title: name });

/** An own chart whose name, key and meter are what lines of its text say of them, where there are such lines. */
export const asItSays = (own: OwnChart): OwnChart => {
  const { says } = readOwnChart(own);
  return {
    ...own,
    ...says.key,
    name: says.title ?? own.name,
    meter: says.meter ?? own.meter,
  };
};

/** Numerals that spell a step by a detour: a B7 written in G flat would become a B sharp 7 in G. */
const ROUNDABOUT = /^(?:#(?:III|VII?|iii|vii?)|b(?:IV|I|iv|i)(?![IViv])|##|bb)/;

const plainSteps = (chart: Chart): Chart =>
  withChords(chart, (chord) =>
    ROUNDABOUT.test(chord.roman) ? romanChord(romanOf(chord, chart.tonic), chart.tonic) : chord,
  );

/**
 * An own chart as it is played: moved from its written key to the song's, spelled as written where that is the same
 * key. Its own meter holds, except that one in 4/4 follows the feel's, as the built-in forms do.
 */
export const ownChartInKey = (own: OwnChart, key: PitchClass, feelMeter: MeterName): Chart => {
  const { chart } = readOwnChart(own, own.meter === '4/4' ? feelMeter : own.meter);
  return chart.key === key ? chart : respell(plainSteps(chart), keyName(key, chart.mode));
};

/** An own chart read from outside and what had to be repaired; null where it holds no text at all. */
export interface ParsedOwnChart {
  readonly chart: OwnChart | null;
  /** Sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

const readId = (value: unknown, name: string): string => {
  const id = keptText(value) || `chart ${name}`.trim();
  return isFormId(id) ? `chart ${id}` : id;
};

/**
 * Reads an own chart from storage or a link. Never throws, keeps the text whole, and takes 4/4 and C major for what
 * cannot be read.
 */
export const parseOwnChart = (value: unknown): ParsedOwnChart => {
  if (!isRecord(value) || typeof value.text !== 'string') {
    return { chart: null, problems: ['One of your charts holds no text and was left out.'] };
  }
  const { text, tonic: key, mode: kind, meter: time } = value;
  const name = keptText(value.name);
  const mode = kind === 'major' || kind === 'minor' ? kind : null;
  const tonic = typeof key === 'string' && isNoteName(key) ? key : null;
  const meter = METER_NAMES.find((each) => each === time) ?? null;
  const chart: OwnChart = {
    id: readId(value.id, name),
    name: name || 'Chart without a name',
    text,
    tonic: tonicIn(tonic ?? 'C', mode ?? 'major'),
    mode: mode ?? 'major',
    meter: meter ?? '4/4',
  };
  const repaired: readonly (readonly [boolean, string])[] = [
    [name === '', 'had no name; give it one'],
    [tonic === null, 'had no readable key; it is taken to be in C'],
    [mode === null, 'was neither major nor minor; it is taken to be major'],
    [meter === null, 'had no readable meter; it is taken to be in 4/4'],
  ];
  const problems = repaired.flatMap(([needed, what]) =>
    needed ? [`The chart “${chart.name}” ${what}.`] : [],
  );
  return { chart, problems };
};
