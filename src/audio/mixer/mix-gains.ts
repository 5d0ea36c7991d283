import type { PartId } from '../../core/score/score';
import { DEFAULT_MIX } from '../../core/settings/defaults';
import { type Mix, openParts } from '../../core/settings/mix';

/** Where a part's fader rests. Programme loudness is set with all faders and the master at rest. */
const RESTING_GAIN = 0.75;
const RESTING_MASTER = DEFAULT_MIX.master;

/** The gain of each part against its resting place; 0 where it is not open. */
export const partGains = (mix: Mix): Readonly<Record<PartId, number>> => {
  const open = openParts(mix);
  const gain = (part: PartId): number => (open.includes(part) ? mix.channels[part].gain / RESTING_GAIN : 0);
  return {
    drums: gain('drums'),
    bass: gain('bass'),
    chords: gain('chords'),
    second: gain('second'),
    lead: gain('lead'),
    click: gain('click'),
  };
};

/** The gain of the master against its resting place. */
export const masterGain = (mix: Mix): number => mix.master / RESTING_MASTER;
