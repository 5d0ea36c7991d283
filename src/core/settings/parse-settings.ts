import * as v from 'valibot';
import { ARCS, COUNT_INS, ENDINGS, INTROS } from '../arranger/program';
import { FEEL_IDS } from '../feels/feels';
import { HOLES } from '../harp/build-harp';
import { REED_RANGE } from '../harp/custom-tuning';
import { REED_CENTS, STRETCH } from '../harp/harp-case';
import { INTONATION_IDS } from '../harp/intonation';
import { LINE_TASTES } from '../harp/line-cost';
import { STOP_TIMES } from '../players/style';
import { SOUNDINGS } from '../score/silence';
import { SWING_RANGE } from '../score/swing';
import { BASS_VOICES, CHORD_VOICES, KITS } from '../score/voices';
import { REFERENCE_PITCHES } from '../theory/temperament';
import { asBpm, asHz, asPitchClass, type Bpm } from '../theory/units';
import { DEFAULT_SETTINGS } from './defaults';
import type { Settings } from './settings';

/** The version written with every save; a larger one comes from a newer program. */
export const SETTINGS_VERSION = 1;

/** Tempo limits the player may choose, in beats a minute. */
export const TEMPO_RANGE = { low: 40, high: 280 } as const;

/** Longest text of typed calls kept, in characters. */
export const MOST_CALL_TEXT = 4000;

export interface ParsedSettings {
  readonly settings: Settings;
  /** What could not be read, in sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

const between = (low: number, high: number) =>
  v.pipe(v.number(), v.finite(), v.minValue(low), v.maxValue(high));
const whole = (low: number, high: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high));
const pitchClass = v.pipe(whole(0, 11), v.transform(asPitchClass));
const tempo = v.pipe(between(TEMPO_RANGE.low, TEMPO_RANGE.high), v.transform(asBpm));
const shortText = v.pipe(v.string(), v.maxLength(100));

const row = v.pipe(
  v.array(whole(REED_RANGE.low, REED_RANGE.high)),
  v.minLength(HOLES.fewest),
  v.maxLength(HOLES.most),
);
const tuning = v.pipe(
  v.object({ id: shortText, name: shortText, blow: row, draw: row }),
  v.check(({ blow, draw }) => blow.length === draw.length),
);
const cents = v.array(between(-REED_CENTS, REED_CENTS));

const channel = v.object({
  gain: between(0, 1),
  muted: v.boolean(),
  solo: v.boolean(),
  pan: between(-1, 1),
});

/** One schema a field, so that one bad field never costs another. */
const FIELDS = {
  harpKey: pitchClass,
  harpOctave: whole(-2, 1),
  tuning,
  intonation: v.union([
    v.picklist(INTONATION_IDS),
    v.object({ cents: v.object({ blow: cents, draw: cents }) }),
  ]),
  stretch: between(STRETCH.least, STRETCH.most),
  valved: v.pipe(v.array(whole(1, HOLES.most)), v.maxLength(HOLES.most)),
  bandFollowsHarp: v.boolean(),
  position: whole(1, 12),
  songPinned: v.boolean(),
  formId: shortText,
  tempo,
  style: v.object({
    feel: v.picklist(FEEL_IDS),
    bass: v.picklist(BASS_VOICES),
    chords: v.picklist(CHORD_VOICES),
    kit: v.picklist(KITS),
    swing: v.union([v.picklist(['feel', 'by tempo']), between(SWING_RANGE.low, SWING_RANGE.high)]),
    push: v.object({
      drums: v.exactOptional(between(-60, 60)),
      bass: v.exactOptional(between(-60, 60)),
      chords: v.exactOptional(between(-60, 60)),
      lead: v.exactOptional(between(-60, 60)),
      click: v.exactOptional(between(-60, 60)),
    }),
    stopTime: v.picklist(STOP_TIMES),
    leaveRoom: v.boolean(),
    seed: whole(0, 2 ** 31),
  }),
  plan: v.object({
    countInBars: v.picklist(COUNT_INS),
    intro: v.picklist(INTROS),
    choruses: v.nullable(whole(1, 200)),
    arc: v.picklist(ARCS),
    ending: v.picklist(ENDINGS),
    ritard: v.boolean(),
    repeat: v.nullable(v.object({ from: whole(0, 127), to: whole(0, 127) })),
    countBetween: v.boolean(),
    keys: v.variant('kind', [
      v.object({ kind: v.literal('same') }),
      v.object({ kind: v.literal('fourths') }),
      v.object({
        kind: v.literal('list'),
        keys: v.pipe(v.array(pitchClass), v.minLength(1), v.maxLength(48)),
      }),
    ]),
    tempo: v.variant('kind', [
      v.object({ kind: v.literal('fixed') }),
      v.object({ kind: v.literal('ramp'), from: tempo, step: between(0.5, 60), every: whole(1, 20) }),
      v.object({ kind: v.literal('alternate'), slow: tempo }),
    ]),
    dropOut: v.nullable(v.object({ play: whole(1, 64), rest: whole(1, 64) })),
    sounding: v.picklist(SOUNDINGS),
  }),
  technique: v.object({
    drawBends: v.boolean(),
    blowBends: v.boolean(),
    overbends: v.boolean(),
    off: v.pipe(v.array(shortText), v.maxLength(200)),
  }),
  line: v.object({
    kind: v.picklist(['none', 'guide tones', 'chord tones', 'arpeggio']),
    pace: v.picklist([1, 2, 4]),
    taste: v.picklist(LINE_TASTES.map(({ id }) => id)),
    seed: whole(0, 2 ** 31),
    heard: v.boolean(),
  }),
  trade: v.object({ on: v.boolean(), calls: v.pipe(v.string(), v.maxLength(MOST_CALL_TEXT)) }),
  tabStyle: v.picklist(['signs', 'letters', 'arrows']),
  drawing: v.picklist(['comb', 'keys']),
  showCents: v.boolean(),
  layer: shortText,
  look: v.picklist(['system', 'day', 'night']),
  reference: v.pipe(between(REFERENCE_PITCHES.low, REFERENCE_PITCHES.high), v.transform(asHz)),
  mix: v.object({
    channels: v.object({
      drums: channel,
      bass: channel,
      chords: channel,
      lead: channel,
      click: channel,
    }),
    master: between(0, 1),
  }),
  ownSounds: v.pipe(v.array(v.picklist(['drums', 'bass', 'chords', 'lead'])), v.maxLength(4)),
} as const;

/** How each field is called in a message to the player. */
const FIELD_NAMES: Record<keyof Settings, string> = {
  harpKey: 'harp key',
  harpOctave: 'harp range',
  tuning: 'tuning',
  intonation: 'intonation',
  stretch: 'octave stretch',
  valved: 'valves',
  bandFollowsHarp: 'tuning of the band',
  position: 'position',
  songPinned: 'pinned song key',
  formId: 'form',
  tempo: 'tempo',
  style: 'band style',
  plan: 'plan of choruses',
  technique: 'techniques',
  line: 'line',
  trade: 'call and answer',
  tabStyle: 'tab style',
  drawing: 'drawing',
  showCents: 'cents on the map',
  layer: 'scale layer',
  look: 'day or night look',
  reference: 'reference pitch',
  mix: 'mixer',
  ownSounds: 'choice of your own sounds',
};

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Reads stored or linked settings. Total: never throws, keeps every field that can be read, takes the
 * default for the others and says which.
 */
export const parseSettings = (input: unknown): ParsedSettings => {
  if (!isRecord(input)) {
    return {
      settings: DEFAULT_SETTINGS,
      problems: ['The kept settings are not settings of this program; the usual ones are used instead.'],
    };
  }
  const problems: string[] = [];
  const version = input.version;
  if (typeof version === 'number' && version > SETTINGS_VERSION) {
    problems.push(
      'The kept settings come from a newer version of this program; what is known here was read, the rest was left out.',
    );
  }
  const read: Record<string, unknown> = {};
  for (const [name, schema] of Object.entries(FIELDS)) {
    if (!(name in input)) continue;
    const result = v.safeParse(schema, input[name]);
    if (result.success) read[name] = result.output;
    else {
      const field = FIELD_NAMES[name as keyof Settings];
      problems.push(`The kept ${field} could not be read; the usual ${field} is used instead.`);
    }
  }
  return { settings: orderRange({ ...DEFAULT_SETTINGS, ...read }), problems };
};

const orderRange = (settings: Settings): Settings => {
  const { repeat } = settings.plan;
  if (repeat === null || repeat.from <= repeat.to) return settings;
  return { ...settings, plan: { ...settings.plan, repeat: { from: repeat.to, to: repeat.from } } };
};

/** The JSON-safe record that `parseSettings` reads back. */
export const storableSettings = (settings: Settings): Record<string, unknown> => ({
  version: SETTINGS_VERSION,
  ...settings,
});

/**
 * Reads a tempo as a player types it.
 * @returns the tempo, or a sentence that says what was wrong.
 */
export const parseTempo = (typed: string): Bpm | string => {
  const { low, high } = TEMPO_RANGE;
  const value = Number(typed.trim().replace(',', '.'));
  if (typed.trim() === '' || !Number.isFinite(value)) {
    return `“${typed.trim()}” is not a number. Type a tempo from ${low} to ${high} beats a minute.`;
  }
  if (value < low || value > high)
    return `${value} is out of reach. Type a tempo from ${low} to ${high} beats a minute.`;
  return asBpm(value);
};
