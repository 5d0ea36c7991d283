import type { SoundFontFlaw } from '../../core/formats/sound-font';
import type { SoundRequest } from '../bank/bank-messages';
import type { VoiceId } from '../synthesis/voice';

/** Voices that a SoundFont can take the place of. */
export type FontVoice = Exclude<VoiceId, 'click'>;

/** Why a file is not used. */
export type FontRefusal =
  | SoundFontFlaw
  /** The browser could not read the file. */
  | { readonly kind: 'unreadable'; readonly detail: string }
  /** The part of the program that plays SoundFonts did not load or broke down. */
  | { readonly kind: 'no player'; readonly detail: string }
  /** A whole file, but without any instrument of the band. */
  | { readonly kind: 'no instruments' }
  | { readonly kind: 'too slow'; readonly seconds: number }
  /** Another file was opened, or the file forgotten, while this one was read. */
  | { readonly kind: 'overtaken' };

/**
 * How a file is played: one of the player's own as it stands, the recorded instruments with what their recordings lack,
 * one of each key: strokes that differ, and a tone that follows the velocity.
 */
export type FontManner = 'as it is' | 'varied';

/** Asks the SoundFont worker: once to open a file, then for sounds. */
export type FontRequest =
  | { readonly kind: 'open'; readonly file: Blob; readonly manner: FontManner }
  | ({ readonly kind: 'render'; readonly id: number } & SoundRequest);

/** A rendered sound; its samples are handed over, not copied. */
export interface FontRendering {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly loop: { readonly from: number; readonly to: number } | null;
  readonly release: number;
}

/** What the SoundFont worker says. */
export type FontAnswer =
  | { readonly kind: 'opened'; readonly voices: readonly FontVoice[] }
  | { readonly kind: 'refused'; readonly why: FontRefusal }
  | { readonly kind: 'sound'; readonly id: number; readonly sound: FontRendering }
  /** The file has no such sound. */
  | { readonly kind: 'none'; readonly id: number }
  | { readonly kind: 'failed'; readonly id: number; readonly reason: string };
