import type { Chord, Degree, NoteName } from '../theory/chord';
import { chordOf } from '../theory/chords';
import { semitonesOf } from '../theory/degrees';
import { readQuality } from '../theory/quality';
import { qualityName } from '../theory/quality-name';
import { plainName } from '../theory/spelling';
import { asPitchClass, type PitchClass } from '../theory/units';

/** What a chord asks of the player's hand at least: two notes leave open what they are. */
const FEWEST = 3;

const degreesOf = (steps: ReadonlySet<number>): readonly Degree[] => {
  const has = (step: number): boolean => steps.has(step);
  const third = has(4) || has(3);
  const seventh = has(10) || has(11) || (has(9) && has(3) && has(6) && !has(4) && !has(7));
  const fifth = has(7);
  /** Where the fifth is missing, what lies beside it stands for it, the flat one first. */
  const flatFifth = has(6) && !fifth;
  const sharpFifth = has(8) && !fifth && !flatFifth;
  const names: Readonly<Record<number, Degree>> = {
    0: 'R',
    1: 'b9',
    2: seventh || has(9) ? '9' : third ? '9' : '2',
    3: has(4) ? '#9' : 'b3',
    4: '3',
    5: third ? '11' : '4',
    6: flatFifth ? 'b5' : '#11',
    7: '5',
    8: sharpFifth ? '#5' : seventh ? 'b13' : 'b6',
    9: has(3) && has(6) && !fifth && !has(4) && !has(10) && !has(11) ? 'bb7' : seventh ? '13' : '6',
    10: 'b7',
    11: '7',
  };
  return [...steps].map((step) => names[step] ?? 'R').sort((a, b) => semitonesOf(a) - semitonesOf(b));
};

/** Qualities by how soon they come to mind (common practice, no source); any other is dearer than all of these. */
const USUAL = [
  ...[
    '',
    'm',
    '7',
    'm7',
    'maj7',
    '6',
    'm7b5',
    'dim7',
    'm6',
    'dim',
    'aug',
    'sus4',
    '7sus4',
    '9',
    'm9',
    'maj9',
  ],
  ...['6add9', '69', 'mMaj7', 'sus2', '7b9', '7#9', '13', 'add9', 'madd9', 'm11', '7#5', '7b5'],
];

/** What a reading costs: strange qualities, a bass that is not the root, a missing third or fifth. */
const costOf = (quality: string, isBass: boolean): number => {
  const at = USUAL.indexOf(quality);
  return (at < 0 ? USUAL.length + 4 * quality.length : at) + (isBass ? 0 : 12);
};

interface Reading {
  readonly root: PitchClass;
  readonly quality: string;
  readonly cost: number;
}

const readingOn = (root: PitchClass, held: ReadonlySet<number>, bass: PitchClass): Reading | null => {
  const steps = new Set([...held].map((pitchClass) => asPitchClass(pitchClass - root)));
  const quality = qualityName(degreesOf(steps));
  const said = readQuality(quality);
  if (said === null || said.length !== steps.size) return null;
  if (!said.every((degree) => steps.has(asPitchClass(semitonesOf(degree))))) return null;
  return { root, quality, cost: costOf(quality, root === bass) };
};

/**
 * The chord that held notes are, its lowest note as bass; null for fewer than three different notes, and where no name
 * says exactly these. Of several names the one that comes to mind first (C E G A is C6, A C E G Am7).
 * @param pitches MIDI numbers, in any order.
 * @param tonic the key's spelled tonic, which names black keys as roots.
 *
 * @example
 * nameChord([55, 59, 62, 65], 'G')?.symbol // 'G7'
 * nameChord([52, 60, 67], 'G')?.symbol // 'C/E'
 */
export const nameChord = (pitches: readonly number[], tonic: NoteName): Chord | null => {
  const held = new Set<PitchClass>(pitches.map((pitch) => asPitchClass(pitch)));
  if (held.size < FEWEST) return null;
  const bass = asPitchClass(Math.min(...pitches));
  const readings = [...held].flatMap((root) => readingOn(root, held, bass) ?? []);
  const best = readings.sort((a, b) => a.cost - b.cost)[0];
  if (best === undefined) return null;
  const root = plainName(best.root, tonic);
  return best.root === bass
    ? chordOf({ root, quality: best.quality })
    : chordOf({ root, quality: best.quality, bass: plainName(bass, tonic) });
};
