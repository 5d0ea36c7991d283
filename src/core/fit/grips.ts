import { type GripKind, type GripShape, gripShapes, WIDEST_GRIP } from '../harp/grip-shapes';
import type { Breath, Harp, Sound } from '../harp/harp';
import { isInReach, NATURAL_NOTES, type TechniqueChoice } from '../harp/reach';
import type { Chord, ChordTone, NoteName } from '../theory/chord';
import { guideTones } from '../theory/chords';
import { spellOver, spellPitch } from '../theory/spelling';
import { asPitchClass, type PitchClass } from '../theory/units';
import { nameGroup } from './group-name';

/** A hole of a grip whose note is not in the chord. */
export interface ForeignNote {
  readonly hole: number;
  readonly name: NoteName;
}

/** A group of natural notes on one breath. */
export interface Grip {
  readonly kind: GripKind;
  readonly breath: Breath;
  readonly holes: readonly number[];
  readonly sounds: readonly Sound[];
  /** `draw 2-3-4`, `blow 3+6`. */
  readonly label: string;
  /** What the notes make together: `G major, root lowest`, `octave G`. */
  readonly name: string;
  /** Chord symbol where the notes make a chord. */
  readonly symbol: string | null;
  /** The tones of the bar's chord it gives, without repeats, lowest first. */
  readonly tones: readonly ChordTone[];
  /** Empty when every note belongs to the chord. */
  readonly foreign: readonly ForeignNote[];
  /** Higher is better; see `GRIP_VALUE`. */
  readonly score: number;
}

/** What can be played at once over a chord. */
export interface Grips {
  /** Groups whose every note belongs to the chord, best first. */
  readonly fitting: readonly Grip[];
  /** Groups of three or more different notes with a single foreign one, best first. */
  readonly near: readonly Grip[];
}

export interface GripSpec {
  readonly chord: Chord;
  readonly harp: Harp;
  /** Natural notes switched off here take their grips with them. */
  readonly technique?: TechniqueChoice;
  /** The key's tonic, for naming what is not in the chord; the chord's root where absent. */
  readonly tonic?: NoteName;
}

/**
 * What makes a grip good (common practice, no source). What players reach for first are the chord under its own
 * name, best with the root lowest, and octaves, best of the root. Guide tones and root say more about the chord than
 * its other tones. Three or more notes without the root sound like another chord, so they come later; so do five
 * holes at once, which blur. Splits and a fourth hole or a wide stretch cost a little ease.
 */
const GRIP_VALUE = {
  guideTone: 1.5,
  root: 1.5,
  otherTone: 0.5,
  ownChord: 2,
  rootLowest: 1,
  octave: 4,
  rootless: -2,
  split: -0.5,
  fourHoles: -0.5,
  fiveHoles: -4,
  wideSplit: -0.5,
  foreign: -4,
} as const;

const labelOf = (breath: Breath, { kind, holes }: GripShape): string =>
  `${breath} ${holes.join(kind === 'split' ? '+' : '-')}`;

const easeOf = ({ kind, holes }: GripShape): number => {
  const width = (holes.at(-1) ?? 0) - (holes[0] ?? 0) + 1;
  if (kind === 'split') return GRIP_VALUE.split + (width === WIDEST_GRIP ? GRIP_VALUE.wideSplit : 0);
  if (width === WIDEST_GRIP) return GRIP_VALUE.fiveHoles;
  return width === WIDEST_GRIP - 1 ? GRIP_VALUE.fourHoles : 0;
};

const scoreOf = (
  shape: GripShape,
  sounds: readonly Sound[],
  grip: Pick<Grip, 'tones' | 'foreign'> & { readonly chordRoot: PitchClass | null },
  chord: Chord,
): number => {
  const guides = new Set(guideTones(chord).map(({ degree }) => degree));
  const [low] = sounds;
  const high = sounds.at(-1);
  const toneValue = ({ degree, pitchClass }: ChordTone): number => {
    if (guides.has(degree)) return GRIP_VALUE.guideTone;
    return pitchClass === chord.root ? GRIP_VALUE.root : GRIP_VALUE.otherTone;
  };
  const rootless = grip.tones.length > 2 && !grip.tones.some(({ pitchClass }) => pitchClass === chord.root);
  return (
    grip.tones.reduce((sum, tone) => sum + toneValue(tone), 0) +
    grip.foreign.length * GRIP_VALUE.foreign +
    (grip.chordRoot === chord.root ? GRIP_VALUE.ownChord : 0) +
    (low && asPitchClass(low.pitch) === chord.root ? GRIP_VALUE.rootLowest : 0) +
    (low && high && shape.kind === 'split' && high.pitch - low.pitch === 12 ? GRIP_VALUE.octave : 0) +
    (rootless ? GRIP_VALUE.rootless : 0) +
    easeOf(shape)
  );
};

const grip = (
  shape: GripShape,
  sounds: readonly Sound[],
  breath: Breath,
  { chord, tonic }: GripSpec,
): Grip => {
  const spell = spellOver(chord, tonic ?? chord.rootName);
  const rising = [...sounds].sort((a, b) => a.pitch - b.pitch);
  const given = rising.map((sound) => ({
    sound,
    tone: chord.tones.find(({ pitchClass }) => pitchClass === asPitchClass(sound.pitch)),
  }));
  const tones = [...new Set(given.flatMap(({ tone }) => tone ?? []))];
  const foreign = given.flatMap(({ sound, tone }) =>
    tone ? [] : [{ hole: sound.hole, name: spellPitch(sound.pitch, spell) }],
  );
  const { text, symbol, root } = nameGroup(
    sounds.map(({ pitch }) => pitch),
    spell,
  );
  return {
    ...shape,
    breath,
    sounds,
    label: labelOf(breath, shape),
    name: text,
    symbol,
    tones,
    foreign,
    score: scoreOf(shape, rising, { tones, foreign, chordRoot: root }, chord),
  };
};

const bestFirst = (a: Grip, b: Grip): number =>
  b.score - a.score || (a.holes[0] ?? 0) - (b.holes[0] ?? 0) || a.label.localeCompare(b.label);

/**
 * Every blow or draw group a mouth can make whose notes belong to a chord, and the groups that miss by one note.
 * Bends are left out: reeds of one breath do not bend together to order.
 */
export const gripsFor = (spec: GripSpec): Grips => {
  const { harp, technique = NATURAL_NOTES } = spec;
  const holes = harp.tuning.blow.length;
  const natural = harp.sounds.filter((sound) => sound.technique === 'natural' && isInReach(sound, technique));
  const all = (['blow', 'draw'] as const).flatMap((breath) => {
    const byHole = new Map(
      natural.filter((sound) => sound.breath === breath).map((sound) => [sound.hole, sound]),
    );
    return gripShapes(holes).flatMap((shape) => {
      const sounds = shape.holes.flatMap((hole) => byHole.get(hole) ?? []);
      return sounds.length === shape.holes.length ? [grip(shape, sounds, breath, spec)] : [];
    });
  });
  return {
    fitting: all.filter(({ foreign }) => foreign.length === 0).sort(bestFirst),
    near: all.filter(({ foreign, tones }) => foreign.length === 1 && tones.length >= 2).sort(bestFirst),
  };
};
