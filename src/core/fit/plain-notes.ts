import type { Harp } from '../harp/harp';
import { POSITIONS, songKey } from '../harp/positions';
import { NATURAL_NOTES } from '../harp/reach';
import { chordOf } from '../theory/chords';
import { keyName, PITCH_CLASSES, spellInKey } from '../theory/pitch';
import { SCALE_IDS, type ScaleId, scaleOf } from '../theory/scales';
import { asPitchClass, type PitchClass } from '../theory/units';
import { type Grip, gripsFor } from './grips';
import { scaleTab } from './scale-tab';

/** A scale the natural notes hold, and how many of its octaves, tonic to tonic, are unbroken. */
export interface PlainScale {
  readonly id: ScaleId;
  readonly wholeOctaves: number;
}

/** What a harp gives in one key without a bend. */
export interface PlainPosition {
  /** 1–12. */
  readonly position: number;
  readonly key: PitchClass;
  /** True when the key note itself is a natural note. */
  readonly tonic: boolean;
  /** Scales whose every note is natural somewhere on the harp. */
  readonly scales: readonly PlainScale[];
}

/** What a harp gives without a bend. */
export interface PlainNotes {
  readonly positions: readonly PlainPosition[];
  /** Chords of three or more neighbouring holes, each with the group of fewest holes that makes it, low first. */
  readonly chords: readonly Grip[];
}

const plainChords = (harp: Harp): readonly Grip[] => {
  const tonic = keyName(harp.key, 'major');
  const everything = {
    ...chordOf({ root: tonic, quality: '' }),
    tones: PITCH_CLASSES.map((pitchClass) => ({
      degree: 'R',
      pitchClass,
      name: spellInKey(pitchClass, tonic),
    })),
  };
  const best = new Map<string, Grip>();
  for (const grip of gripsFor({ chord: everything, harp }).fitting) {
    if (grip.symbol === null) continue;
    const known = best.get(grip.symbol);
    if (known === undefined || grip.holes.length < known.holes.length) best.set(grip.symbol, grip);
  }
  return [...best.values()].sort(
    (a, b) => (a.holes[0] ?? 0) - (b.holes[0] ?? 0) || a.label.localeCompare(b.label),
  );
};

/** What can be played on a harp with natural notes alone: per position the scales, and the chords under the mouth. */
export const plainNotes = (harp: Harp): PlainNotes => {
  const natural = new Set(harp.reeds.map(({ pitch }) => asPitchClass(pitch)));
  const positions = POSITIONS.map(({ number }): PlainPosition => {
    const key = songKey(harp.key, number);
    const scales = SCALE_IDS.flatMap((id): readonly PlainScale[] => {
      const scale = scaleOf(id, keyName(key, 'major'));
      if (!scale.tones.every(({ pitchClass }) => natural.has(pitchClass))) return [];
      const runs = scaleTab({ scale, harp, technique: NATURAL_NOTES });
      return [{ id, wholeOctaves: runs.filter(({ complete }) => complete).length }];
    });
    return { position: number, key, tonic: natural.has(key), scales };
  });
  return { positions, chords: plainChords(harp) };
};
