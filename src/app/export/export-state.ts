import type { Encoding } from '../../audio/export/compression';
import type { Plan } from '../../core/arranger/program';
import type { WavFormat } from '../../core/formats/wav';
import type { SongExtent } from '../../core/song/song-sections';

/** What the player chose about files. */
export interface TakeAwayChoices {
  /** `null` follows the plan, and is three where the plan goes on until stopped. */
  readonly choruses: number | null;
  /** `null` follows the plan. */
  readonly countIn: boolean | null;
  readonly ending: boolean;
  readonly kind: 'wav' | Encoding['id'];
  readonly sampleRate: 44100 | 48000;
  readonly bits: WavFormat['bits'];
  readonly files: 'band' | 'parts';
}

/** A file being made. */
export interface SavingJob {
  readonly fileName: string;
  /** 0–1. */
  readonly share: number;
  /** Which song of a set it is, from 1, and how many there are; absent for a file alone. */
  readonly song?: { readonly number: number; readonly of: number };
}

/** How the last saving went, in a sentence. */
export interface TakeAwayMessage {
  readonly tone: 'note' | 'trouble';
  readonly text: string;
  /** True where what was saved can be handed on by the sheet of the platform. */
  readonly shareable?: boolean;
}

export interface TakeAwayState {
  readonly choices: TakeAwayChoices;
  /** What this browser can compress to; empty until asked. */
  readonly encodings: readonly Encoding[];
  readonly job: SavingJob | null;
  readonly message: TakeAwayMessage | null;
}

export const INITIAL_TAKE_AWAY: TakeAwayState = {
  choices: {
    choruses: null,
    countIn: null,
    ending: true,
    kind: 'wav',
    sampleRate: 44100,
    bits: 16,
    files: 'band',
  },
  encodings: [],
  job: null,
  message: null,
};

const USUAL_CHORUSES = 3;

/** How much of the song the choices ask for under a plan. */
export const extentOf = ({ choruses, countIn, ending }: TakeAwayChoices, plan: Plan): SongExtent => ({
  choruses: choruses ?? plan.choruses ?? USUAL_CHORUSES,
  countIn: countIn ?? plan.countInBars > 0,
  ending,
});

/** Bytes of a whole-band file of so many seconds. */
export const audioBytes = (
  { kind, sampleRate, bits }: TakeAwayChoices,
  encodings: readonly Encoding[],
  seconds: number,
): number => {
  const encoding = encodings.find(({ id }) => id === kind);
  return encoding ? (seconds * encoding.bitrate) / 8 : (seconds * sampleRate * 2 * bits) / 8;
};

/** The files being made, as the page shows them. */
export interface ExportState {
  readonly takeAway: TakeAwayState;
}
