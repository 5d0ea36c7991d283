import { lineTab } from '../lines/line-tab';
import { findLine } from '../lines/lines';
import { leadNotes } from '../players/lead';
import { seedFrom } from '../theory/random';
import { asSeconds } from '../theory/units';
import { TURN_WORDS } from './trade-modes';
import { FRESH_RUN } from './trade-run';
import { tradeOver } from './trading';
import type { Cue, WarmUpSpec, WarmUpStep } from './warm-up-step';
import { chartSeconds, openingOf, passesFor, shiftLead } from './warm-up-time';

/** Calls that anybody awake can answer. */
const EASY_TRADE = { taste: 'gentle', level: 2, mode: 'echo', plan: '2+2', run: FRESH_RUN } as const;

/** Seconds of the steps that go through the song: once at least, more often while too short, a part where too long. */
const CLIMB = { least: 60, most: 55 } as const;
const TRADE = { least: 40, most: 120 } as const;

const RESTING = {
  title: 'Rest',
  instruction: 'Take the harp from your lips and breathe as usual.',
} as const;

/** Silence for a while. */
export const restStep = (
  { tempo }: WarmUpSpec,
  seconds: number,
  words: Pick<WarmUpStep, 'title' | 'instruction'> = RESTING,
): WarmUpStep => ({ ...words, band: null, tempo, seconds: asSeconds(seconds), cues: [], lead: [] });

/** Chord tones up and down through the song's changes: the harp voice first, then the player alone. */
export const climbStep = (spec: WarmUpSpec): WarmUpStep => {
  const { tempo, tabStyle, seed } = spec;
  const chart = openingOf(spec.chart, CLIMB.most, tempo);
  const line = findLine({ ...spec, chart, kind: 'arpeggio', taste: 'gentle', seed: seedFrom(seed, 'climb') });
  const passes = Math.max(2, passesFor(chartSeconds(chart, 1, tempo), CLIMB.least));
  const tabs = lineTab(line, chart, tabStyle);
  const cues = Array.from({ length: passes }, (_, pass) =>
    tabs.map((found, i): Cue => {
      const text = found === '' ? 'Rest' : found;
      return { bar: pass * chart.bars.length + i, text, word: text, sound: null };
    }),
  ).flat();
  return {
    title: 'Chord-tone climbs',
    instruction: 'Hear the climb through the changes once, then play it yourself, one note on every beat.',
    band: { chart, passes, sounding: 'band' },
    tempo,
    seconds: chartSeconds(chart, passes, tempo),
    cues,
    lead: leadNotes(line.notes),
  };
};

/** A chorus of call and answer; a short form goes round again. */
export const tradingStep = (spec: WarmUpSpec): WarmUpStep => {
  const { tempo, seed } = spec;
  const chart = openingOf(spec.chart, TRADE.most, tempo);
  const passes = passesFor(chartSeconds(chart, 1, tempo), TRADE.least);
  const choruses = Array.from({ length: passes }, (_, pass) =>
    tradeOver({ ...spec, ...EASY_TRADE, chart, chorus: pass, seed: seedFrom(seed, 'trade') }),
  );
  return {
    title: 'Trading',
    instruction: 'Hear a short call, then answer it: the same again, or your own.',
    band: { chart, passes, sounding: 'band' },
    tempo,
    seconds: chartSeconds(chart, passes, tempo),
    cues: choruses.flatMap(({ turns }, pass) =>
      turns.flatMap((turn, i): readonly Cue[] =>
        turn === turns[i - 1]
          ? []
          : [
              {
                bar: pass * chart.bars.length + i,
                text: TURN_WORDS[turn],
                word: TURN_WORDS[turn],
                sound: null,
              },
            ],
      ),
    ),
    lead: choruses.flatMap(({ lead }, pass) => shiftLead(lead, pass * chart.length)),
  };
};
