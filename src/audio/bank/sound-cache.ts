/** Computed sounds by name, the least lately used given up when they take too much memory. */
import { isStruck, nameOfKey, type SoundKey } from './sound-key';

/** A sound ready to play. */
export interface BankSound<Samples> {
  readonly key: SoundKey;
  readonly samples: Samples;
  readonly bytes: number;
  /** Seconds of the held part, or null for sounds that decay by themselves. */
  readonly loop: { readonly from: number; readonly to: number } | null;
  /** Seconds to fade after the note ends. */
  readonly release: number;
}

/** A sound found for a key, with the playback rate that brings it to the asked pitch. */
export interface FoundSound<Samples> {
  readonly sound: BankSound<Samples>;
  readonly rate: number;
  /** False when another sound stands in for the one asked for. */
  readonly exact: boolean;
}

/** Sounds by their keys, with the nearest as a stand-in for one that is not there yet. */
export interface SoundCache<Samples> {
  has(key: SoundKey): boolean;
  add(sound: BankSound<Samples>): void;
  /** The sound, or the nearest of the same voice: another stroke or layer, then a key up to a fifth away. */
  find(key: SoundKey): FoundSound<Samples> | null;
  /** Keeps these from being given up until the next call. */
  protect(keys: readonly SoundKey[]): void;
  bytes(): number;
}

/** A fifth: farther off, a changed playback rate sounds like another instrument. */
const FARTHEST = 7;

/** Another instrument of the same name at the right pitch is better than the same one from two semitones away. */
const OTHER_SOURCE = 15;

const distance = (asked: SoundKey, other: SoundKey): number => {
  if (asked.voice !== other.voice) return Number.POSITIVE_INFINITY;
  const semitones = Math.abs(12 * Math.log2(other.hz / asked.hz));
  if (semitones > FARTHEST || (isStruck(asked.voice) && asked.midi !== other.midi)) {
    return Number.POSITIVE_INFINITY;
  }
  return (
    semitones * 10 +
    Math.abs(asked.layer - other.layer) * 2 +
    (asked.stroke === other.stroke ? 0 : 1) +
    (asked.source === other.source ? 0 : OTHER_SOURCE)
  );
};

/** Creates an empty cache that holds up to `capacity` bytes besides what is protected, and tells what it gives up. */
export const createSoundCache = <Samples>(
  capacity: number,
  onGivenUp: (samples: Samples) => void = () => undefined,
): SoundCache<Samples> => {
  /** In order of last use, oldest first. */
  const sounds = new Map<string, BankSound<Samples>>();
  let total = 0;
  let kept: ReadonlySet<string> = new Set();

  const touch = (name: string, sound: BankSound<Samples>): void => {
    sounds.delete(name);
    sounds.set(name, sound);
  };

  const shrink = (): void => {
    for (const [name, sound] of sounds) {
      if (total <= capacity) return;
      if (kept.has(name)) continue;
      sounds.delete(name);
      total -= sound.bytes;
      onGivenUp(sound.samples);
    }
  };

  const nearest = (key: SoundKey): BankSound<Samples> | null => {
    let best: BankSound<Samples> | null = null;
    let bestDistance = Number.POSITIVE_INFINITY;
    for (const sound of sounds.values()) {
      const far = distance(key, sound.key);
      if (far < bestDistance) [best, bestDistance] = [sound, far];
    }
    return best;
  };

  return {
    has: (key) => sounds.has(nameOfKey(key)),
    add: (sound) => {
      const name = nameOfKey(sound.key);
      total += sound.bytes - (sounds.get(name)?.bytes ?? 0);
      touch(name, sound);
      shrink();
    },
    find: (key) => {
      const name = nameOfKey(key);
      const exact = sounds.get(name);
      if (exact) {
        touch(name, exact);
        return { sound: exact, rate: 1, exact: true };
      }
      const other = nearest(key);
      return other && { sound: other, rate: key.hz / other.key.hz, exact: false };
    },
    protect: (keys) => {
      kept = new Set(keys.map(nameOfKey));
    },
    bytes: () => total,
  };
};
