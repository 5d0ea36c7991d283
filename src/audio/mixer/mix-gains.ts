import { PART_IDS, type PartId } from '../../core/score/score';
import { DEFAULT_MIX } from '../../core/settings/defaults';
import type { Mix } from '../../core/settings/mix';

/** Where a part's fader rests. Programme loudness is set with all faders and the master at rest. */
export const RESTING_GAIN = 0.75;
const RESTING_MASTER = DEFAULT_MIX.master;

/**
 * The gain of each part against its resting place: 0 when muted, or when another part is solo.
 * The click is never silenced by a solo, since a player who listens to one part still needs the count.
 */
export const partGains = (mix: Mix): Readonly<Record<PartId, number>> => {
  const solo = PART_IDS.some((part) => mix.channels[part].solo);
  const gain = (part: PartId): number => {
    const channel = mix.channels[part];
    if (channel.muted || (solo && !channel.solo && part !== 'click')) return 0;
    return channel.gain / RESTING_GAIN;
  };
  return {
    drums: gain('drums'),
    bass: gain('bass'),
    chords: gain('chords'),
    lead: gain('lead'),
    click: gain('click'),
  };
};

/** The gain of the master against its resting place. */
export const masterGain = (mix: Mix): number => mix.master / RESTING_MASTER;
