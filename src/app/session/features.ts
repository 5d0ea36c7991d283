import { bendsFeature } from '../bends/bends-feature';
import { bookFeature } from '../book/book-feature';
import { chartsFeature } from '../charts/charts';
import { earFeature } from '../ear/ear';
import { exportFeature } from '../export/export';
import { newerVersionFeature } from '../offline/newer-version';
import type { Joined, Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import { recordedFeature } from '../soundfont/recorded';
import { soundFontFeature } from '../soundfont/soundfont';
import { stageFeature } from '../stage/stage';
import { warmUpFeature } from '../warm-up/warm-up-run';

/** Every feature beside the song and its keeping, by the name its device has. They join in this order. */
const FEATURES = {
  charts: chartsFeature,
  book: bookFeature,
  takeAway: exportFeature,
  ownSounds: soundFontFeature,
  recorded: recordedFeature,
  warmUp: warmUpFeature,
  offline: newerVersionFeature,
  screen: stageFeature,
  microphone: earFeature,
  bends: bendsFeature,
};

type Features = typeof FEATURES;
type Name = keyof Features;

type All<Union> = (Union extends unknown ? (each: Union) => void : never) extends (all: infer Each) => void
  ? Each
  : never;

type DeviceOf<Of extends Name> = Parameters<Features[Of]['join']>[1];

/** Names of features that have no device, or stand without it. */
type Deviceless = { [Of in Name]: undefined extends DeviceOf<Of> ? Of : never }[Name];

/** The devices of the features. */
export type FeatureDevices = { readonly [Of in Exclude<Name, Deviceless>]: DeviceOf<Of> } & {
  readonly [Of in Deviceless]?: DeviceOf<Of>;
};

/** The slices of the features. */
export type FeatureState = All<ReturnType<Features[Name]['initial']>>;

/** What the page can ask of the features. */
export type FeatureCommands = All<ReturnType<Features[Name]['join']>['commands']>;

/** A feature as the list sees it: the types above say which device, slice and commands belong to which. */
interface Listed {
  readonly initial: (device: never) => object;
  readonly join: (stand: Stand<FeatureState & SongState, FeatureCommands>, device: never) => Joined<object>;
}

const LISTED: Readonly<Record<string, Listed>> = FEATURES;

const withDevices = (devices: FeatureDevices): readonly (readonly [Listed, never])[] => {
  const byName = new Map<string, unknown>(Object.entries(devices));
  return Object.entries(LISTED).map(([name, feature]) => [feature, byName.get(name) as never]);
};

/** Every feature's slice before anything has happened. */
export const initialFeatures = (devices: FeatureDevices): FeatureState =>
  Object.assign({}, ...withDevices(devices).map(([feature, device]) => feature.initial(device)));

/** Sets every feature to work, in the order of the list. */
export const joinFeatures = (
  stand: Stand<FeatureState & SongState, FeatureCommands>,
  devices: FeatureDevices,
): readonly Joined<object>[] => withDevices(devices).map(([feature, device]) => feature.join(stand, device));

/** All that the page can ask of features at work. */
export const commandsOf = (joined: readonly Joined<object>[]): FeatureCommands =>
  Object.assign({}, ...joined.map(({ commands }) => commands));
