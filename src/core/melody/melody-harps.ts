import { LETTER_STEPS } from '../theory/letters';
/** A melody becomes tab: every harp that could play it, and the position that makes, the easiest first. */

import type { MeterName } from '../chart/chart';
import { buildHarp } from '../harp/build-harp';
import type { Sound, Technique, Tuning } from '../harp/harp';
import { positionOf } from '../harp/positions';
import type { TechniqueChoice } from '../harp/reach';
import { readLength } from '../phrase/note-lengths';
import type { Phrase } from '../phrase/phrase';
import { asPitchClass, asTicks, type PitchClass } from '../theory/units';
import { easiestWay, groundOf, type HarpGround, tabIds } from './easiest-way';
import { type MelodyNote, MOST_NOTES } from './melody';
import { phraseNoteOf } from './melody-tab';

/** A melody as it was typed. */
export interface ReadMelody {
  readonly notes: readonly MelodyNote[];
  /** Words that are no notes. */
  readonly unread: readonly string[];
}

/** `Bb4` as a MIDI key, with C4 = 60; an octave that is not written is the fourth. */
const readKey = (text: string): number | null => {
  const [, letter = '', sign = '', octave = ''] = /^([A-Ga-g])([#♯b♭]?)(\d?)$/.exec(text) ?? [];
  const step = LETTER_STEPS[letter.toUpperCase()];
  if (step === undefined) return null;
  const shift = sign === '' ? 0 : sign === '#' || sign === '♯' ? 1 : -1;
  return 12 * (Number(octave || '4') + 1) + step + shift;
};

/**
 * Reads a melody such as `G4:q A4:e Bb4 r:h`: lengths as in tab, the first a quarter. Never throws.
 *
 * @example
 * readMelody('C4 E4:h').notes // [{ length: 480, key: 60 }, { length: 960, key: 64 }]
 */
export const readMelody = (text: string): ReadMelody => {
  const notes: MelodyNote[] = [];
  const unread: string[] = [];
  let length = 480;
  for (const word of text
    .split(/[\s|]+/)
    .filter(Boolean)
    .slice(0, MOST_NOTES)) {
    const [name = '', value] = word.split(':');
    const key = readKey(name);
    const read = value === undefined ? null : readLength(value);
    if ((key === null && !/^r$/i.test(name)) || (value !== undefined && read === null)) unread.push(word);
    else {
      length = read ?? length;
      notes.push({ length, key });
    }
  }
  return { notes, unread };
};

/** A note of a melody that a harp does not give, and what there is in its place. Keys as the harp sounds them. */
export interface MissingNote {
  readonly key: number;
  /** True where the harp has it, by a technique that is not switched on. */
  readonly isOff: boolean;
  /** The same note in the nearest octave that can be played. */
  readonly octave: number | null;
  /** The nearest note that can be played, of two the lower. */
  readonly near: number | null;
}

/** What is played for notes that are missing. */
export const MENDS = ['rest', 'octave', 'near'] as const;
export type Mend = (typeof MENDS)[number];

/** How a melody lies on one harp: in which octave, how hard, and what of it is not to be had. */
export interface MelodyHarp {
  readonly harpKey: PitchClass;
  /** Counted from the melody's key note; where that is not known, from its last note. */
  readonly position: number;
  /** Octaves the melody is moved by to lie on the harp. */
  readonly octaves: number;
  /** How hard it is: what bends and overbends ask for, and the ways of the mouth; 0 is nothing at all. */
  readonly difficulty: number;
  /** How many of its notes are played how. */
  readonly techniques: Readonly<Record<Technique, number>>;
  /** Notes that cannot be played, each once. */
  readonly missing: readonly MissingNote[];
  /** True where the file's own tab gives every note here. */
  readonly asTabbed: boolean;
  readonly phrase: Phrase;
}

/** What harps are looked for with. */
export interface MelodyHarpSearch {
  readonly tuning: Tuning;
  readonly technique: TechniqueChoice;
  readonly meter: MeterName;
  readonly tonic?: PitchClass | null;
  /** What is played for missing notes: nothing where it is left out. */
  readonly mend?: Mend;
}

const OCTAVES = [0, 1, -1, 2, -2] as const;

const nearest = (key: number, sounds: readonly Sound[]): number | null =>
  sounds.toSorted((a, b) => Math.abs(a.pitch - key) - Math.abs(b.pitch - key) || a.pitch - b.pitch)[0]
    ?.pitch ?? null;

const missingNote = (key: number, { harp, sounds }: HarpGround): MissingNote => ({
  key,
  isOff: harp.sounds.some(({ pitch }) => pitch === key),
  octave: nearest(
    key,
    sounds.filter(({ pitch }) => asPitchClass(pitch - key) === 0),
  ),
  near: nearest(key, sounds),
});

/** A melody as it is looked for: its notes, and the sounds that tab of their own asks for. */
interface Wanted {
  readonly notes: readonly MelodyNote[];
  readonly ids: readonly (readonly string[] | null)[];
}

const instead = (missing: readonly MissingNote[], mend: Mend): ReadonlyMap<number, number | null> =>
  new Map(missing.map((each) => [each.key, mend === 'rest' ? null : each[mend]]));

const fitOn = (
  { notes, ids }: Wanted,
  octaves: number,
  ground: HarpGround,
  search: MelodyHarpSearch,
): MelodyHarp => {
  const { harp, byPitch } = ground;
  const keys = notes.map(({ key }) => (key === null ? null : key + 12 * octaves));
  const absent = keys.flatMap((key) => (key === null || byPitch.has(key) ? [] : [key]));
  const missing = [...new Set(absent)].map((key) => missingNote(key, ground));
  const mends = instead(missing, search.mend ?? 'rest');
  const wanted = keys.map((key, i) => {
    const other = key === null ? undefined : mends.get(key);
    return other === undefined ? { key, ids: ids[i] ?? null } : { key: other, ids: null };
  });
  const way = easiestWay(wanted, ground);
  const last = notes.findLast(({ key }) => key !== null)?.key ?? 0;
  let at = 0;
  const placed = notes.flatMap((note, i) => {
    const from = at;
    at += note.length;
    const sound = way.sounds[i] ?? null;
    return sound === null ? [] : [phraseNoteOf(note, sound, { at: from, harp })];
  });
  const techniques = { natural: 0, bend: 0, overbend: 0 };
  for (const sound of way.sounds) if (sound !== null) techniques[sound.technique] += 1;
  return {
    harpKey: harp.key,
    position: positionOf(harp.key, search.tonic ?? asPitchClass(last)),
    octaves,
    difficulty: Math.round(100 * way.cost) / 100,
    techniques,
    missing,
    asTabbed: way.asTabbed && missing.length === 0,
    phrase: { meter: search.meter, length: asTicks(at), notes: placed },
  };
};

/** The better of two for the player: the one the file was written for, then fewer notes missing, then easier, then nearer to where it was written. */
const better = (a: MelodyHarp, b: MelodyHarp): number =>
  Number(b.asTabbed) - Number(a.asTabbed) ||
  a.missing.length - b.missing.length ||
  a.difficulty - b.difficulty ||
  Math.abs(a.octaves) - Math.abs(b.octaves);

/**
 * Harps of all keys for a melody, each in its best octave, the easiest first; none for a melody without notes. Since
 * a harp's tab moves to any key, the twelve are also the twelve positions on any one harp.
 */
export const harpsForMelody = (
  notes: readonly MelodyNote[],
  search: MelodyHarpSearch,
): readonly MelodyHarp[] => {
  if (notes.every(({ key }) => key === null)) return [];
  const wanted: Wanted = { notes, ids: notes.map(tabIds) };
  return Array.from({ length: 12 }, (_, key) =>
    groundOf(buildHarp({ tuning: search.tuning, key: asPitchClass(key), octave: 0 }), search.technique),
  )
    .flatMap((ground) =>
      OCTAVES.map((octaves) => fitOn(wanted, octaves, ground, search))
        .sort(better)
        .slice(0, 1),
    )
    .sort(better);
};
