import { describe, expect, it } from 'vitest';
import { BASS_BOOK, TURNAROUND_RIFFS } from '../../../src/core/feels/bass-patterns';
import {
  COMP_BOOK,
  COMP_FAMILY,
  type CompFamily,
  TURNAROUND_BARS,
} from '../../../src/core/feels/comping-patterns';
import { FILL_BOOK, FILL_FAMILY, FILL_MARKS } from '../../../src/core/feels/drum-fills';
import { DRUM_BOOK } from '../../../src/core/feels/drum-patterns';
import type { FeelId } from '../../../src/core/feels/feel';
import { FEELS } from '../../../src/core/feels/feels';
import { DRUM_KEYS, STROKES } from '../../../src/core/score/drum-kit';
import { readSteps, type StepBar } from '../../../src/core/score/steps';
import { FEEL_IDS } from '../../helpers/program-arbitraries';

/** How beats may divide in a feel: triplets belong where the beat is swung or compound. */
const divisions = (feel: FeelId): readonly number[] => {
  if (FEELS[feel].meter === '12/8') return [1, 3];
  return FEELS[feel].swing === 1 || feel === 'second-line' ? [1, 2, 4] : [1, 2, 3];
};

const beatsOf = (bar: StepBar): number => new Set(bar.map(({ beat }) => beat)).size;
const marksOf = (bar: StepBar): readonly string[] => bar.map(({ mark }) => mark);

const expectBars = (text: string, feel: FeelId, marks: string, beats = 4) => {
  for (const bar of readSteps(text)) {
    expect([text, beatsOf(bar)]).toEqual([text, beats]);
    expect(divisions(feel)).toEqual(expect.arrayContaining([...new Set(bar.map(({ of }) => of))]));
    for (const mark of marksOf(bar)) expect(marks).toContain(mark);
  }
};

describe.each(FEEL_IDS)('patterns of %s', (feel) => {
  it('have drums for three levels: four beats, known marks, divisions of the feel', () => {
    for (const pattern of DRUM_BOOK[feel].flat()) {
      for (const text of Object.values(pattern)) expectBars(text, feel, 'goxX?!.');
    }
    expect(DRUM_BOOK[feel].map((patterns) => patterns.length > 0)).toEqual([true, true, true]);
  });

  it('have basses that begin on the root and use known marks', () => {
    for (const style of BASS_BOOK[feel].flat()) {
      if (typeof style === 'string') continue;
      expectBars(style.riff, feel, 'R35678bm^Aa-.');
      expect(readSteps(style.riff)[0]?.[0]?.mark).toBe('R');
    }
  });

  it('have fills as long as they claim', () => {
    const book = FILL_BOOK[FILL_FAMILY[feel]];
    const marks = `${Object.keys(FILL_MARKS).join('')}.`;
    const lengths: readonly (readonly [readonly string[], number])[] = [
      [book.short, 1],
      [book.cells, 1],
      [book.middle, 2],
      [book.long, 4],
    ];
    for (const [texts, beats] of lengths) for (const text of texts) expectBars(text, feel, marks, beats);
  });
});

describe('chord rhythms', () => {
  const feelOf = (family: string): FeelId => FEEL_IDS.find((feel) => COMP_FAMILY[feel] === family) ?? 'swing';

  it.each(Object.entries(COMP_BOOK))('of %s have three levels for every instrument', (family, voices) => {
    for (const book of Object.values(voices)) {
      expect(book.map((bars) => bars.length > 0)).toEqual([true, true, true]);
      for (const text of book.flat()) expectBars(text, feelOf(family), 'sShpncd567.');
    }
  });

  it.each(Object.entries(TURNAROUND_BARS) as [CompFamily, readonly string[]][])(
    'turn around in %s',
    (family, bars) => {
      expect(bars.length).toBeGreaterThan(0);
      for (const text of bars.filter((bar) => bar !== '')) expectBars(text, feelOf(family), 'sShpncd.');
    },
  );

  it('never slide down from nothing: a bar with d begins with a stroke', () => {
    for (const text of [
      ...Object.values(COMP_BOOK).flatMap((voices) => Object.values(voices).flat(2)),
      ...Object.values(TURNAROUND_BARS).flat(),
    ]) {
      const bare = text.replaceAll(/[. ]/g, '');
      expect(bare.startsWith('d')).toBe(false);
    }
  });
});

describe('tables', () => {
  it('have turnaround basses of four quarters that lead on', () => {
    for (const riff of TURNAROUND_RIFFS) {
      expectBars(riff, 'shuffle', 'R35678bm^Aa-.');
      expect(riff.endsWith('A')).toBe(true);
    }
  });

  it('give every lane four strengths that grow', () => {
    expect(Object.keys(STROKES).sort()).toEqual(Object.keys(DRUM_KEYS).sort());
    for (const { g = 0, o = 0, x = 0, X = 0 } of Object.values(STROKES))
      expect(0 < g && g < o && o < x && x < X).toBe(true);
  });
});
