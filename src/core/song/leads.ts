import type { Program } from '../arranger/program';
import type { Chart, MeterName } from '../chart/chart';
import type { OwnChart } from '../chart-text/own-chart';
import type { Harp } from '../harp/harp';
import { EVERY_TECHNIQUE } from '../harp/reach';
import { findLine, type Line } from '../lines/lines';
import type { Phrase } from '../phrase/phrase';
import { type PhraseReading, readPhrase } from '../phrase/read-phrase';
import { leadNotes } from '../players/lead';
import { FRESH_RUN, type TradeRun } from '../practice/trade-run';
import { CALL_CHORUSES, type Trading, tradeOver } from '../practice/trading';
import type { NoteEvent } from '../score/score';
import type { Settings } from '../settings/settings';
import { asPitchClass, type PitchClass } from '../theory/units';
import { chartFor } from './chosen-chart';
import { type ChartChoices, type HarpChoices, harpFor, songKeyOf } from './tune';

/** Everything leads are made from. */
export type LeadChoices = ChartChoices &
  HarpChoices &
  Pick<Settings, 'plan' | 'technique' | 'line' | 'trade' | 'partner'>;

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

/** A chart and harp, and which chorus over it. */
export interface TradedChorus {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly chorus: number;
}

/** Call and answer laid over one chorus, or null when the player does not trade. */
export const tradingFor = (
  settings: LeadChoices,
  where: TradedChorus,
  run: TradeRun = FRESH_RUN,
): Trading | null => {
  const { trade, technique, line, style, partner } = settings;
  if (!trade.on) return null;
  return tradeOver({
    ...where,
    ...partner,
    run,
    technique: partner.stretch ? { ...EVERY_TECHNIQUE, off: technique.off } : technique,
    taste: line.taste,
    seed: style.seed,
    swing: STRAIGHT,
    phrases: phrasesOf(settings, where.chart.meter.name),
  });
};

/** Every key the plan goes through, the song's own first. */
export const keysOf = (settings: Pick<Settings, 'harpKey' | 'position' | 'plan'>): readonly PitchClass[] => {
  const own = songKeyOf(settings);
  const { keys } = settings.plan;
  if (keys.kind === 'same') return [own];
  if (keys.kind === 'list') return [...new Set([own, ...keys.keys])];
  return Array.from({ length: 12 }, (_, i) => asPitchClass(own + i));
};

/** A take for each of so many choruses from the run's own on, at the places the band counts them by. */
const tradedTakes = (
  settings: LeadChoices,
  where: Omit<TradedChorus, 'chorus'>,
  run: TradeRun,
): readonly (readonly NoteEvent[])[] => {
  const takes: (readonly NoteEvent[])[] = Array.from({ length: CALL_CHORUSES }, () => []);
  for (let chorus = run.chorus; chorus < run.chorus + CALL_CHORUSES; chorus += 1)
    takes[chorus % CALL_CHORUSES] = tradingFor(settings, { ...where, chorus }, run)?.lead ?? [];
  return takes;
};

const takesFor = (
  settings: LeadChoices,
  where: Omit<TradedChorus, 'chorus'>,
  run: TradeRun,
): readonly (readonly NoteEvent[])[] => {
  if (settings.trade.on) return tradedTakes(settings, where, run);
  const line = lineFor(settings, where.chart, where.harp);
  return line === null ? [] : [leadNotes(line.notes)];
};

/** What the harp voice plays in every key the plan goes through: calls, or the line where it is to be heard. */
export const leadsOf = (
  settings: LeadChoices,
  ownCharts: readonly OwnChart[],
  run: TradeRun = FRESH_RUN,
): NonNullable<Program['leads']> => {
  const { line, trade } = settings;
  if (!trade.on && !(line.heard && line.kind !== 'none')) return {};
  return Object.fromEntries(
    keysOf(settings).map((key) => {
      const chart = chartFor(settings, ownCharts, key);
      return [key, takesFor(settings, { chart, harp: harpFor(settings, key) }, run)];
    }),
  );
};
