import { DEFAULT_MIX, DEFAULT_STYLE } from '../../core/settings/defaults';
import type { BandSound } from '../../core/song/band-sound';
import { EQUAL_TEMPERAMENT } from '../../core/theory/temperament';
import { asCents } from '../../core/theory/units';

/** Instruments, temperament and faders used before any were set. */
export const RESTING_SOUND: BandSound = {
  mix: DEFAULT_MIX,
  temperament: {
    reference: EQUAL_TEMPERAMENT.reference,
    offsets: Array.from({ length: 12 }, () => asCents(0)),
  },
  bass: DEFAULT_STYLE.bass,
  chords: DEFAULT_STYLE.chords,
  kit: DEFAULT_STYLE.kit,
};
