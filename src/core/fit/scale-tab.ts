import type { Harp, Sound } from '../harp/harp';
import { effortOf, isInReach, type TechniqueChoice } from '../harp/reach';
import type { ChordTone } from '../theory/chord';
import { semitonesOf } from '../theory/degrees';
import type { Scale } from '../theory/scales';
import { asMidi, asPitchClass, type Midi } from '../theory/units';

/** One note of a scale on a harp. */
export interface ScaleStep {
  readonly tone: ChordTone;
  readonly pitch: Midi;
  /** The sound to play it with, or null where the harp or the technique has none. */
  readonly sound: Sound | null;
}

/** A scale over one octave of a harp, tonic to tonic. */
export interface ScaleRun {
  readonly up: readonly ScaleStep[];
  readonly down: readonly ScaleStep[];
  /** True when every note of the run is in reach. */
  readonly complete: boolean;
}

export interface ScaleTabSpec {
  readonly scale: Scale;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
}

/**
 * Cost of a note after another, on the scale of effort: a turn of the breath breaks the flow, a move of holes costs
 * less (common practice, no source). It only decides between sounds of one pitch.
 */
const BREATH_TURN = 1;
const PER_HOLE = 0.25;

const stepCost = (from: Sound | null, to: Sound): number =>
  from === null
    ? 0
    : (from.breath === to.breath ? 0 : BREATH_TURN) + PER_HOLE * Math.abs(from.hole - to.hole);

interface Path {
  readonly sounds: readonly (Sound | null)[];
  readonly cost: number;
}

const lastOf = ({ sounds }: Path): Sound | null => sounds.at(-1) ?? null;

const cheapest = (paths: readonly Path[]): Path =>
  paths.reduce((best, path) => (path.cost < best.cost ? path : best));

/** The smoothest choice of sounds for a row of pitches: shortest path, one layer of sounds per pitch. */
const smoothest = (
  pitches: readonly Midi[],
  harp: Harp,
  sounds: readonly Sound[],
): readonly (Sound | null)[] => {
  let paths: readonly Path[] = [{ sounds: [], cost: 0 }];
  for (const pitch of pitches) {
    const here = sounds.filter((sound) => sound.pitch === pitch);
    const before = paths;
    paths =
      here.length === 0
        ? before.map((path) => ({ ...path, sounds: [...path.sounds, null] }))
        : here.map((sound) => {
            const best = cheapest(
              before.map((path) => ({ ...path, cost: path.cost + stepCost(lastOf(path), sound) })),
            );
            return { sounds: [...best.sounds, sound], cost: best.cost + effortOf(sound, harp) };
          });
  }
  return cheapest(paths).sounds;
};

/**
 * A scale as it lies on a harp: every octave from tonic to tonic the harp's range holds, lowest first, up and down.
 * Of two sounds for one note the easier and smoother one is taken; notes out of reach stay in their place, empty.
 */
export const scaleTab = ({ scale, harp, technique }: ScaleTabSpec): readonly ScaleRun[] => {
  const sounds = harp.sounds.filter((sound) => isInReach(sound, technique));
  const pitches = harp.sounds.map(({ pitch }) => pitch);
  const low = Math.min(...pitches);
  const high = Math.max(...pitches);
  const [tonic] = scale.tones;
  if (tonic === undefined) return [];
  const first = low + asPitchClass(tonic.pitchClass - asPitchClass(low));
  const octaves = Math.max(0, Math.floor((high - first) / 12));
  return Array.from({ length: octaves }, (_, octave) => {
    const start = first + 12 * octave;
    const steps = [...scale.tones, tonic].map((tone, i) => ({
      tone,
      pitch: asMidi(start + (i === scale.tones.length ? 12 : semitonesOf(tone.degree))),
    }));
    const chosen = smoothest(
      steps.map(({ pitch }) => pitch),
      harp,
      sounds,
    );
    const up = steps.map((step, i): ScaleStep => ({ ...step, sound: chosen[i] ?? null }));
    return { up, down: [...up].reverse(), complete: up.every(({ sound }) => sound !== null) };
  });
};
