import { HARP_SETTINGS } from './harp-settings';
import { OUTSIDE_SETTINGS } from './outside-settings';
import { PAGE_SETTINGS } from './page-settings';
import { PRACTICE_SETTINGS } from './practice-settings';
import type { Setting } from './setting';
import { SONG_SETTINGS } from './song-settings';
import { SOUND_SETTINGS } from './sound-settings';

/** Every setting there is, declared once; names, types, usual values and reading follow from it. */
export const SETTINGS = {
  ...HARP_SETTINGS,
  ...SONG_SETTINGS,
  ...SOUND_SETTINGS,
  ...PRACTICE_SETTINGS,
  ...PAGE_SETTINGS,
  ...OUTSIDE_SETTINGS,
} as const;

/** Everything the player chose, kept across reloads. */
export type Settings = {
  readonly [Name in keyof typeof SETTINGS]: (typeof SETTINGS)[Name] extends Setting<infer Value>
    ? Value
    : never;
};
