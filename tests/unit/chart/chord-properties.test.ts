import { Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { romanChord } from '../../../src/core/chart/roman';
import { TONICS } from '../../../src/core/chart/tonics';
import { readChord } from '../../../src/core/chart-text/read-chord';
import type { Chord } from '../../../src/core/theory/chord';
import { bassNameOf, readSymbol } from '../../../src/core/theory/chords';
import { ENGLISH } from '../../../src/core/theory/note-names';
import { DICTIONARY } from '../../helpers/chord-dictionary';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const ROOTS = [
  'C',
  'C#',
  'Db',
  'D',
  'D#',
  'Eb',
  'E',
  'F',
  'F#',
  'Gb',
  'G',
  'G#',
  'Ab',
  'A',
  'A#',
  'Bb',
  'B',
  'Cb',
];
const BASSES = ['', ...ROOTS.map((name) => `/${name}`), '/E#', '/Fb', '/B#', '/Bbb', '/F##'];
const KEYS = [...new Set([...TONICS.major, ...TONICS.minor])];

/** Qualities as players write them, beside the dictionary's names; a sign first stands in brackets. */
const TYPED = [
  ...[
    '(b5)',
    '(#5)',
    '(b9)',
    '(#11)',
    '(♭9, ♯11)',
    'm(b6)',
    '△7',
    'Δ',
    'ø',
    'ø7',
    '°7',
    '°',
    'o7',
    '-7',
    '−7',
    '+',
  ],
  ...[
    '+7',
    '7+',
    '7(b9)',
    '7(♭9,13)',
    '7-9',
    '7+9',
    '7b5b9',
    '7b9b5',
    '7#9b5',
    '7b5b13',
    '9b13b5',
    '6b5',
    'maj7#11',
  ],
  ...[
    'm(maj7)',
    'mΔ7',
    '-△',
    'mi7',
    'MI7',
    'ma7',
    'MA9',
    '7alt',
    'alt',
    '6/9',
    'm6/9',
    '4',
    '2',
    '7sus',
    '13sus',
  ],
  ...[
    '7(add13)',
    'm7#5',
    'm7-5',
    '7omit5',
    '(no3)',
    '7sus4(b9)',
    'dim9',
    'dim(maj7)',
    'm11b5',
    'maj7(#5)',
    '13(#11)',
  ],
];

const safe = (quality: string): string => (/^[#b]/.test(quality) ? `(${quality})` : quality);
const QUALITIES = [...DICTIONARY.map(safe), ...TYPED];

interface Case {
  readonly quality: string;
  readonly root: string;
  readonly bass: string;
  readonly key: string;
}

const COUNT = QUALITIES.length * ROOTS.length * BASSES.length * KEYS.length;

/** The i-th of all combinations. */
const caseAt = (i: number): Case => {
  const pick = (list: readonly string[], index: number): string => list[index % list.length] ?? '';
  const bass = Math.floor(i / QUALITIES.length);
  const root = Math.floor(bass / BASSES.length);
  return {
    quality: pick(QUALITIES, i),
    bass: pick(BASSES, bass),
    root: pick(ROOTS, root),
    key: pick(KEYS, Math.floor(root / ROOTS.length)),
  };
};

/** All combinations when the runs allow, otherwise as many spread evenly over them: the step shares no factor with the count. */
const walk = (check: (each: Case) => void): number => {
  const runs = Math.min(COUNT, soakRuns());
  let step = Math.max(1, Math.floor(COUNT / runs));
  const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
  while (gcd(step, COUNT) !== 1) step += 1;
  for (let i = 0; i < runs; i += 1) check(caseAt((i * step) % COUNT));
  return runs;
};

const chroma = (name: string): number => Note.chroma(name) ?? Number.NaN;

/** Semitones above the root that the quality has on C. */
const shapes = new Map(
  QUALITIES.map((quality) => {
    const tones = readSymbol(`C${quality}`)?.tones ?? [];
    return [quality, tones.map(({ pitchClass }) => Number(pitchClass)).join(' ')];
  }),
);

const LETTERS = 'CDEFGAB';

/** Every tone on the letter its number asks for, unless that takes three accidentals. */
const isSpelledByLetter = ({ rootName, tones }: Chord): boolean =>
  tones.every(({ degree, name }) => {
    const number = degree === 'R' ? 1 : Number(degree.replace(/\D/g, ''));
    const letter = LETTERS[(LETTERS.indexOf(rootName.charAt(0)) + number - 1) % 7];
    const steps = chroma(name) - chroma(letter ?? 'C');
    return name.startsWith(letter ?? '') || Math.abs(((steps + 18) % 12) - 6) >= 3 || /##|bb/.test(rootName);
  });

/** What is wrong with the reading of a chord; empty when nothing is. */
const faults = ({ quality, root, bass, key }: Case): readonly string[] => {
  const read = readChord(`${root}${quality}${bass}`, key);
  if (read === null) return ['not read'];
  const { chord, rest } = read;
  const above = chord.tones.map(({ pitchClass }) => (pitchClass - chroma(root) + 12) % 12).join(' ');
  const again = readChord(chord.symbol, key)?.chord;
  const printed = readChord(ENGLISH.chord(chord), key)?.chord;
  const numeral = romanChord(chord.roman, key);
  const wanted = chroma(bass === '' ? root : bass.slice(1));
  const isTone = chord.tones.some(({ pitchClass }) => pitchClass === chord.bass);
  // G flat above A sharp is no degree of two accidentals or fewer.
  const kept =
    `${root}${bass}` !== 'A#/Gb' &&
    !/##|bb|E#|Fb|B#|Cb/.test(bass) &&
    chord.rootName === root &&
    !isTone &&
    bass !== '';
  return [
    rest === '' ? '' : `rest ${rest}`,
    above === shapes.get(quality) ? '' : `tones ${above}`,
    chord.root === chroma(root) && chord.bass === wanted ? '' : 'root or bass',
    JSON.stringify(again) === JSON.stringify(chord) ? '' : `printed ${chord.symbol} reads ${again?.symbol}`,
    JSON.stringify(printed) === JSON.stringify(chord) ? '' : `shown ${ENGLISH.chord(chord)}`,
    JSON.stringify(numeral) === JSON.stringify(chord) ? '' : `numeral ${chord.roman} is ${numeral.symbol}`,
    isSpelledByLetter(chord) ? '' : `spelled ${chord.tones.map(({ name }) => name).join(' ')}`,
    chord.tones.every(({ name, pitchClass }) => chroma(name) === pitchClass) ? '' : 'names',
    /##|bb/.test(chord.rootName + bassNameOf(chord)) ? 'double accidental' : '',
    !kept || bassNameOf(chord) === bass.slice(1) ? '' : `bass ${bassNameOf(chord)}`,
  ].filter((each) => each !== '');
};

describe('every chord over every bass in every key', () => {
  it(
    'is read to the tones of its quality, spelled by letter, and reads back as printed',
    () => {
      const wrong: string[] = [];
      const runs = walk((each) => {
        const found = faults(each);
        if (found.length > 0 && wrong.length < 20)
          wrong.push(`${each.root}${each.quality}${each.bass} in ${each.key}: ${found.join(', ')}`);
      });
      expect(wrong).toEqual([]);
      expect(runs).toBeGreaterThanOrEqual(1000);
    },
    SOAK_TIMEOUT,
  );

  it('has at least two tones in every spelling', () => {
    for (const [quality, shape] of shapes)
      expect([quality, shape]).toEqual([quality, expect.stringMatching(/^0 \d/)]);
  });
});
