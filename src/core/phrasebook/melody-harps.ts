/** A melody in note names becomes tab: every harp that could play it, the easiest first. */

import type { MeterName } from '../chart/chart';
import { buildHarp } from '../harp/build-harp';
import type { Harp, Sound, Tuning } from '../harp/harp';
import { positionOf } from '../harp/positions';
import { effortOf, isInReach, type TechniqueChoice } from '../harp/reach';
import { readLength } from '../phrase/note-lengths';
import { type Phrase, type PhraseNote, phraseSound } from '../phrase/phrase';
import { asPitchClass, asTicks, type PitchClass } from '../theory/units';

/** A note of a melody: ticks and MIDI key; null for a rest. */
export interface MelodyNote {
  readonly length: number;
  readonly key: number | null;
}

/** A melody as it was read. */
export interface ReadMelody {
  readonly notes: readonly MelodyNote[];
  /** Words that are no notes. */
  readonly unread: readonly string[];
}

/** Most notes that are read: a short melody. */
const MOST_NOTES = 64;

const LETTERS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** `Bb4` as a MIDI key, with C4 = 60; an octave that is not written is the fourth. */
const readKey = (text: string): number | null => {
  const [, letter = '', sign = '', octave = ''] = /^([A-Ga-g])([#♯b♭]?)(\d?)$/.exec(text) ?? [];
  const step = LETTERS[letter.toUpperCase()];
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

/** How a melody lies on one harp: in which octave, how hard, and what of it is not to be had. */
export interface MelodyHarp {
  readonly harpKey: PitchClass;
  /** Counted from the melody's last note as its key note. */
  readonly position: number;
  /** Octaves the melody is moved by to lie on the harp. */
  readonly octaves: number;
  /** How hard it is: what bends and overbends ask for, and the ways of the mouth; 0 is nothing at all. */
  readonly difficulty: number;
  /** Keys of notes that cannot be played, each once; they are rests in the phrase. */
  readonly missing: readonly number[];
  readonly phrase: Phrase;
}

/** What harps are looked for with. */
export interface MelodyHarpSearch {
  readonly tuning: Tuning;
  readonly technique: TechniqueChoice;
  readonly meter: MeterName;
}

/** What a hole of distance and a turn of the breath weigh against the effort of bends (common practice, no source). */
const WAY = { hole: 0.15, turn: 0.1 } as const;

const OCTAVES = [0, 1, -1, 2, -2] as const;

const wayCost = (from: Sound | null, to: Sound): number =>
  from === null ? 0 : WAY.hole * Math.abs(to.hole - from.hole) + (to.breath === from.breath ? 0 : WAY.turn);

const fitOn = (
  notes: readonly MelodyNote[],
  octaves: number,
  harp: Harp,
  search: MelodyHarpSearch,
): MelodyHarp => {
  const sounds = harp.sounds.filter((sound) => isInReach(sound, search.technique));
  const placed: PhraseNote[] = [];
  const missing = new Set<number>();
  let difficulty = 0;
  let before: Sound | null = null;
  let at = 0;
  for (const { key, length } of notes) {
    const cost = (sound: Sound): number => effortOf(sound, harp) + wayCost(before, sound);
    const wanted = key === null ? [] : sounds.filter(({ pitch }) => pitch === key + 12 * octaves);
    const [best] = wanted.toSorted((a, b) => cost(a) - cost(b));
    if (best !== undefined) {
      difficulty += cost(best);
      placed.push({ at: asTicks(at), length: asTicks(length), sounds: [phraseSound(best)] });
      before = best;
    } else if (key !== null) missing.add(key);
    at += length;
  }
  const last = notes.findLast(({ key }) => key !== null)?.key ?? 0;
  return {
    harpKey: harp.key,
    position: positionOf(harp.key, asPitchClass(last)),
    octaves,
    difficulty: Math.round(100 * difficulty) / 100,
    missing: [...missing],
    phrase: { meter: search.meter, length: asTicks(at), notes: placed },
  };
};

/** The better of two for the player: fewer notes missing, then easier, then nearer to where it was written. */
const better = (a: MelodyHarp, b: MelodyHarp): number =>
  a.missing.length - b.missing.length ||
  a.difficulty - b.difficulty ||
  Math.abs(a.octaves) - Math.abs(b.octaves);

/** Harps of all keys for a melody, each in its best octave, the easiest first; none for a melody without notes. */
export const harpsForMelody = (
  notes: readonly MelodyNote[],
  search: MelodyHarpSearch,
): readonly MelodyHarp[] => {
  if (notes.every(({ key }) => key === null)) return [];
  return Array.from({ length: 12 }, (_, key) =>
    buildHarp({ tuning: search.tuning, key: asPitchClass(key), octave: 0 }),
  )
    .flatMap((harp) =>
      OCTAVES.map((octaves) => fitOn(notes, octaves, harp, search))
        .sort(better)
        .slice(0, 1),
    )
    .sort(better);
};
