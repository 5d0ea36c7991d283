import type { Sound } from '../harp/harp';
import { hzOf } from '../theory/temperament';
import { asCents, asSeconds, type Midi, type Seconds } from '../theory/units';
import type { HeardNote } from './heard-note';

/** A key that was played on an instrument. */
export interface PlayedKey {
  /** Differs from every other note's of the stream. */
  readonly id: number;
  readonly pitch: Midi;
  /** Sounds of the harp in hand at that pitch, the easiest first; none where it has none. */
  readonly sounds: readonly Sound[];
  readonly from: Seconds;
  /** Null while it is held. */
  readonly to: Seconds | null;
}

/** dB re full scale: what a key tells nothing of. */
const LEVEL = -20;

/** A played key as the ear would have heard it: in tune, steady, with an attack of its own. */
export const instrumentNote = ({ sounds, pitch, ...when }: PlayedKey): HeardNote => {
  const [sound = null, ...alternatives] = sounds;
  return {
    ...when,
    ...{
      sound,
      together: [],
      alternatives,
      pitch,
      level: LEVEL,
      steady: true,
      joined: 'attack',
      vibrato: null,
    },
    frequency: hzOf(pitch),
    movement: { start: asCents(0), settling: asSeconds(0), end: asCents(0) },
    cents: asCents(0),
    offset: sound === null ? null : asCents(0),
  };
};
