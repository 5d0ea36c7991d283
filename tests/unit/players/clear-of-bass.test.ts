import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearOfBass } from '../../../src/core/players/clear-of-bass';
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
});
