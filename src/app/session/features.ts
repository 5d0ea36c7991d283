import { NO_BENDS } from '../bends/bends-state';
import { EMPTY_BOOK } from '../book/book-state';
import { NO_CHARTS } from '../charts/charts-state';
import { NO_CHORUSES } from '../choruses/choruses-state';
import { EAR_OFF } from '../ear/ear-state';
import { INITIAL_TAKE_AWAY } from '../export/export-state';
import type { KeepingState } from '../keeping/keeping-state';
import { LASTING_UNASKED } from '../lasting/lasting-state';
import { NO_LOG } from '../log/log-state';
import { NO_MIDI } from '../midi/midi-state';
import { NO_NEWER } from '../offline/newer-version-state';
import { NO_TRADES } from '../phrases/phrases-state';
import type { ChoiceCommands } from '../song/choice-commands';
import type { Joined, Stand } from '../song/feature';
import type { PlayCommands } from '../song/play-commands';
import type { SongState } from '../song/song-state';
import { NO_OWN_SOUNDS, NO_RECORDED } from '../soundfont/soundfont-state';
import { STAGE_CLOSED } from '../stage/stage-state';
import { NO_TAKES } from '../takes/takes-state';
import { NO_TODAY } from '../today/today-state';
import { NO_WARM_UP } from '../warm-up/warm-up-state';

/**
 * Every feature beside the song and its keeping, by the name its device has: its slice before anything has happened,
 * which the page is first drawn with, and what it does, which is fetched after that. They join in this order.
 */
const FEATURES = {
  charts: { initial: NO_CHARTS, load: async () => (await import('../charts/charts')).joinCharts },
  book: {
    initial: { book: EMPTY_BOOK },
    load: async () => (await import('../book/book-feature')).joinBook,
  },
  takeAway: {
    initial: { takeAway: INITIAL_TAKE_AWAY },
    load: async () => (await import('../export/export')).joinExport,
  },
  ownSounds: {
    initial: { ownSounds: NO_OWN_SOUNDS },
    load: async () => (await import('../soundfont/soundfont')).joinSoundFont,
  },
  recorded: {
    initial: { recorded: NO_RECORDED },
    load: async () => (await import('../soundfont/recorded')).joinRecorded,
  },
  warmUp: { initial: NO_WARM_UP, load: async () => (await import('../warm-up/warm-up-run')).joinWarmUp },
  offline: {
    initial: NO_NEWER,
    load: async () => (await import('../offline/newer-version')).joinNewerVersion,
  },
  screen: { initial: { stage: STAGE_CLOSED }, load: async () => (await import('../stage/stage')).joinStage },
  microphone: { initial: { ear: EAR_OFF }, load: async () => (await import('../ear/ear')).joinEar },
  bends: {
    initial: { bends: NO_BENDS },
    load: async () => (await import('../bends/bends-feature')).joinBends,
  },
  phrases: {
    initial: NO_TRADES,
    load: async () => (await import('../phrases/phrases-feature')).joinPhrases,
  },
  lasting: { initial: LASTING_UNASKED, load: async () => (await import('../lasting/lasting')).joinLasting },
  mediaKeys: { initial: {}, load: async () => (await import('../media-keys/media-keys')).joinMediaKeys },
  tabs: { initial: {}, load: async () => (await import('../tabs/one-band')).joinTabs },
  midi: { initial: { midi: NO_MIDI }, load: async () => (await import('../midi/midi')).joinMidi },
  takes: { initial: { takes: NO_TAKES }, load: async () => (await import('../takes/takes')).joinTakes },
  choruses: {
    initial: { choruses: NO_CHORUSES },
    load: async () => (await import('../choruses/choruses')).joinChoruses,
  },
  today: { initial: { today: NO_TODAY }, load: async () => (await import('../today/today')).joinToday },
  log: { initial: { log: NO_LOG }, load: async () => (await import('../log/log')).joinLog },
};

type Features = typeof FEATURES;
type Name = keyof Features;
type JoinOf<Of extends Name> = Awaited<ReturnType<Features[Of]['load']>>;

type All<Union> = (Union extends unknown ? (each: Union) => void : never) extends (all: infer Each) => void
  ? Each
  : never;

type DeviceOf<Of extends Name> = Parameters<JoinOf<Of>>[1];

/** Names of features that have no device, or stand without it. */
type Deviceless = { [Of in Name]: undefined extends DeviceOf<Of> ? Of : never }[Name];

/** The devices of the features. */
export type FeatureDevices = { readonly [Of in Exclude<Name, Deviceless>]: DeviceOf<Of> } & {
  readonly [Of in Deviceless]?: DeviceOf<Of>;
};

/** The slices of the features. */
export type FeatureState = All<Features[Name]['initial']>;

/** What the page can ask of the features. */
export type FeatureCommands = All<ReturnType<JoinOf<Name>>['commands']>;

/** What features can ask of one another and of the stand. */
export type AskedCommands = FeatureCommands & PlayCommands & ChoiceCommands;

type FeatureStand = Stand<FeatureState & SongState & KeepingState, AskedCommands>;

/** A feature as the list sees it: the types above say which device, slice and commands belong to which. */
interface Listed {
  readonly initial: object;
  readonly load: () => Promise<(stand: FeatureStand, device: never) => Joined<object>>;
}

const LISTED: Readonly<Record<Name, Listed>> = FEATURES;

/** Every feature's slice before anything has happened. */
export const initialFeatures = (): FeatureState =>
  Object.assign({}, ...Object.values(LISTED).map(({ initial }) => initial));

/** What every feature does, fetched: to be set to work in the order of the list. */
export type LoadedFeatures = readonly {
  readonly name: string;
  readonly join: Awaited<ReturnType<Listed['load']>>;
}[];

/** Fetches what the features do. Rejects where a file of it cannot be had. */
export const loadFeatures = (): Promise<LoadedFeatures> =>
  Promise.all(Object.entries(LISTED).map(async ([name, { load }]) => ({ name, join: await load() })));

/** Sets every feature to work. */
export const joinFeatures = (
  loaded: LoadedFeatures,
  stand: FeatureStand,
  devices: FeatureDevices,
): readonly Joined<object>[] => {
  const byName = new Map<string, unknown>(Object.entries(devices));
  return loaded.map(({ name, join }) => join(stand, byName.get(name) as never));
};

/** All that the page can ask of features at work. */
export const commandsOf = (joined: readonly Joined<object>[]): FeatureCommands =>
  Object.assign({}, ...joined.map(({ commands }) => commands));
