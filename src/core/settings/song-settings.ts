import * as v from 'valibot';
import { DYNAMICS } from '../arranger/energy';
import { ARCS, COUNT_INS, ENDINGS, INTROS, type Plan } from '../arranger/program';
import { TURNAROUNDS } from '../arranger/turnarounds';
import { MOST_BARS } from '../chart/chart';
import { FEEL_IDS } from '../feels/feels';
import { CLICKS } from '../players/click';
import { STOP_TIMES, type Style, TIMES } from '../players/style';
import { PART_IDS, type PartId } from '../score/score';
import { SOUNDINGS } from '../score/soundings';
import { SWING_RANGE, SWING_WAYS } from '../score/swing';
import { BASS_VOICES, CHORD_VOICES, KITS, SECOND_VOICES } from '../score/voices';
import { asBpm } from '../theory/units';
import { between, pitchClass, seed, setting, shortText, whole } from './setting';
import { tempoSchema } from './tempo';

/** Milliseconds a part may be pushed ahead of or behind the beat. */
const pushed = v.exactOptional(between(-60, 60));
const push = v.object(
  Object.fromEntries(PART_IDS.map((part) => [part, pushed])) as Record<PartId, typeof pushed>,
);

const style = v.object({
  feel: v.picklist(FEEL_IDS),
  bass: v.picklist(BASS_VOICES),
  chords: v.picklist(CHORD_VOICES),
  second: v.optional(v.picklist(['none', ...SECOND_VOICES]), 'none'),
  kit: v.picklist(KITS),
  swing: v.union([v.picklist(SWING_WAYS), between(SWING_RANGE.low, SWING_RANGE.high)]),
  push,
  time: v.optional(v.picklist(TIMES), 'usual'),
  stopTime: v.picklist(STOP_TIMES),
  leaveRoom: v.boolean(),
  seed,
});

const keys = v.variant('kind', [
  v.object({ kind: v.literal('same') }),
  v.object({ kind: v.literal('fourths') }),
  v.object({ kind: v.literal('list'), keys: v.pipe(v.array(pitchClass), v.minLength(1), v.maxLength(48)) }),
]);
const tempo = v.variant('kind', [
  v.object({ kind: v.literal('fixed') }),
  v.object({ kind: v.literal('ramp'), from: tempoSchema, step: between(0.5, 60), every: whole(1, 20) }),
  v.object({ kind: v.literal('alternate'), slow: tempoSchema }),
]);

/** The bar of a chart, counted from 0. */
const barOfChart = whole(0, MOST_BARS - 1);

const plan = v.object({
  countInBars: v.picklist(COUNT_INS),
  intro: v.picklist(INTROS),
  choruses: v.nullable(whole(1, 200)),
  arc: v.picklist(ARCS),
  dynamics: v.optional(v.picklist(DYNAMICS), 'lively'),
  turnarounds: v.optional(v.picklist(TURNAROUNDS), 'varied'),
  ending: v.picklist(ENDINGS),
  ritard: v.boolean(),
  repeat: v.nullable(v.object({ from: barOfChart, to: barOfChart })),
  countBetween: v.boolean(),
  keys,
  tempo,
  click: v.optional(v.picklist(CLICKS), 'every beat'),
  dropOut: v.nullable(v.object({ play: whole(1, 64), rest: whole(1, 64) })),
  sounding: v.picklist(SOUNDINGS),
});

const USUAL_STYLE: Style = {
  feel: 'shuffle',
  bass: 'upright-bass',
  chords: 'piano',
  second: 'none',
  kit: 'sticks',
  swing: 'feel',
  push: {},
  time: 'usual',
  stopTime: 'off',
  leaveRoom: true,
  seed: 1,
};

const USUAL_PLAN: Plan = {
  countInBars: 1,
  intro: 'none',
  choruses: null,
  arc: 'breathe',
  dynamics: 'lively',
  turnarounds: 'varied',
  ending: 'cadence',
  ritard: false,
  repeat: null,
  countBetween: false,
  keys: { kind: 'same' },
  tempo: { kind: 'fixed' },
  click: 'every beat',
  dropOut: null,
  sounding: 'band',
};

/** What is played and how: a medium shuffle. */
export const SONG_SETTINGS = {
  /** The song key stays when the position changes, and the harp follows. */
  songPinned: setting('pinned song key', false, v.boolean()),
  /** The harp in hand stays when the song key changes, and the position follows. */
  harpLocked: setting('harp that is kept', false, v.boolean()),
  /** Whether key, tempo, feel and form chosen while the band plays wait for the next chorus. */
  changesWait: setting('time of changes', false, v.boolean()),
  /** A built-in form or a chart of the player's own; where nothing has this id, the standard form is meant. */
  formId: setting('form', 'quick-change-turnaround', shortText),
  tempo: setting('tempo', asBpm(104), tempoSchema),
  style: setting<Style>('band style', USUAL_STYLE, style),
  /** Every Play plays the same fills and lines; otherwise each is a take of its own. */
  sameTake: setting('take that is kept', false, v.boolean()),
  /** With the microphone open, the chords thin out while the harp plays and answer while it rests. */
  bandListens: setting('choice of a band that listens', false, v.boolean()),
  plan: setting<Plan>('plan of choruses', USUAL_PLAN, plan),
} as const;
