import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notesAcross, notesBetween } from '../../../../src/audio/transport/scheduled-note';
import { placeSection } from '../../../../src/audio/transport/timeline';
import { plainProgram, plainSections } from '../../../helpers/plain-sections';

const chorus = plainSections(plainProgram(12, 120), 1, 0);
if (chorus === null) throw new Error('the plain program has a chorus');
const placed = placeSection(chorus, 10);
/** Twelve bars of 2 s from 10 s on. */
const END = 34;

describe('notes of a window', () => {
  it('cover the section once, however the windows are cut and the parts pushed', () => {
    const cuts = fc.array(fc.double({ min: 9, max: END + 1, noNaN: true }), { maxLength: 30 });
    const push = fc.record({
      drums: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      bass: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
    });
    fc.assert(
      fc.property(cuts, push, (drawn, pushed) => {
        const times = [9, ...drawn.sort((one, other) => one - other), END + 1];
        const notes = times
          .slice(1)
          .flatMap((time, index) => notesBetween(placed, times[index], time, pushed));
        expect(new Set(notes.map(({ event }) => event)).size).toBe(chorus.score.events.length);
        expect(notes).toHaveLength(chorus.score.events.length);
      }),
      { numRuns: 60 },
    );
  });

  it('move a part by its push and leave the others', () => {
    const notes = notesBetween(placed, 9.9, 10.1, { drums: 0.02 });
    expect(notes.map(({ event, at }) => [event.part, Number(at.toFixed(6))])).toEqual([
      ['chords', 10],
      ['bass', 10],
      ['drums', 10.02],
    ]);
  });

  it('take turns with the strokes of one key', () => {
    const kicks = notesBetween(placed, 9, 14, {}).filter(
      ({ event }) => event.pitch === 36 && event.part === 'drums',
    );
    expect(kicks.map(({ stroke }) => stroke)).toEqual([1, 2, 3, 4]);
  });
});

describe('notes across a time', () => {
  it('are the held ones, entered as far in as they have gone', () => {
    const notes = notesAcross(placed, 10.75, {});
    expect(
      notes.map(({ event, at, until, offset }) => [event.part, at, until, Number(offset.toFixed(6))]),
    ).toEqual([
      ['chords', 10.75, 12, 0.75],
      ['bass', 10.75, 11, 0.25],
    ]);
  });

  it('are none on a bar line', () => {
    expect(notesAcross(placed, 12, {})).toEqual([]);
  });
});
