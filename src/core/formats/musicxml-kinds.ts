import type { Chord, Degree } from '../theory/chord';
import { semitonesOf } from '../theory/degrees';

/**
 * Chord kinds of MusicXML 4.0 (`kind-value` of its schema) with the degrees each stands for, the plainest first:
 * of two kinds that say a chord equally shortly, the first is taken. The eleventh of a thirteenth chord is usually
 * not played, so it is not missed (common practice, no source).
 */
const KIND_DEGREES: readonly (readonly [kind: string, degrees: string])[] = [
  ['major', 'R 3 5'],
  ['minor', 'R b3 5'],
  ['dominant', 'R 3 5 b7'],
  ['minor-seventh', 'R b3 5 b7'],
  ['major-seventh', 'R 3 5 7'],
  ['diminished', 'R b3 b5'],
  ['augmented', 'R 3 #5'],
  ['diminished-seventh', 'R b3 b5 bb7'],
  ['half-diminished', 'R b3 b5 b7'],
  ['augmented-seventh', 'R 3 #5 b7'],
  ['major-minor', 'R b3 5 7'],
  ['major-sixth', 'R 3 5 6'],
  ['minor-sixth', 'R b3 5 6'],
  ['suspended-fourth', 'R 4 5'],
  ['suspended-second', 'R 2 5'],
  ['power', 'R 5'],
  ['dominant-ninth', 'R 3 5 b7 9'],
  ['major-ninth', 'R 3 5 7 9'],
  ['minor-ninth', 'R b3 5 b7 9'],
  ['dominant-11th', 'R 3 5 b7 9 11'],
  ['major-11th', 'R 3 5 7 9 11'],
  ['minor-11th', 'R b3 5 b7 9 11'],
  ['dominant-13th', 'R 3 5 b7 9 13'],
  ['major-13th', 'R 3 5 7 9 13'],
  ['minor-13th', 'R b3 5 b7 9 13'],
];

/** A degree that differs from the kind: `alter` is in semitones, counted as the schema's `degree-alter` asks. */
export interface DegreeChange {
  readonly value: number;
  readonly alter: number;
  readonly type: 'add' | 'alter' | 'subtract';
}

/** A chord as MusicXML names it: one of its kinds and what is added, altered or left out. */
export interface ChordKind {
  readonly kind: string;
  readonly changes: readonly DegreeChange[];
}

interface Tone {
  readonly value: number;
  readonly semitones: number;
}

const toneOf = (degree: Degree): Tone => ({
  value: degree === 'R' ? 1 : Number(degree.replace(/\D/g, '')),
  semitones: semitonesOf(degree),
});

/** Semitones of each step of a dominant chord's scale: added degrees are counted from it. */
const DOMINANT_STEPS: readonly number[] = [0, 2, 4, 5, 7, 9, 10];
const dominantStep = (value: number): number =>
  (DOMINANT_STEPS[(value - 1) % 7] ?? 0) + 12 * Math.floor((value - 1) / 7);

const same = (a: Tone) => (b: Tone) => a.value === b.value && a.semitones === b.semitones;

/** How a chord differs from a kind: same number with another height is altered, the rest added or taken away. */
const changesFrom = (kind: readonly Tone[], chord: readonly Tone[]): readonly DegreeChange[] => {
  const missing = kind.filter((tone) => !chord.some(same(tone)));
  const extra = chord.filter((tone) => !kind.some(same(tone)));
  const changes: DegreeChange[] = [];
  const altered = new Set<Tone>();
  for (const tone of extra) {
    const from = missing.find((other) => other.value === tone.value && !altered.has(other));
    if (from) altered.add(from);
    changes.push(
      from
        ? { value: tone.value, alter: tone.semitones - from.semitones, type: 'alter' }
        : { value: tone.value, alter: tone.semitones - dominantStep(tone.value), type: 'add' },
    );
  }
  const gone = missing.filter((tone) => !altered.has(tone));
  return [...changes, ...gone.map(({ value }): DegreeChange => ({ value, alter: 0, type: 'subtract' }))];
};

const KINDS = KIND_DEGREES.map(([kind, degrees]) => ({ kind, tones: degrees.split(' ').map(toneOf) }));

/** The kind that names a chord with the fewest changes, and those changes. */
export const chordKind = (chord: Chord): ChordKind => {
  const tones = chord.tones.map(({ degree }) => toneOf(degree));
  const readings = KINDS.map(({ kind, tones: own }) => ({ kind, changes: changesFrom(own, tones) }));
  return readings.reduce((best, reading) => (reading.changes.length < best.changes.length ? reading : best));
};
