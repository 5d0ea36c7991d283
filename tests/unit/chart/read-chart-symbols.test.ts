import { chordParserFactory } from 'chord-symbol';
import { describe, expect, it } from 'vitest';
import { readChord } from '../../../src/core/chart-text/read-chord';

/** The pitch classes above the root as the independent library `chord-symbol` hears a symbol on C, or null. */
const parseOther = chordParserFactory();
const other = (symbol: string): string | null => {
  const parsed = parseOther(symbol);
  if (!('normalized' in parsed)) return null;
  return classes(parsed.normalized.semitones);
};

const classes = (semitones: readonly number[]): string =>
  [...new Set(semitones.map((each) => each % 12))].sort((a, b) => a - b).join(' ');

const ours = (symbol: string): string | null => {
  const read = readChord(symbol, 'C');
  return read === null ? null : classes(read.chord.tones.map(({ pitchClass }) => pitchClass));
};

const WRITTEN = [
  ...[
    'C',
    'CM',
    'Cmaj',
    'Cm',
    'Cmin',
    'Cmi',
    'C-',
    'Cdim',
    'C°',
    'Caug',
    'C+',
    'C5',
    'Csus4',
    'Csus2',
    'Csus',
  ],
  ...[
    'C7',
    'Cmaj7',
    'CM7',
    'CΔ',
    'CΔ7',
    'Cma7',
    'Cm7',
    'C-7',
    'Cmi7',
    'CMI7',
    'Cmin7',
    'Cdim7',
    'C°7',
    'Co7',
  ],
  ...[
    'Cø',
    'Cø7',
    'Cm7b5',
    'C-7b5',
    'Cmi7b5',
    'CmM7',
    'Cm(maj7)',
    'CmMaj7',
    'C6',
    'Cm6',
    'C69',
    'C6/9',
    'Cm69',
  ],
  ...[
    'Cadd9',
    'C(add9)',
    'Cm(add9)',
    'C9',
    'Cmaj9',
    'Cma9',
    'CM9',
    'Cm9',
    'C13',
    'Cm11',
    'C11',
    'C7sus4',
    'C9sus4',
  ],
  ...[
    'C7b9',
    'C7#9',
    'C7(b9)',
    'C7(♭9)',
    'C7(#9)',
    'C7b5',
    'C7#5',
    'C+7',
    'C7#11',
    'Cmaj7#11',
    'C13#11',
    'C13b9',
  ],
  ...[
    'C7(b9,13)',
    'C7b9#11',
    'C7#11b9',
    'C7#5b9',
    'C7b9#5',
    'C7#5#9',
    'C7#9#5',
    'C7b9sus4',
    'C9#11',
    'Cmaj9#11',
  ],
];

describe('chord symbols', () => {
  it.each(WRITTEN)('%s holds the notes another library finds', (symbol) => {
    expect(other(symbol)).not.toBeNull();
    expect(ours(symbol)).toBe(other(symbol));
  });
});
