import type { StoreApi } from 'zustand/vanilla';
import type { Band, BandSound, BandStatus } from '../audio/band';
import type { Program } from '../core/arranger/program';
import type { OwnChart } from '../core/chart/own-chart';
import { temperamentOf } from '../core/harp/intonation';
import type { Mix } from '../core/settings/mix';
import type { Settings } from '../core/settings/settings';
import { asCents } from '../core/theory/units';
import { type LeadChoices, leadsOf } from './leads';
import type { SessionState } from './session-state';

const EQUAL = Array.from({ length: 12 }, () => asCents(0));

/** Nobody asks for the click alone in order not to hear it: its mute gives way. */
const audibleMix = ({ mix, plan }: Settings): Mix => {
  if (plan.sounding !== 'click') return mix;
  const click = { ...mix.channels.click, muted: false };
  return { ...mix, channels: { ...mix.channels, click } };
};

/** How the band is to sound. */
export const soundOf = ({ settings, tune, ownSounds }: SessionState): BandSound => {
  const { reference, style, bandFollowsHarp } = settings;
  const parts = settings.ownSounds;
  const opened = ownSounds.file?.opened;
  const offsets = bandFollowsHarp ? (temperamentOf(tune.harp, reference).cents ?? EQUAL) : EQUAL;
  return {
    mix: audibleMix(settings),
    tuning: { reference, offsets },
    bass: style.bass,
    chords: style.chords,
    kit: style.kit,
    ...(opened && parts.length > 0 ? { own: { source: opened.source, parts } } : {}),
  };
};

/**
 * The choices leads are made from. The compiler keeps the list whole: `leadsOf` is given these fields and no others,
 * so that it cannot read one that is missing here.
 */
const LEAD_FIELDS = Object.keys({
  harpKey: true,
  harpOctave: true,
  tuning: true,
  intonation: true,
  reference: true,
  stretch: true,
  valved: true,
  position: true,
  formId: true,
  style: true,
  plan: true,
  technique: true,
  line: true,
  trade: true,
} satisfies Record<keyof LeadChoices, true>) as readonly (keyof LeadChoices)[];

type Leads = NonNullable<Program['leads']>;

/** Leads for twelve keys take a fifth of a second to make: they are made anew only when what they are made from changes. */
const rememberLeads = (): ((choices: LeadChoices, ownCharts: readonly OwnChart[]) => Leads) => {
  let made: {
    readonly choices: LeadChoices;
    readonly ownCharts: readonly OwnChart[];
    readonly leads: Leads;
  } | null = null;
  return (choices, ownCharts) => {
    const before = made;
    const same =
      before !== null &&
      before.ownCharts === ownCharts &&
      LEAD_FIELDS.every((field) => before.choices[field] === choices[field]);
    if (same) return before.leads;
    const leads = leadsOf(choices, ownCharts);
    made = { choices, ownCharts, leads };
    return leads;
  };
};

/** What the band is to play. @param leads makes what the harp voice plays; remembers nothing unless it is given. */
export const programOf = (
  { settings, tune, lastChorus, ownCharts }: SessionState,
  leads: typeof leadsOf = leadsOf,
): Program => ({
  leads: leads(settings, ownCharts),
  chart: tune.chart,
  style: settings.style,
  tempo: settings.tempo,
  plan: {
    ...settings.plan,
    choruses: lastChorus === null ? settings.plan.choruses : lastChorus + 1,
  },
});

/** Whether the band is in the middle of a song, interrupted or not. */
export const isUnderWay = (band: Band): boolean =>
  band.status().kind === 'playing' || band.status().kind === 'interrupted';

/** Programs are plain data, made field by field in one order. */
const sameValue = (a: Program | null, b: Program): boolean =>
  a !== null && (a === b || JSON.stringify(a) === JSON.stringify(b));

/** Tells the band what to play. */
export interface BandOrders {
  programOf(state: SessionState): Program;
  /** Plays the song as chosen, from a bar of the form. */
  play(fromBar: number): Promise<BandStatus>;
  /** To be called after any change: a band under way is told when what it is to play is no longer what it was told. */
  follow(): void;
}

/**
 * Orders for a band that compare the music itself, not the choices it is made from: whatever a choice changes in the
 * program, the band hears of it, and of nothing else.
 */
export const createBandOrders = (store: StoreApi<SessionState>, band: Band): BandOrders => {
  const leads = rememberLeads();
  let told: Program | null = null;
  const make = (state: SessionState): Program => programOf(state, leads);
  return {
    programOf: make,
    play: (fromBar) => {
      told = make(store.getState());
      return band.play(told, soundOf(store.getState()), fromBar);
    },
    follow: () => {
      if (!isUnderWay(band) || store.getState().warmUp !== null) return;
      const program = make(store.getState());
      if (sameValue(told, program)) return;
      told = program;
      band.change(program);
    },
  };
};
