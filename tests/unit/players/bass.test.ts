import { describe, expect, it } from 'vitest';
import { barOf, chartOfBars } from '../../../src/core/chart/excerpt';
import { FEEL_IDS } from '../../../src/core/feels/feels';
import type { Segment } from '../../../src/core/players/passage';
import { playRiff } from '../../../src/core/players/riff';
import { createGrid } from '../../../src/core/score/grid';
import { readSymbol } from '../../../src/core/theory/chords';
import { createRandom } from '../../../src/core/theory/random';
import { partOf, sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

const chordOf = (symbol: string) => {
  const chord = readSymbol(symbol);
  if (chord === null) throw new Error(`Not a chord: ${symbol}`);
  return chord;
};

const base = testChart();
const grid = createGrid(base.meter, 1);
const segment = (symbol: string, next: string | null, changes: Partial<Segment> = {}): Segment => ({
  chord: chordOf(symbol),
  at: 0,
  length: 1920,
  bar: 0,
  change: true,
  barsHeld: 0,
  next: next === null ? null : chordOf(next),
  ...changes,
});

const played = (
  riff: string,
  symbol: string,
  next: string | null,
  seed = 1,
  changes: Partial<Segment> = {},
) =>
  playRiff(createRandom(seed), grid, { text: riff, halfTime: false }, [segment(symbol, next, changes)]).map(
    ({ pitch }) => pitch,
  );

describe('a bass pattern', () => {
  it.each([
    ['R 3 5 6', 'G7', [31, 35, 38, 40]],
    ['R 3 5 6', 'Gm7', [31, 34, 38, 40]],
    ['R 3 5 6', 'Gm7b5', [31, 34, 37, 39]],
    ['R 5 8 7', 'C7', [36, 43, 48, 46]],
    ['R 5 8 7', 'C', [36, 43, 48, 48]],
    ['R m 3 5', 'G7', [31, 34, 35, 38]],
    ['R b R b', 'C7', [36, 31, 36, 31]],
    ['R b R b', 'F7', [29, 36, 29, 36]],
    // Above the register the octaves become the note itself, struck again: the hand does not turn round.
    ['R^ 3^ 5^ 6^', 'D7', [38, 50, 42, 54, 45, 45, 47, 47]],
    ['R - . 5', 'G7', [31, 38]],
    ['R 3 5 7', 'G7sus4', [31, 36, 38, 41]],
    ['R 3 5 8', 'C/E', [40 - 12, 40, 43, 48]],
  ])('%s over %s', (riff, symbol, pitches) => {
    expect(played(riff, symbol, null)).toEqual(pitches);
  });

  it('takes its second bar when the chord goes on', () => {
    const line = 'R 3 5 6 | 7 6 5 3';
    expect(played(line, 'G7', null, 1, { barsHeld: 1, change: false })).toEqual([41, 40, 38, 35]);
    expect(played(line, 'G7', null, 1, { barsHeld: 2, change: false })).toEqual([31, 35, 38, 40]);
  });

  it('approaches another chord by a half step, a scale step or its fifth, and not by the note before', () => {
    const ways = Array.from({ length: 60 }, (_, seed) => played('R 3 5 A', 'G7', 'C7', seed).at(-1) ?? 0);
    for (const way of ways) expect([34, 35, 37, 43, 31]).toContain(way);
    expect(new Set(ways).size).toBeGreaterThan(2);
  });

  it('comes back to the same chord by its own steps, never by a half step', () => {
    for (let seed = 0; seed < 60; seed += 1) {
      const last = played('R 3 5 A', 'G7', 'G7', seed).at(-1) ?? 0;
      expect([0, 7, 9, 10]).toContain((last - 31 + 24) % 12);
      expect(Math.abs(last - 31)).not.toBe(1);
    }
  });

  it('strikes the root of a chord that begins where the pattern is silent', () => {
    const halves = [segment('G7', 'C7', { length: 960 }), segment('C7', 'F7', { at: 960, length: 960 })];
    const notes = playRiff(createRandom(2), grid, { text: 'R - - -', halfTime: false }, halves);
    expect(notes.map(({ at, pitch }) => [at, pitch])).toEqual([
      [0, 31],
      [960, 36],
    ]);
  });
});

describe('chords that begin on any beat', () => {
  const shares: readonly (readonly number[])[] = [
    [1, 3],
    [3, 1],
    [1, 2, 1],
    [2, 1, 1],
    [1, 1, 1, 1],
  ];
  const symbols = ['G7', 'C7', 'Am7', 'D7b9'];
  const chart = chartOfBars(
    base,
    shares.map((beats) =>
      barOf(
        base,
        beats.map((_, i) => chordOf(symbols[i] ?? 'G7')),
        beats,
      ),
    ),
  );

  it.each(FEEL_IDS)('%s: the root under each, chord tones on beats 1 and 3', (feel) => {
    for (let seed = 0; seed < 25; seed += 1) {
      const section = sectionOf(testProgram(feel, { chart, style: { seed } }), 1);
      const bass = partOf(section, 'bass');
      const spans = chart.bars.flatMap((bar) => bar.chords);
      expect(
        spans.map(({ at, chord }) => (bass.find((note) => note.at === at)?.pitch ?? 0) % 12 === chord.root),
      ).not.toContain(false);
      const strong = bass.filter(({ at }) => at % 960 === 0);
      const foreign = strong.filter(({ at, pitch }) => {
        const tones = spans.findLast((span) => span.at <= at)?.chord.tones ?? [];
        return !tones.some((tone) => tone.pitchClass === pitch % 12);
      });
      expect(foreign).toEqual([]);
    }
  });
});
