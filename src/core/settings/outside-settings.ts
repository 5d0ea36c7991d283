import * as v from 'valibot';
import { KEY_USES, type KeyUse } from '../midi/keyboard';
import { PEDAL_ACTIONS, type Pedal } from '../midi/pedals';
import { setting, whole } from './setting';

/** Keyboards and pedals, as the player has them. */
export interface MidiChoice {
  /** Whether they are listened to. */
  readonly on: boolean;
  readonly use: KeyUse;
  /** The lowest key of the hand that plays the harp, as a MIDI number. */
  readonly split: number;
  readonly pedals: readonly Pedal[];
}

/** What is plugged in. */
export const OUTSIDE_SETTINGS = {
  midi: setting<MidiChoice>(
    'choice of keyboard and pedals',
    { on: false, use: 'split', split: 60, pedals: [] },
    v.object({
      on: v.boolean(),
      use: v.picklist(KEY_USES),
      split: whole(0, 127),
      pedals: v.pipe(
        v.array(
          v.object({
            kind: v.picklist(['key', 'control', 'program']),
            channel: whole(1, 16),
            number: whole(0, 127),
            action: v.picklist(PEDAL_ACTIONS),
          }),
        ),
        v.maxLength(PEDAL_ACTIONS.length),
      ),
    }),
  ),
} as const;
