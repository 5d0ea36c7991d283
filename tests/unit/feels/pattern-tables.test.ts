import { describe, expect, it } from 'vitest';
import { TURNAROUND_RIFFS } from '../../../src/core/feels/bass-pattern';
import type { Feel } from '../../../src/core/feels/feel';
import { FEELS, feelOf } from '../../../src/core/feels/feels';
import { FILL_MARKS } from '../../../src/core/feels/fills';
import { playedFeel } from '../../../src/core/feels/played-feels';
import { readSteps, type StepBar } from '../../../src/core/score/steps';
import { CHORD_VOICES } from '../../../src/core/score/voices';

/** How beats may divide in a feel: triplets belong where the beat is swung or compound, or its sixteenths are. */
const divisions = ({ meter, swing, swungUnit }: Feel): readonly number[] => {
  if (meter === '12/8') return [1, 3];
  if (swungUnit === '16th' && swing === 2) return [1, 2, 3, 4, 6];
  return swing === 1 || swungUnit === '16th' ? [1, 2, 4] : [1, 2, 3];
};

const beatsOf = (bar: StepBar): number => new Set(bar.map(({ beat }) => beat)).size;
const marksOf = (bar: StepBar): readonly string[] => bar.map(({ mark }) => mark);

const expectBars = (text: string, feel: Feel, marks: string, beats = 4) => {
  for (const bar of readSteps(text)) {
    expect([text, beatsOf(bar)]).toEqual([text, beats]);
    expect(divisions(feel)).toEqual(expect.arrayContaining([...new Set(bar.map(({ of }) => of))]));
    for (const mark of marksOf(bar)) expect(marks).toContain(mark);
  }
};

describe.each(FEELS.map(({ id }) => playedFeel(id)))('patterns of $id', (feel) => {
  it('have drums for three levels: four beats, known marks, divisions of the feel', () => {
    const { patterns } = feel.drumming;
    for (const text of patterns.flat().flatMap((pattern) => Object.values(pattern))) {
      expectBars(text, feel, 'goxX?!.');
    }
    expect(patterns.map((choices) => choices.length > 0)).toEqual([true, true, true]);
  });

  it('have basses for three levels that begin on the root and use known marks', () => {
    const { patterns } = feel.bassLine;
    for (const pattern of patterns.flat()) {
      if (typeof pattern === 'string') continue;
      expectBars(pattern.riff, feel, 'R35678bm^Aa-.');
      expect(readSteps(pattern.riff)[0]?.[0]?.mark).toBe('R');
    }
    expect(patterns.map((choices) => choices.length > 0)).toEqual([true, true, true]);
  });

  it('have fills as long as they claim', () => {
    const { short, cells, middle, long } = feel.drumming.fills;
    const marks = `${Object.keys(FILL_MARKS).join('')}.`;
    const lengths = [
      [short, 1],
      [cells, 1],
      [middle, 2],
      [long, 4],
    ] as const;
    for (const [texts, beats] of lengths) for (const text of texts) expectBars(text, feel, marks, beats);
  });

  it.each(CHORD_VOICES)('have chords for three levels on the %s', (voice) => {
    const bars = feel.comping.bars[voice];
    expect(bars.map((choices) => choices.length > 0)).toEqual([true, true, true]);
    for (const text of bars.flat()) expectBars(text, feel, 'sShpncd567.');
  });

  it('have chords that turn around, or none', () => {
    const { turnarounds } = feel.comping;
    expect(turnarounds.length).toBeGreaterThan(0);
    for (const text of turnarounds) if (text !== null) expectBars(text, feel, 'sShpncd.');
  });

  it('never slide down from nothing: a bar with d begins with a stroke', () => {
    const { bars, turnarounds } = feel.comping;
    for (const text of [...Object.values(bars).flat(2), ...turnarounds]) {
      expect(text?.replaceAll(/[. ]/g, '').startsWith('d')).not.toBe(true);
    }
  });
});

it('the basses of any feel turn around in four quarters that lead on', () => {
  for (const riff of TURNAROUND_RIFFS) {
    expectBars(riff, feelOf('shuffle'), 'R35678bm^Aa-.');
    expect(riff.endsWith('A')).toBe(true);
  }
});
