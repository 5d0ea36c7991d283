import type { FontVoice } from '../../audio/soundfont/font-messages';

/** The player's own file of sounds. */
export interface OwnFile {
  readonly name: string;
  readonly bytes: number;
  /** Whether the browser keeps it for the next visit. */
  readonly kept: boolean;
  /** What it plays; `null` while it only lies there, since no part uses it. */
  readonly opened: { readonly source: number; readonly voices: readonly FontVoice[] } | null;
}

export interface OwnSoundsState {
  readonly file: OwnFile | null;
  /** Name of the file that is being read. */
  readonly opening: string | null;
  /** What went wrong and what to do, in a sentence or two. */
  readonly trouble: string | null;
}

/** How the recorded instruments stand. */
export interface RecordedState {
  /** `missing`: they could not be fetched or played in this visit. */
  readonly kind: 'none' | 'coming' | 'there' | 'missing';
  /** The number of their file, once it is open. */
  readonly opened: number | null;
  /** The same from when the band plays on them: never begun in mid-song. */
  readonly taken: number | null;
}

/** The player's own sounds, as the page shows them. */
export interface SoundFontState {
  readonly ownSounds: OwnSoundsState;
}

export const NO_OWN_SOUNDS: OwnSoundsState = { file: null, opening: null, trouble: null };
export const NO_RECORDED: RecordedState = { kind: 'none', opened: null, taken: null };
