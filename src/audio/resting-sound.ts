import { EQUAL_TEMPERAMENT } from '../core/theory/temperament';
import { asCents } from '../core/theory/units';
import type { BandSound } from './band';
import { RESTING_GAIN } from './mix-gains';

const channel = { gain: RESTING_GAIN, muted: false, solo: false, pan: 0 };

/** Instruments, tuning and faders used before any were set. */
export const RESTING_SOUND: BandSound = {
  mix: {
    channels: { drums: channel, bass: channel, chords: channel, lead: channel, click: channel },
    master: RESTING_GAIN,
  },
  tuning: { reference: EQUAL_TEMPERAMENT.reference, offsets: Array.from({ length: 12 }, () => asCents(0)) },
  bass: 'upright-bass',
  chords: 'piano',
  kit: 'sticks',
};
