import { describe, expect, it } from 'vitest';
import { chordOf, readSymbol } from '../../../src/core/theory/chords';
import { semitonesOf, toneOf } from '../../../src/core/theory/degrees';
import { blueNotes, chordScale, SCALE_IDS, scaleName, scaleOf } from '../../../src/core/theory/scales';
import { DICTIONARY } from '../../helpers/chord-dictionary';

describe('scaleOf', () => {
  it.each([
    ['minor-blues', 'G', 'G Bb C Db D F'],
    ['major-blues', 'G', 'G A Bb B D E'],
    ['mixolydian', 'Gb', 'Gb Ab Bb Cb Db Eb Fb'],
    ['dorian', 'D', 'D E F G A B C'],
    ['minor-pentatonic', 'A', 'A C D E G'],
    ['locrian', 'B', 'B C D E F G A'],
    ['minor-blues', 'Db', 'Db Fb Gb Abb Ab Cb'],
  ] as const)('%s on %s', (id, tonic, names) => {
    expect(
      scaleOf(id, tonic)
        .tones.map(({ name }) => name)
        .join(' '),
    ).toBe(names);
  });

  it('rises from the tonic within one octave in every scale', () => {
    for (const id of SCALE_IDS) {
      const steps = scaleOf(id, 'C').tones.map(({ degree }) => semitonesOf(degree));
      expect(steps[0]).toBe(0);
      expect(steps).toEqual([...new Set(steps)].sort((a, b) => a - b));
      expect(Math.max(...steps)).toBeLessThan(12);
      expect(scaleName(id)).not.toBe('');
    }
  });
});

describe('blueNotes', () => {
  it('are the flat third, fifth and seventh of the key', () => {
    expect(blueNotes('F').map(({ degree, name }) => `${degree} ${name}`)).toEqual([
      'b3 Ab',
      'b5 Cb',
      'b7 Eb',
    ]);
  });
});

describe('chordScale', () => {
  it.each([
    ['G7', 'mixolydian'],
    ['Am7', 'dorian'],
    ['Cmaj7', 'ionian'],
    ['Bm7b5', 'locrian'],
    ['C#dim7', 'whole-half'],
    ['C7#11', 'lydian-dominant'],
    ['E7b9', 'phrygian-dominant'],
    ['Cm6', 'dorian'],
    ['CmM7', 'melodic-minor'],
  ])('%s takes the %s scale', (symbol, id) => {
    const chord = readSymbol(symbol);
    expect(chord === null ? null : chordScale(chord)?.id).toBe(id);
  });

  it('holds every tone of its chord, and says so when no scale does', () => {
    const without: string[] = [];
    for (const quality of DICTIONARY) {
      const chord = chordOf({ root: 'C', quality });
      const scale = chordScale(chord);
      if (scale === null) without.push(chord.symbol);
      else {
        const classes = new Set(scale.tones.map(({ pitchClass }) => pitchClass));
        expect(
          chord.tones.filter(({ pitchClass }) => !classes.has(pitchClass)),
          chord.symbol,
        ).toEqual([]);
      }
    }
    expect(without.join(' ')).toBe('Cmaj7addb6 Cmaj7#9#11 Cm9b5 Cmaj7b9');
  });
});

describe('degrees', () => {
  it.each([
    ['R', 0],
    ['b3', 3],
    ['b5', 6],
    ['bb7', 9],
    ['#9', 15],
    ['#11', 18],
    ['b13', 20],
  ])('degree %s is %i semitones above the root', (degree, semitones) => {
    expect(semitonesOf(degree)).toBe(semitones);
  });

  it('spells by letter, but never with three accidentals', () => {
    expect(toneOf('Gb', 'b7').name).toBe('Fb');
    expect(toneOf('D#', '3').name).toBe('F##');
    expect(toneOf('Fb', 'bb7').name).toBe('Db');
  });

  it('refuses nonsense', () => {
    expect(() => semitonesOf('b99')).toThrow('Not a degree: "b99"');
  });
});
