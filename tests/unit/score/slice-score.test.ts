import { describe, expect, it } from 'vitest';
import { noteEvent } from '../../../src/core/score/note';
import type { PartId, Score } from '../../../src/core/score/score';
import { sliceScore } from '../../../src/core/score/slice-score';
import { asTicks } from '../../../src/core/theory/units';

const note = (part: PartId, at: number, length: number) =>
  noteEvent(part, { at, length, pitch: 60, velocity: 80 });

const score: Score = {
  length: asTicks(400),
  events: [
    note('bass', 0, 150),
    note('drums', 90, 20),
    note('chords', 110, 20),
    note('bass', 180, 90),
    note('click', 200, 5),
  ],
};

describe('a slice of a score', () => {
  it.each<[number, number, string]>([
    [0, 400, 'bass 0+150, drums 90+20, chords 110+20, bass 180+90, click 200+5'],
    [100, 200, 'bass 0+50, chords 10+20, bass 80+20'],
    [120, 260, 'bass 0+30, chords 0+10, bass 60+80, click 80+5'],
    [300, 400, ''],
  ])('from %s to %s', (from, to, events) => {
    const slice = sliceScore(score, from, to);
    expect(slice.events.map(({ part, at, length }) => `${part} ${at}+${length}`).join(', ')).toBe(events);
    expect(slice.length).toBe(to - from);
  });

  it('drops the glide of a note cut at its start and keeps it otherwise', () => {
    const glide = { ...note('lead', 50, 100), glideFrom: -2, glideTicks: asTicks(20) };
    const gliding = { ...score, events: [glide] };
    expect(sliceScore(gliding, 100, 200).events).toEqual([note('lead', 0, 50)]);
    expect(sliceScore(gliding, 40, 200).events[0]?.glideFrom).toBe(-2);
  });

  it.each([
    [-1, 10],
    [10, 10],
    [0, 401],
    [Number.NaN, 10],
  ])('refuses %s to %s', (from, to) => {
    expect(() => sliceScore(score, from, to)).toThrow(
      `A slice needs 0 <= from < to <= 400, got ${from} to ${to}`,
    );
  });
});
