import { describe, expect, it } from 'vitest';
import { allNotes, notesBetween } from '../../../src/audio/transport/scheduled-note';
import { placeSection } from '../../../src/audio/transport/timeline';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { FEEL_IDS } from '../../../src/core/feels/feels';
import { notesOfPart, placeSections } from '../../../src/core/formats/midi-timeline';
import { DRUM_KEYS } from '../../../src/core/score/drum-kit';
import { lateOf, placingSpan } from '../../../src/core/score/placing';
import { partOf, sectionOf } from '../../helpers/score-events';
import { testProgram } from '../../helpers/test-charts';

const swing = testProgram('swing', { tempo: 120 });
const section = sectionOf(swing, 1);

describe('what is played after or before the beat', () => {
  it('is small and the same in every chorus: no stroke is scattered', () => {
    for (const feel of FEEL_IDS) {
      const program = testProgram(feel);
      const { low, high } = placingSpan(sectionOf(program, 0).placing);
      expect(low).toBeGreaterThanOrEqual(-10);
      expect(high).toBeLessThanOrEqual(33);
      expect(sectionOf(program, 3).placing).toEqual(sectionOf(program, 0).placing);
    }
  });

  it('sounds so: the bass 8 ms after its tick, the hat foot 9 ms before', () => {
    const placed = placeSection(section, 10);
    const lateness = (part: string, pitch: number | null) =>
      allNotes(placed)
        .filter(
          ({ event }) => event.part === part && (pitch === null || event.pitch === pitch) && event.at > 0,
        )
        .map(({ event, at }) => Math.round((at - 10 - event.at / 960) * 10_000) / 10);
    expect(new Set(lateness('bass', null))).toEqual(new Set([8]));
    expect(new Set(lateness('drums', DRUM_KEYS.foot))).toEqual(new Set([-9]));
    expect(new Set(lateness('drums', DRUM_KEYS.kick))).toEqual(new Set([0]));
  });

  it('never begins before the music is entered, and every note is scheduled once in windows of any size', () => {
    const placed = placeSection(section, 10);
    const found = [];
    for (let from = 10; from < placed.until + 1; from += 0.13)
      found.push(...notesBetween(placed, from, from + 0.13, {}));
    expect(found.map(({ event }) => event)).toHaveLength(section.score.events.length);
    expect(Math.min(...found.map(({ at }) => at))).toBe(10);
  });

  it('is in the MIDI file as it sounds', () => {
    const notes = notesOfPart(placeSections([section]), 'bass', 0);
    const ticks = partOf(section, 'bass').map(({ at }) => at);
    expect(notes.map(({ from }, i) => from - (ticks[i] ?? 0))).toEqual(ticks.map(() => 8));
  });

  it('leaves the count and notes of nowhere on the beat', () => {
    const count = sectionAt(testProgram('swing', { plan: { countInBars: 1 } }), 0);
    expect(count?.placing).toBeUndefined();
    expect(count?.score.events.map((event) => lateOf(count.placing, event))).toEqual(
      count?.score.events.map(() => 0),
    );
  });
});

describe('loudness from stroke to stroke', () => {
  it('wanders and does not jump: strokes a beat apart with one mark differ by three steps at most', () => {
    for (const seed of [1, 2, 3]) {
      const kicks = partOf(sectionOf(testProgram('double-shuffle', { style: { seed } }), 2), 'drums').filter(
        ({ pitch }) => pitch === DRUM_KEYS.hat || pitch === DRUM_KEYS.ride,
      );
      const inBar = (bar: number) =>
        kicks
          .filter(({ at }) => Math.floor(at / 1920) === bar && at % 480 === 0)
          .map(({ velocity }) => velocity);
      for (let bar = 0; bar < 12; bar += 1) {
        const struck = inBar(bar);
        expect(Math.max(...struck) - Math.min(...struck)).toBeLessThanOrEqual(8);
      }
    }
  });
});
