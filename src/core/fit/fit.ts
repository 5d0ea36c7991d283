import type { BarKey, Chart } from '../chart/chart';
import { keyAt } from '../chart/key-at';
import type { Harp, Sound } from '../harp/harp';
import { positionOf } from '../harp/positions';
import { effortOf, isInReach, type Register, registerOf, type TechniqueChoice } from '../harp/reach';
import { soundId } from '../harp/tab';
import type { Chord, ChordTone, Degree, NoteName } from '../theory/chord';
import { tonesWithBass } from '../theory/chords';
import { blueNotes, type ScaleId, scaleOf } from '../theory/scales';
import { asPitchClass, type PitchClass, type Ticks } from '../theory/units';
import { findGaps, type Gap } from './gaps';

/** What a sound is at this moment: a tone of the chord, a blue note of the key, or another tone of its scale. */
export type Role = 'chord' | 'blue' | 'scale';

/** A sound of the harp as it stands to a chord. */
export interface FitSound extends Sound {
  readonly id: string;
  readonly role: Role;
  /** Above the chord's root for chord tones; above the key's tonic for blue notes and scale tones. */
  readonly degree: Degree;
  /** Spelled without octave, as the chord or the key spells it. */
  readonly name: NoteName;
  /** Whether the player's technique has it. */
  readonly reach: boolean;
  /** Distance from the easy, 0 for natural notes. */
  readonly effort: number;
  readonly register: Register;
}

/** What fits one chord. */
export interface FitChord {
  readonly chord: Chord;
  readonly at: Ticks;
  readonly length: Ticks;
  /** Every reachable sound that gives a chord tone, or a slash bass the chord lacks, lowest first. */
  readonly sounds: readonly FitSound[];
  /** Sounds that would give a chord tone but are outside the technique (`reach` is false). */
  readonly beyond: readonly FitSound[];
  /** The second layer: reachable blue notes and scale tones of the key that are not in the chord. */
  readonly colours: readonly FitSound[];
  /** Chord tones no reachable sound gives in an octave. */
  readonly gaps: readonly Gap[];
}

/** Row i describes bar i of the chart. */
export interface FitBar {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly chords: readonly FitChord[];
}

/** What a harp has over a whole chart, bar by bar. */
export interface Fit {
  /** 1–12. */
  readonly position: number;
  readonly bars: readonly FitBar[];
}

export interface FitSpec {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  /** The scale of the second layer; usually mixolydian in a major, aeolian in a minor blues. */
  readonly scale?: ScaleId;
}

/** Scale of the key that stays under all changes of a blues (Wikipedia, "Blues scale"; Open Music Theory, "Blues Harmony"). */
const KEY_SCALES: Readonly<Record<Chart['mode'], ScaleId>> = { major: 'mixolydian', minor: 'aeolian' };

type Tones = ReadonlyMap<PitchClass, ChordTone>;

const byPitchClass = (tones: readonly ChordTone[]): Tones =>
  new Map(tones.map((tone) => [tone.pitchClass, tone]));

const pitchClassOfSound = (sound: Sound): PitchClass => asPitchClass(Math.round(sound.pitch));

/** A harp's sounds with everything that does not depend on the chord. */
interface Known {
  readonly sound: Omit<FitSound, 'role' | 'degree' | 'name'>;
  readonly pitchClass: PitchClass;
}

const knowSounds = (harp: Harp, technique: TechniqueChoice): readonly Known[] =>
  harp.sounds.map((sound) => ({
    pitchClass: pitchClassOfSound(sound),
    sound: {
      ...sound,
      id: soundId(sound),
      reach: isInReach(sound, technique),
      effort: effortOf(sound, harp),
      register: registerOf(sound.pitch, harp),
    },
  }));

const select = (known: readonly Known[], role: Role, tones: Tones): readonly FitSound[] =>
  known.flatMap(({ pitchClass, sound }) => {
    const tone = tones.get(pitchClass);
    return tone === undefined ? [] : [{ ...sound, role, degree: tone.degree, name: tone.name }];
  });

interface KeyLayer {
  readonly scale: Tones;
  readonly blue: Tones;
}

const keyLayer = ({ tonic, mode }: BarKey, scale: ScaleId | undefined): KeyLayer => ({
  scale: byPitchClass(scaleOf(scale ?? KEY_SCALES[mode], tonic).tones),
  blue: byPitchClass(blueNotes(tonic)),
});

const fitChord = (
  chord: Chord,
  known: readonly Known[],
  layer: KeyLayer,
): Omit<FitChord, 'at' | 'length'> => {
  const wanted = tonesWithBass(chord);
  const tones = byPitchClass(wanted);
  const all = select(known, 'chord', tones);
  const others = known.filter(({ sound, pitchClass }) => sound.reach && !tones.has(pitchClass));
  const blue = select(others, 'blue', layer.blue);
  const scale = select(
    others.filter(({ pitchClass }) => !layer.blue.has(pitchClass)),
    'scale',
    layer.scale,
  );
  const sounds = all.filter(({ reach }) => reach);
  const beyond = all.filter(({ reach }) => !reach);
  return {
    chord,
    sounds,
    beyond,
    colours: [...blue, ...scale].sort((a, b) => a.pitch - b.pitch),
    gaps: findGaps({ chord: { ...chord, tones: wanted }, sounds, beyond }),
  };
};

/**
 * What every sound of a harp means over every chord of a chart: chord tones in reach, those beyond the technique,
 * the blue notes and scale of the key in force, and the chord tones missing per octave. Each different chord is worked out once.
 *
 * @example
 * const chart = buildChart({ form: 'standard', key: 7, meter: '4/4' });
 * const harp = buildHarp({ tuning: RICHTER, key: 0, octave: 0 });
 * const fit = fitChart({ chart, harp, technique: NATURAL_NOTES });
 * fit.position // 2
 * fit.bars[0].chords[0].sounds.slice(0, 3).map((sound) => tab(sound, 'signs')) // ['-1', '-2', '3']
 */
export const fitChart = (spec: FitSpec): Fit => {
  const { chart, harp, technique } = spec;
  const known = knowSounds(harp, technique);
  const layers = new Map<string, KeyLayer>();
  const layerIn = (key: BarKey): KeyLayer => {
    const id = `${key.tonic} ${key.mode}`;
    const layer = layers.get(id) ?? keyLayer(key, spec.scale);
    layers.set(id, layer);
    return layer;
  };
  const worked = new Map<string, Omit<FitChord, 'at' | 'length'>>();
  const fitted = (chord: Chord, key: BarKey): Omit<FitChord, 'at' | 'length'> => {
    const id = `${chord.symbol} ${chord.roman} ${key.tonic} ${key.mode}`;
    const found = worked.get(id) ?? fitChord(chord, known, layerIn(key));
    worked.set(id, found);
    return found;
  };
  return {
    position: positionOf(harp.key, chart.key),
    bars: chart.bars.map(({ at, length, chords }, bar) => ({
      at,
      length,
      chords: chords.map((span) => ({
        ...fitted(span.chord, keyAt(chart, bar)),
        at: span.at,
        length: span.length,
      })),
    })),
  };
};
