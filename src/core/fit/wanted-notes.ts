import type { Chart } from '../chart/chart';
import type { Harp } from '../harp/harp';
import {
  effortOf,
  isInReach,
  REGISTERS,
  type Register,
  registerOf,
  type TechniqueChoice,
} from '../harp/reach';
import type { ChordTone, Degree } from '../theory/chord';
import { guideTones } from '../theory/chords';
import { ENGLISH } from '../theory/note-names';
import { blueNotes } from '../theory/scales';
import { asPitchClass, type PitchClass } from '../theory/units';

/**
 * Advice counts wanted notes: each chord tone in each octave of the harp, worth the time its chord lasts. A harp
 * that reaches one with effort e earns worth · ease / (ease + e): all of it with a natural note, half with the
 * easiest draw bend, a fifth with an overblow, never nothing. So a harp that has the notes outright comes before one
 * that has a few more of them by bending. Every term only grows with reach and shrinks with effort, so a harp that reaches
 * more at lower effort can never come out below. The weights are ours (common practice, no source).
 */
const ADVICE_WEIGHTS = {
  /** Effort that halves a note's worth. */
  ease: 1,
  chordTone: 1,
  guideTone: 2,
  /** Share of the whole that the key's blue notes make, against chord tones at 1. */
  blueNotes: 0.2,
  register: { low: 1, middle: 1, high: 0.5 },
} as const;

/** A tone wanted in an octave. */
export interface WantedNote {
  /** Chord symbol as it is shown everywhere, with glyphs, or null for a blue note of the key. */
  readonly chord: string | null;
  readonly degree: Degree;
  readonly register: Register;
  readonly guide: boolean;
  readonly worth: number;
  /** Least effort, or null when out of reach. */
  readonly effort: number | null;
}

/** Shares of the wanted notes that are in reach, 0–1, weighted by time. */
export interface Reached {
  readonly chordTones: number;
  readonly guideTones: number;
  readonly blueNotes: number;
  /** Chord tones that need no bend or overbend. */
  readonly easy: number;
}

/** Least effort per pitch class and register; absent where out of reach. */
export type Efforts = ReadonlyMap<string, number>;

const noteId = (pitchClass: PitchClass, register: Register): string => `${pitchClass} ${register}`;

/** The least effort of every pitch class in every octave of a harp. */
export const effortsOf = (harp: Harp, technique: TechniqueChoice): Efforts => {
  const efforts = new Map<string, number>();
  for (const sound of harp.sounds) {
    if (!isInReach(sound, technique)) continue;
    const id = noteId(asPitchClass(Math.round(sound.pitch)), registerOf(sound.pitch, harp));
    const effort = effortOf(sound, harp);
    efforts.set(id, Math.min(effort, efforts.get(id) ?? effort));
  }
  return efforts;
};

/** A tone wanted in every octave. */
export interface WantedTone {
  readonly chord: string | null;
  readonly tone: ChordTone;
  readonly guide: boolean;
  readonly worth: number;
}

/** The chord tones of a chart, each different chord once with the time it lasts in all, and the key's blue notes. */
export const wantedTonesOf = (chart: Chart): readonly WantedTone[] => {
  const chords = new Map<string, WantedTone[]>();
  for (const { chord, length } of chart.bars.flatMap((bar) => bar.chords)) {
    const guides = guideTones(chord);
    const earlier = chords.get(chord.symbol);
    const share = length / (chart.length * chord.tones.length);
    const tones = chord.tones.map((tone, i): WantedTone => {
      const guide = guides.includes(tone);
      const weight = guide ? ADVICE_WEIGHTS.guideTone : ADVICE_WEIGHTS.chordTone;
      return { chord: ENGLISH.chord(chord), tone, guide, worth: (earlier?.[i]?.worth ?? 0) + share * weight };
    });
    chords.set(chord.symbol, tones);
  }
  const worth = ADVICE_WEIGHTS.blueNotes / 3;
  const blue = blueNotes(chart.tonic).map((tone): WantedTone => ({ chord: null, tone, guide: false, worth }));
  return [...[...chords.values()].flat(), ...blue];
};

/** The wanted tones octave by octave, each with the least effort it takes. */
export const wantedNotesOf = (wanted: readonly WantedTone[], efforts: Efforts): readonly WantedNote[] =>
  wanted.flatMap(({ chord, tone, guide, worth }) =>
    REGISTERS.map((register) => ({
      chord,
      degree: tone.degree,
      register,
      guide,
      worth: worth * ADVICE_WEIGHTS.register[register],
      effort: efforts.get(noteId(tone.pitchClass, register)) ?? null,
    })),
  );

const total = (notes: readonly WantedNote[]): number => notes.reduce((sum, { worth }) => sum + worth, 0);

const share = (notes: readonly WantedNote[], counts: (note: WantedNote) => boolean): number =>
  notes.length === 0 ? 1 : total(notes.filter(counts)) / total(notes);

const reached = ({ effort }: WantedNote): boolean => effort !== null;

/** The value of the wanted notes, 0–1: worth reached, discounted by effort, of all worth. */
export const scoreOf = (notes: readonly WantedNote[]): number => {
  const { ease } = ADVICE_WEIGHTS;
  const earned = notes.reduce(
    (sum, { worth, effort }) => sum + (effort === null ? 0 : (worth * ease) / (ease + effort)),
    0,
  );
  return notes.length === 0 ? 0 : earned / total(notes);
};

/** How much of what is wanted is in reach, 0–1: of chord tones, of guide tones and of blue notes. */
export const reachedOf = (notes: readonly WantedNote[]): Reached => {
  const chordTones = notes.filter(({ chord }) => chord !== null);
  return {
    chordTones: share(chordTones, reached),
    guideTones: share(
      chordTones.filter(({ guide }) => guide),
      reached,
    ),
    blueNotes: share(
      notes.filter(({ chord }) => chord === null),
      reached,
    ),
    easy: share(chordTones, ({ effort }) => effort === 0),
  };
};
