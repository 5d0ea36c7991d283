import { describe, expect, it } from 'vitest';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { sectionSeconds } from '../../../src/core/song/song-sections';
import { heardAgain } from '../../../src/core/takes/heard-again';
import { placeInSong } from '../../../src/core/takes/place-in-song';
import type { TakeEvent } from '../../../src/core/takes/take-passes';
import { heardNote } from '../../helpers/heard-note';
import { testProgram } from '../../helpers/test-charts';

/** A song whose first chorus begins at 2 seconds of the take. */
const BEGINS = 2;
const program = testProgram('shuffle');
const chorus = sectionAt(program, 0);
const length = chorus === null ? 0 : sectionSeconds(chorus);

const live = (notes: readonly Parameters<typeof heardNote>[0][]): readonly TakeEvent[] =>
  placeInSong(
    notes.map((each) => heardNote(each)),
    program,
    BEGINS,
  ).map((heard) => ({ kind: 'note', heard }));

describe('a take that is heard again', () => {
  it('has its notes where a song that began then has them, also beyond the end of a chorus', () => {
    const heard = live([
      ['2D', 3, 3.2],
      ['4D', length + 1.8, length + 1.9],
      ['4D', length + 3, length + 3.2],
    ]);
    const notes = [2.5, 3.01, length + 1.7, length + 2.2, length + 4].map((from) =>
      heardNote(['4B', from, from + 0.1]),
    );
    const expected = placeInSong(notes, program, BEGINS);
    const found = heardAgain(heard, notes).flatMap((event) => (event.kind === 'note' ? [event.heard] : []));
    expect(found.map(({ note }) => note)).toEqual(notes);
    for (const [i, { playhead }] of found.entries()) {
      expect(playhead?.section.chorus).toBe(expected[i]?.playhead?.section.chorus);
      expect(playhead?.bar).toBe(expected[i]?.playhead?.bar);
      expect(playhead?.ticks).toBeCloseTo(expected[i]?.playhead?.ticks ?? 0, 3);
    }
  });

  it('has no place for notes where the band did not play, or nothing was heard live', () => {
    const alone: TakeEvent = { kind: 'note', heard: { note: heardNote(['2D', 1, 2]), playhead: null } };
    const note = heardNote(['3D', 1.5, 1.8]);
    for (const events of [[alone], []])
      expect(heardAgain(events, [note])).toEqual([{ kind: 'note', heard: { note, playhead: null } }]);
  });

  it('keeps its bars where nothing is left to be heard', () => {
    const [note] = live([['2D', 3, 3.2]]);
    const playhead = note?.kind === 'note' ? note.heard.playhead : null;
    if (note === undefined || playhead === null) throw new Error('It was played to the band');
    const bar: TakeEvent = { kind: 'bar', playhead };
    expect(heardAgain([bar, note], [])).toEqual([bar]);
  });
});
