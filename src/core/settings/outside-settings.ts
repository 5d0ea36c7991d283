import * as v from 'valibot';
import { KEY_USES, type KeyUse } from '../midi/keyboard';
import { PEDAL_ACTIONS, PEDAL_KINDS, type Pedal } from '../midi/pedals';
import { setting, shortText, whole } from './setting';

/** Keyboards and pedals, as the player has them. */
export interface MidiChoice {
  /** Whether they are listened to. */
  readonly on: boolean;
  readonly use: KeyUse;
  /** The lowest key of the hand that plays the harp, as a MIDI number. */
  readonly split: number;
  readonly pedals: readonly Pedal[];
  /** What is sent out, by the names of `OUT_CHOICES`; strange ones are passed over there. */
  readonly out: readonly string[];
  /** Name of the instrument it is sent to; empty for all. */
  readonly to: string;
  /** Whether the band follows the chords that are held. */
  readonly follow: boolean;
}

/** What is plugged in. */
export const OUTSIDE_SETTINGS = {
  midi: setting<MidiChoice>(
    'choice of keyboard and pedals',
    { on: false, use: 'split', split: 60, pedals: [], out: [], to: '', follow: false },
    v.object({
      on: v.boolean(),
      use: v.picklist(KEY_USES),
      split: whole(0, 127),
      pedals: v.pipe(
        v.array(
          v.object({
            kind: v.picklist(PEDAL_KINDS),
            channel: whole(1, 16),
            number: whole(0, 127),
            action: v.picklist(PEDAL_ACTIONS),
          }),
        ),
        v.maxLength(PEDAL_ACTIONS.length),
      ),
      // Younger than the rest: absent from older saves.
      out: v.optional(v.array(shortText), []),
      to: v.optional(shortText, ''),
      follow: v.optional(v.boolean(), false),
    }),
  ),
} as const;
