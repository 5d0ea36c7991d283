import * as v from 'valibot';
import { PART_IDS, type PartId } from '../score/score';
import {
  type Channel,
  type Mix,
  OWN_SOUND_PARTS,
  type OwnSoundPart,
  RECORDED_PARTS,
  type RecordedPart,
} from './mix';
import { between, setting, whole } from './setting';

/** Longest delay of a loudspeaker that can be made up for, in milliseconds. */
export const MOST_LAG = 500;

const channel = v.object({
  gain: between(0, 1),
  muted: v.boolean(),
  solo: v.boolean(),
  pan: between(-1, 1),
});
const at = (gain: number, pan: number, muted = false): Channel => ({ gain, muted, solo: false, pan });

/** Faders at rest: a moderate master, the click silent, the parts spread a little around the harp. */
const USUAL_MIX: Mix = {
  channels: {
    drums: at(0.75, 0),
    bass: at(0.75, 0),
    chords: at(0.75, -0.25),
    second: at(0.75, 0.35),
    lead: at(0.75, 0.2),
    click: at(0.6, 0, true),
  },
  master: 0.7,
};

/** A mix kept before there was a part has it at rest. */
const channels = v.object(
  Object.fromEntries(
    PART_IDS.map((part) => [part, v.optional(channel, USUAL_MIX.channels[part])]),
  ) as unknown as Record<PartId, typeof channel>,
);

/** How the band sounds. */
export const SOUND_SETTINGS = {
  mix: setting<Mix>('mixer', USUAL_MIX, v.object({ channels, master: between(0, 1) })),
  /** The band's chords are tuned to agree with the harp's held chords. */
  bandFollowsHarp: setting('tuning of the band', false, v.boolean()),
  /** Milliseconds by which the loudspeaker is later than the browser knows: the page waits for it. */
  speakerLag: setting('delay of the loudspeaker', 0, whole(0, MOST_LAG)),
  /** Parts that play computed voices though recorded instruments are there. */
  computedVoices: setting<readonly RecordedPart[]>(
    'choice of computed voices',
    [],
    v.pipe(v.array(v.picklist(RECORDED_PARTS)), v.maxLength(RECORDED_PARTS.length)),
  ),
  /** Parts that play from a file of the player's own when one is loaded; the others have the built-in sounds. */
  ownSounds: setting<readonly OwnSoundPart[]>(
    'choice of your own sounds',
    [],
    v.pipe(v.array(v.picklist(OWN_SOUND_PARTS)), v.maxLength(OWN_SOUND_PARTS.length)),
  ),
} as const;
