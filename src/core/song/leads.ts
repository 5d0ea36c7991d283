import type { Program } from '../arranger/program';
import type { Chart, MeterName } from '../chart/chart';
import type { OwnChart } from '../chart-text/own-chart';
import type { Harp } from '../harp/harp';
import { findLine, type Line } from '../lines/lines';
import type { Phrase } from '../phrase/phrase';
import { type PhraseReading, readPhrase } from '../phrase/read-phrase';
import { leadNotes } from '../players/lead';
import { type Trading, tradeOver } from '../practice/trading';
import type { NoteEvent } from '../score/score';
import type { Settings } from '../settings/settings';
import { asPitchClass, type PitchClass } from '../theory/units';
import { type ChartChoices, chartFor, type HarpChoices, harpFor, songKeyOf } from './tune';

/** Everything leads are made from. */
export type LeadChoices = ChartChoices &
  HarpChoices &
  Pick<Settings, 'plan' | 'technique' | 'line' | 'trade'>;

/** Choruses before the calls that were made up come round again. */
const CALL_CHORUSES = 6;
/** The band swings the lead; calls are handed over straight. */
const STRAIGHT = 1;

/** The line wanted through a whole chorus, or null when none is. */
export const lineFor = (
  { line, technique }: Pick<Settings, 'line' | 'technique'>,
  chart: Chart,
  harp: Harp,
): Line | null => {
  const { kind, pace, taste, seed } = line;
  return kind === 'none' ? null : findLine({ chart, harp, technique, kind, pace, taste, seed });
};

/** The typed calls, read line by line; empty lines are passed over. */
export const typedCalls = ({ trade }: Pick<Settings, 'trade'>, meter: MeterName): readonly PhraseReading[] =>
  trade.calls
    .split('\n')
    .filter((text) => text.trim() !== '')
    .map((text) => readPhrase(text, meter));

const phrasesOf = (settings: Pick<Settings, 'trade'>, meter: MeterName): readonly Phrase[] =>
  typedCalls(settings, meter)
    .map(({ phrase }) => phrase)
    .filter(({ notes }) => notes.length > 0);

/** Call and answer laid over one chorus, or null when the player does not trade. */
export const tradingFor = (
  settings: LeadChoices,
  chart: Chart,
  harp: Harp,
  chorus: number,
): Trading | null => {
  const { trade, technique, line, style } = settings;
  if (!trade.on) return null;
  const seed = style.seed * CALL_CHORUSES + (chorus % CALL_CHORUSES);
  const phrases = phrasesOf(settings, chart.meter.name);
  return tradeOver({ chart, harp, technique, taste: line.taste, seed, swing: STRAIGHT, phrases });
};

/** Every key the plan goes through, the song's own first. */
export const keysOf = (settings: Pick<Settings, 'harpKey' | 'position' | 'plan'>): readonly PitchClass[] => {
  const own = songKeyOf(settings);
  const { keys } = settings.plan;
  if (keys.kind === 'same') return [own];
  if (keys.kind === 'list') return [...new Set([own, ...keys.keys])];
  return Array.from({ length: 12 }, (_, i) => asPitchClass(own + i));
};

const takesFor = (settings: LeadChoices, chart: Chart, harp: Harp): readonly (readonly NoteEvent[])[] => {
  if (settings.trade.on) {
    return Array.from(
      { length: CALL_CHORUSES },
      (_, chorus) => tradingFor(settings, chart, harp, chorus)?.lead ?? [],
    );
  }
  const line = lineFor(settings, chart, harp);
  return line === null ? [] : [leadNotes(line.notes)];
};

/** What the harp voice plays in every key the plan goes through: calls, or the line where it is to be heard. */
export const leadsOf = (
  settings: LeadChoices,
  ownCharts: readonly OwnChart[],
): NonNullable<Program['leads']> => {
  const { line, trade } = settings;
  if (!trade.on && !(line.heard && line.kind !== 'none')) return {};
  return Object.fromEntries(
    keysOf(settings).map((key) => [
      key,
      takesFor(settings, chartFor(settings, ownCharts, key), harpFor(settings, key)),
    ]),
  );
};
