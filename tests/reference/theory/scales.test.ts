import { Scale as TonalScale } from 'tonal';
import { describe, expect, it } from 'vitest';
import { semitonesOf } from '../../../src/core/theory/degrees';
import { SCALE_IDS, type ScaleId, scaleOf } from '../../../src/core/theory/scales';

const names = (id: ScaleId, tonic: string): string =>
  scaleOf(id, tonic)
    .tones.map(({ name }) => name)
    .join(' ');

const steps = (id: ScaleId): string => {
  const semitones = [...scaleOf(id, 'C').tones.map(({ degree }) => semitonesOf(degree)), 12];
  return semitones
    .slice(1)
    .map((each, i) => each - (semitones[i] ?? 0))
    .join('-');
};

describe('blues scales', () => {
  // Wikipedia, "Blues scale" (hexatonic: 1 b3 4 b5 5 b7; major: 1 2 b3 3 5 6).
  it('in G', () => {
    expect(names('minor-blues', 'G')).toBe('G Bb C Db D F');
    expect(names('major-blues', 'G')).toBe('G A Bb B D E');
  });

  // Simple English Wikipedia, "Blues scale": steps in semitones.
  it('minor blues steps by 3-2-1-1-3-2', () => {
    expect(steps('minor-blues')).toBe('3-2-1-1-3-2');
  });

  // Open Music Theory v2: the major blues scale has the notes of the relative minor's blues scale.
  it('the major blues scale of C is the minor blues scale of A', () => {
    expect([...names('major-blues', 'C').split(' ')].sort()).toEqual(
      [...names('minor-blues', 'A').split(' ')].sort(),
    );
  });
});

describe('modes', () => {
  // Definition of the church modes: the white keys from each letter.
  it.each([
    ['ionian', 'C'],
    ['dorian', 'D'],
    ['phrygian', 'E'],
    ['lydian', 'F'],
    ['mixolydian', 'G'],
    ['aeolian', 'A'],
    ['locrian', 'B'],
  ] as const)('%s on %s uses white keys only', (id, tonic) => {
    expect([...names(id, tonic).split(' ')].sort().join('')).toBe('ABCDEFG');
  });
});

describe('against tonal 6.4.3', () => {
  const TONAL_NAMES: Readonly<Partial<Record<ScaleId, string>>> = {
    'minor-blues': 'minor blues',
    'major-blues': 'major blues',
    'minor-pentatonic': 'minor pentatonic',
    'major-pentatonic': 'major pentatonic',
    'harmonic-minor': 'harmonic minor',
    'melodic-minor': 'melodic minor',
    'lydian-dominant': 'lydian dominant',
    'phrygian-dominant': 'phrygian dominant',
    'lydian-augmented': 'lydian augmented',
    'mixolydian-flat-six': 'mixolydian b6',
    'whole-tone': 'whole tone',
    'half-whole': 'half-whole diminished',
    'whole-half': 'whole-half diminished',
  };

  it('every scale has the same pitches', () => {
    for (const id of SCALE_IDS) {
      const theirs = TonalScale.get(`G ${TONAL_NAMES[id] ?? id}`);
      expect(theirs.empty, id).toBe(false);
      const ours = scaleOf(id, 'C').tones.map(({ degree }) => semitonesOf(degree));
      expect(ours.join(' '), id).toBe(
        [...theirs.chroma].flatMap((bit, i) => (bit === '1' ? [i] : [])).join(' '),
      );
    }
  });
});
