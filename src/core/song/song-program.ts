import type { FollowedChord } from '../arranger/followed';
import type { Program } from '../arranger/program';
import type { Turnarounds } from '../arranger/turnarounds';
import type { OwnChart } from '../chart-text/own-chart';
import type { Harp } from '../harp/harp';
import { temperamentOf } from '../harp/intonation';
import type { TradeRun } from '../practice/trade-run';
import { type Mix, RECORDED_PARTS } from '../settings/mix';
import type { Settings } from '../settings/settings';
import { asCents, asSeconds } from '../theory/units';
import type { BandSound, FileSound } from './band-sound';
import { keysOf, type LeadChoices, leadsOf } from './leads';
import { formOf, harpFor, type Tune, turnaroundsFor } from './tune';

/** Everything that what the band plays, and how it sounds, is made from. */
export interface SongChoice {
  readonly settings: Settings;
  readonly tune: Tune;
  /** The chorus asked to be the last, from 0; `null` when the plan decides. */
  readonly lastChorus: number | null;
  readonly ownCharts: readonly OwnChart[];
  /** Whether the harp was heard in the bar before; null while the band does not listen. */
  readonly harpHeard?: 'plays' | 'rests' | null;
  /** Chords of somebody who plays along, in place of the chart's; none when absent. */
  readonly followed?: readonly FollowedChord[];
  /** The player's own sounds, with the number of the file that is open. */
  readonly ownSounds: { readonly file: { readonly opened: { readonly source: number } | null } | null };
  /** The number of the file of recorded instruments: once it is open, and from when the band plays on them. */
  readonly recorded: { readonly opened: number | null; readonly taken: number | null };
  /** What came of the turns of a trading so far; absent before any. */
  readonly tradeRun?: TradeRun;
}

/** The note most blues is played from. */
const HOME = { hole: 2, breath: 'draw' } as const;

const EQUAL = Array.from({ length: 12 }, () => asCents(0));

/** Nobody asks for the click alone in order not to hear it: its mute gives way. */
const audibleMix = ({ mix, plan }: Settings): Mix => {
  if (plan.sounding !== 'click') return mix;
  const click = { ...mix.channels.click, muted: false };
  return { ...mix, channels: { ...mix.channels, click } };
};

/** The file that plays these parts, if there is both. */
const fileSound = (source: number | null | undefined, parts: FileSound['parts']): FileSound | null =>
  source === null || source === undefined || parts.length === 0 ? null : { source, parts };

/** How the band is to sound: the mix, its temperament (the harp's own where it follows that), and who plays the parts. */
export const soundOf = ({
  settings,
  tune,
  ownSounds,
  recorded: { taken },
}: Pick<SongChoice, 'settings' | 'tune' | 'ownSounds' | 'recorded'>): BandSound => {
  const { reference, style, bandFollowsHarp, computedVoices } = settings;
  const own = fileSound(ownSounds.file?.opened?.source, settings.ownSounds);
  const recorded = fileSound(
    taken,
    RECORDED_PARTS.filter((part) => !computedVoices.includes(part)),
  );
  const offsets = bandFollowsHarp ? (temperamentOf(tune.harp, reference).cents ?? EQUAL) : EQUAL;
  return {
    mix: audibleMix(settings),
    temperament: { reference, offsets },
    bass: style.bass,
    chords: style.chords,
    kit: style.kit,
    ...(style.second !== 'none' && { second: style.second }),
    ...(own && { own }),
    ...(recorded && { recorded }),
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
  partner: true,
} satisfies Record<keyof LeadChoices, true>) as readonly (keyof LeadChoices)[];

type Leads = NonNullable<Program['leads']>;

/** Makes leads anew only when what they are made from changes: for twelve keys they take a fifth of a second. */
export const rememberLeads = (): typeof leadsOf => {
  let made: {
    readonly choices: LeadChoices;
    readonly ownCharts: readonly OwnChart[];
    readonly run: TradeRun | undefined;
    readonly leads: Leads;
  } | null = null;
  return (choices, ownCharts, run) => {
    const before = made;
    const same =
      before !== null &&
      before.ownCharts === ownCharts &&
      before.run === run &&
      LEAD_FIELDS.every((field) => before.choices[field] === choices[field]);
    if (same) return before.leads;
    const leads = leadsOf(choices, ownCharts, run);
    made = { choices, ownCharts, run, leads };
    return leads;
  };
};

/** How the band sounds on the page, where all of it can be muted and a loudspeaker can lag; files do neither. */
export const audibleSoundOf = (
  state: Parameters<typeof soundOf>[0] & { readonly muted: boolean },
): BandSound => {
  const sound = { ...soundOf(state), lag: asSeconds(state.settings.speakerLag / 1000) };
  return state.muted ? { ...sound, mix: { ...sound.mix, master: 0 } } : sound;
};

/** The turnarounds left to the arranger: a chart of the player's own, and one with its turnaround in it, stay as they are. */
const turnaroundsOf = (settings: Settings, ownCharts: readonly OwnChart[]): Turnarounds =>
  typeof formOf(settings, ownCharts) === 'string' && turnaroundsFor(settings) === 'varied'
    ? 'varied'
    : 'as written';

/** A resting song's state with the recorded instruments taken up, as a Play would. */
export const withRecordedTaken = <State extends Pick<SongChoice, 'recorded'>>(state: State): State => ({
  ...state,
  recorded: { ...state.recorded, taken: state.recorded.opened },
});

const homeOf = ({ sounds }: Harp): number | undefined =>
  sounds.find(
    ({ hole, breath, technique }) => hole === HOME.hole && breath === HOME.breath && technique === 'natural',
  )?.pitch;

/** The harp's home note, 2 draw, in every key the plan goes through; nothing where no room is asked for. */
const harpHomes = (settings: Settings, tune: Tune): NonNullable<Program['harpHome']> => {
  if (!settings.style.leaveRoom) return {};
  const homes = keysOf(settings).flatMap((key) => {
    const home = homeOf(key === tune.chart.key ? tune.harp : harpFor(settings, key));
    return home === undefined ? [] : [[key, Math.round(home)] as const];
  });
  return Object.fromEntries(homes);
};

/** What the band is to play. @param leads makes what the harp voice plays; remembers nothing unless it is given. */
export const programOf = (
  {
    settings,
    tune,
    lastChorus,
    ownCharts,
    tradeRun,
    harpHeard = null,
    followed = [],
  }: Omit<SongChoice, 'ownSounds' | 'recorded'>,
  leads: typeof leadsOf = leadsOf,
): Program => ({
  leads: leads(settings, ownCharts, tradeRun),
  harpHome: harpHomes(settings, tune),
  ...(harpHeard !== null && { harp: harpHeard }),
  ...(followed.length > 0 && { followed }),
  chart: tune.chart,
  style: settings.style,
  tempo: settings.tempo,
  plan: {
    ...settings.plan,
    turnarounds: turnaroundsOf(settings, ownCharts),
    choruses: lastChorus === null ? settings.plan.choruses : lastChorus + 1,
  },
});
