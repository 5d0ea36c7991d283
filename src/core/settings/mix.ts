import { PART_IDS, type PartId } from '../score/score';

/** One fader. `gain` is linear, 0–1 (0.75 is the resting place); `pan` −1 left … 1 right. */
export interface Channel {
  readonly gain: number;
  readonly muted: boolean;
  readonly solo: boolean;
  readonly pan: number;
}

/** The mixer: one channel a part and the master volume (linear, 0–1). */
export interface Mix {
  readonly channels: Readonly<Record<PartId, Channel>>;
  readonly master: number;
}

/** Parts that can play from a file of the player's own: all but the click. */
export const OWN_SOUND_PARTS = ['drums', 'bass', 'chords', 'lead'] as const satisfies readonly PartId[];
export type OwnSoundPart = (typeof OWN_SOUND_PARTS)[number];

/** Parts that can play on the recorded instruments: those of the band. The harp is computed, for its bends. */
export const RECORDED_PARTS = ['drums', 'bass', 'chords'] as const satisfies readonly OwnSoundPart[];
export type RecordedPart = (typeof RECORDED_PARTS)[number];

/**
 * The parts that are heard with the mixer as it stands: not muted, and solo where any is. The click is never silenced by
 * a solo, since a player who listens to one part still needs the count.
 */
export const openParts = ({ channels }: Mix): readonly PartId[] => {
  const solo = PART_IDS.some((part) => channels[part].solo);
  return PART_IDS.filter(
    (part) => !channels[part].muted && (!solo || channels[part].solo || part === 'click'),
  );
};
