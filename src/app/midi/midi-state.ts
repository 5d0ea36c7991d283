import type { FitChord } from '../../core/fit/fit';
import type { Sound } from '../../core/harp/harp';
import type { PedalAction } from '../../core/midi/pedals';
import type { MidiStatus } from '../../midi/midi-ports';

/** Keyboards and pedals, as the page shows them. */
export interface MidiState {
  readonly midi: {
    readonly status: MidiStatus;
    /** Keys of the chord hand held down, lowest first, as MIDI numbers. */
    readonly held: readonly number[];
    /** What fits the chord they are; null while they are none. */
    readonly fit: FitChord | null;
    /** Sounds of the harp that keys hold. */
    readonly sounding: readonly Sound[];
    /** The key pressed last that the harp in hand, or the player, does not have; null after one that it has. */
    readonly missing: number | null;
    /** The action that the next switch pressed is for; null while none is asked for. */
    readonly learning: PedalAction | null;
  };
}

/** Before anything is plugged in. */
export const NO_MIDI: MidiState['midi'] = {
  status: { kind: 'off' },
  held: [],
  fit: null,
  sounding: [],
  missing: null,
  learning: null,
};
