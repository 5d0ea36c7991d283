import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearOfBass, overBass } from '../../../src/core/players/clear-of-bass';
import { noteEvent } from '../../../src/core/score/note';
import { soakRuns } from '../../helpers/soak';

const PASSING = 160;

const row = (part: 'bass' | 'chords', low: number) =>
  fc
    .array(fc.record({ at: fc.nat(12_000), length: fc.integer({ min: 20, max: 4000 }), up: fc.nat(14) }), {
      maxLength: 12,
    })
    .map((notes) =>
      notes
        .toSorted((a, b) => a.at - b.at)
        .map(({ at, length, up }) => noteEvent(part, { at, length, pitch: low + up, velocity: 80 })),
    );

describe('chords clear of the bass', () => {
  it('are those that going through every bass note leaves, each as long', () => {
    fc.assert(
      fc.property(row('chords', 48), row('bass', 36), (chords, bass) => {
        const left = chords.flatMap((note) => {
          const end = note.at + note.length;
          const clash = bass.find(
            (low) =>
              (note.pitch - low.pitch < 3 || (note.pitch - low.pitch) % 12 === 1) &&
              Math.min(end, low.at + low.length) - Math.max(note.at, low.at) >=
                (note.pitch - low.pitch < 3 ? 30 : PASSING - 1),
          );
          if (clash === undefined) return [note];
          return clash.at - note.at < 30 ? [] : [{ ...note, length: clash.at - note.at }];
        });
        expect(clearOfBass(chords, bass, PASSING)).toEqual(left);
      }),
      { numRuns: soakRuns(4) },
    );
  });

  it('are voiced otherwise where a voice would be left out, and stay as they were where none would', () => {
    const bass = [noteEvent('bass', { at: 0, length: 480, pitch: 40, velocity: 80 })];
    const revoiced = overBass(bass, PASSING);
    const choices = () => [
      [53, 56, 62],
      [52, 56, 62],
      [56, 59, 62],
    ];
    const where = { at: 0, length: 240 };
    expect(revoiced({ ...where, pitches: [53, 56, 62] }, choices)).toEqual([52, 56, 62]);
    expect(revoiced({ ...where, pitches: [53, 56, 62] }, choices, (pitch) => pitch !== 52)).toEqual([
      56, 59, 62,
    ]);
    expect(revoiced({ ...where, pitches: [55, 58, 62] }, choices)).toEqual([55, 58, 62]);
    // Later, when the bass is gone.
    expect(revoiced({ at: 480, length: 240, pitches: [53, 56, 62] }, choices)).toEqual([53, 56, 62]);
  });
});
