import type { Plan } from '../arranger/program';
import type { Tuning } from '../harp/harp';
import { TUNINGS } from '../harp/tunings';
import type { Style } from '../players/style';
import { asBpm, asHz, asPitchClass } from '../theory/units';
import type { Channel, Mix } from './mix';
import type { Settings } from './settings';

const channel = (gain: number, pan: number, muted = false): Channel => ({ gain, muted, solo: false, pan });

/** Faders at rest: a moderate master, the click silent, the parts spread a little around the harp. */
export const DEFAULT_MIX: Mix = {
  channels: {
    drums: channel(0.75, 0),
    bass: channel(0.75, 0),
    chords: channel(0.75, -0.25),
    lead: channel(0.75, 0.2),
    click: channel(0.6, 0, true),
  },
  master: 0.7,
};

export const DEFAULT_STYLE: Style = {
  feel: 'shuffle',
  bass: 'upright-bass',
  chords: 'piano',
  kit: 'sticks',
  swing: 'feel',
  push: {},
  stopTime: 'off',
  leaveRoom: true,
  seed: 1,
};

export const DEFAULT_PLAN: Plan = {
  countInBars: 1,
  intro: 'none',
  choruses: null,
  arc: 'breathe',
  ending: 'cadence',
  ritard: false,
  repeat: null,
  countBetween: false,
  keys: { kind: 'same' },
  tempo: { kind: 'fixed' },
  dropOut: null,
  sounding: 'band',
};

const RICHTER_TUNING: Tuning = {
  id: TUNINGS[0].id,
  name: TUNINGS[0].name,
  blow: TUNINGS[0].blow,
  draw: TUNINGS[0].draw,
};

/** What a stranger with a C harp finds: a medium shuffle in G, second position, draw bends on. */
export const DEFAULT_SETTINGS: Settings = {
  harpKey: asPitchClass(0),
  harpOctave: 0,
  tuning: RICHTER_TUNING,
  intonation: 'equal',
  stretch: 0,
  valved: [],
  bandFollowsHarp: false,
  position: 2,
  songPinned: false,
  formId: 'quick-change-turnaround',
  tempo: asBpm(104),
  style: DEFAULT_STYLE,
  plan: DEFAULT_PLAN,
  technique: { drawBends: true, blowBends: false, overbends: false, off: [] },
  line: { kind: 'none', pace: 1, taste: 'even', seed: 0, heard: false },
  trade: { on: false, calls: '' },
  tabStyle: 'arrows',
  drawing: 'comb',
  showCents: false,
  layer: 'minor-blues',
  look: 'system',
  reference: asHz(440),
  mix: DEFAULT_MIX,
  ownSounds: [],
};
