import type { BarKey, Chart } from '../chart/chart';
import { keyAt } from '../chart/key-at';
import type { Harp, Sound } from '../harp/harp';
import { positionOf } from '../harp/positions';
import { effortOf, isInReach, type Register, registerOf, type TechniqueChoice } from '../harp/reach';
import { soundId } from '../harp/tab';
import type { Chord, ChordTone, Degree, NoteName } from '../theory/chord';
import { tonesWithBass } from '../theory/chords';
import { type Scale, type ScaleId, scaleOf } from '../theory/scales';
import type { Ticks } from '../theory/units';
import { findGaps, type Gap } from './gaps';
import { type MarkedSound, type Marking, markSounds } from './mark-sounds';

/** What a sound is at this moment: a tone of the chord, a blue note of the key, or another tone of its scale. */
export type Role = 'chord' | 'blue' | 'scale';

/** A sound of the harp as it stands to a chord: what its mark (`markSounds`) comes to, with what it takes to play it. */
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

/** What a sound is whatever the chord. */
type KnownSound = Omit<FitSound, 'role' | 'degree' | 'name'>;

const knowSounds = (harp: Harp, technique: TechniqueChoice): ReadonlyMap<Sound, KnownSound> =>
  new Map(
    harp.sounds.map((sound) => [
      sound,
      {
        ...sound,
        id: soundId(sound),
        reach: isInReach(sound, technique),
        effort: effortOf(sound, harp),
        register: registerOf(sound.pitch, harp),
      },
    ]),
  );

/** What a mark comes to: a tone of the chord, else a blue note, else a tone of the scale. */
const meaningOf = ({ chordTone, blueTone, scaleTone }: MarkedSound): readonly [Role, ChordTone] | null => {
  if (chordTone !== null) return ['chord', chordTone];
  if (blueTone !== null) return ['blue', blueTone];
  return scaleTone === null ? null : ['scale', scaleTone];
};

const fitChord = (
  marking: Marking & { readonly chord: Chord },
  known: ReadonlyMap<Sound, KnownSound>,
): Omit<FitChord, 'at' | 'length'> => {
  const { chord } = marking;
  const meant = markSounds(marking).flatMap((mark): readonly FitSound[] => {
    const meaning = meaningOf(mark);
    const sound = known.get(mark.sound);
    if (meaning === null || sound === undefined) return [];
    const [role, { degree, name }] = meaning;
    return [{ ...sound, role, degree, name }];
  });
  const sounds = meant.filter(({ role, reach }) => role === 'chord' && reach);
  const beyond = meant.filter(({ role, reach }) => role === 'chord' && !reach);
  return {
    chord,
    sounds,
    beyond,
    colours: meant
      .filter(({ role, reach }) => role !== 'chord' && reach)
      .toSorted((a, b) => a.pitch - b.pitch),
    gaps: findGaps({ chord: { ...chord, tones: tonesWithBass(chord) }, sounds, beyond }),
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
  const scales = new Map<string, Scale>();
  const scaleIn = ({ tonic, mode }: BarKey): Scale => {
    const id = `${tonic} ${mode}`;
    const scale = scales.get(id) ?? scaleOf(spec.scale ?? KEY_SCALES[mode], tonic);
    scales.set(id, scale);
    return scale;
  };
  const worked = new Map<string, Omit<FitChord, 'at' | 'length'>>();
  const fitted = (chord: Chord, key: BarKey): Omit<FitChord, 'at' | 'length'> => {
    const id = `${chord.symbol} ${chord.roman} ${key.tonic} ${key.mode}`;
    const found =
      worked.get(id) ?? fitChord({ harp, technique, chord, tonic: key.tonic, scale: scaleIn(key) }, known);
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
