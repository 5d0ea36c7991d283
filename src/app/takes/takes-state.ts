import type { AboutTake } from '../../core/takes/kept-take';
import type { WrittenPass } from '../../core/takes/take-bars';
import type { TakeSide } from '../../core/takes/take-sound';

/** A take that lies open: what the page shows of it. */
export interface OpenTake {
  readonly source: 'microphone' | 'file';
  /** Of a file, its name. */
  readonly name: string;
  readonly seconds: number;
  readonly bytes: number;
  /** How many notes were written down. */
  readonly notes: number;
  readonly passes: readonly WrittenPass[];
  /** Whether the band's sound is there as well. */
  readonly withBand: boolean;
  /** Of a file: the second at which its first chorus begins; null where it stands for itself. */
  readonly begins: number | null;
  /** The second at which its first note begins. */
  readonly firstNote: number | null;
}

export interface TakesState {
  readonly takes: {
    /** What is kept of the last minutes; null while nothing is. */
    readonly kept: { readonly seconds: number; readonly bytes: number } | null;
    readonly take: OpenTake | null;
    /** Takes that are kept in the browser; absent before they were asked for. */
    readonly shelf?: readonly AboutTake[];
    /** Name of the take that was taken out last, so that it can be brought back; null for none. */
    readonly dropped?: string | null;
    /** What is being done, with how much of it is done (0 to 1). */
    readonly work: { readonly what: string; readonly share: number } | null;
    /** What of the take is heard now. */
    readonly sounding: TakeSide | null;
    readonly message: { readonly tone: 'note' | 'trouble'; readonly text: string } | null;
  };
}

/** Before anything was played. */
export const NO_TAKES: TakesState['takes'] = {
  kept: null,
  take: null,
  work: null,
  sounding: null,
  message: null,
};
