/**
 * The scores against the worked examples of the library whose definitions they follow: mir_eval
 * (github.com/mir-evaluation/mir_eval, commit fe73b353), tests/test_transcription.py and tests/test_melody.py.
 * Figures marked "by arithmetic" were computed by hand from the definitions.
 */
import { describe, expect, it } from 'vitest';
import {
  centsOf,
  frameScore,
  noteScore,
  onsetScore,
  overlapRatio,
  resampleCents,
  type ScoredNote,
} from '../../helpers/hearing/scores';

const notes = (rows: readonly (readonly [number, number, number])[]): readonly ScoredNote[] =>
  rows.map(([from, to, hz]) => ({ from, to, hz }));

const REFERENCE = notes([
  [0.1, 0.3, 220],
  [0.3, 0.4, 246.942],
  [0.5, 0.6, 277.183],
  [0.55, 0.65, 293.665],
]);
const ESTIMATE = notes([
  [0.12, 0.29, 225],
  [0.3, 0.34, 246.942],
  [0.5, 0.6, 500],
  [0.55, 0.6, 293.665],
  [0.56, 0.65, 293.665],
]);

describe('note scores', () => {
  it.each([
    ['onset, pitch and offset', { offset: 0.2 }, 0.4, 0.5, 0.444444, 0.675],
    ['onset and pitch', {}, 0.6, 0.75, 0.666667, 0.583333],
    ['onset alone', { pitch: null }, 0.8, 1, 0.888889, null],
    ['offset alone', { onset: null, pitch: null, offset: 0.2 }, 0.6, 0.75, 0.666667, null],
  ])('gives the published %s', (_, tolerance, precision, recall, f, overlap) => {
    const score = noteScore(REFERENCE, ESTIMATE, tolerance);
    expect(score.precision).toBeCloseTo(precision, 6);
    expect(score.recall).toBeCloseTo(recall, 6);
    expect(score.f).toBeCloseTo(f, 6);
    if (overlap !== null) expect(overlapRatio(REFERENCE, ESTIMATE, score.pairs)).toBeCloseTo(overlap, 6);
  });

  it('pairs the published notes', () => {
    expect(noteScore(REFERENCE, ESTIMATE, { offset: 0.2 }).pairs).toEqual([
      [0, 0],
      [3, 3],
    ]);
    expect(noteScore(REFERENCE, ESTIMATE).pairs.map(([i]) => i)).toEqual([0, 1, 3]);
  });

  it('takes a distance of just the tolerance, unless strict', () => {
    const [reference, estimate] = [notes([[0, 1, 100]]), notes([[0.05, 1, 100]])];
    expect(noteScore(reference, estimate).pairs).toEqual([[0, 0]]);
    expect(noteScore(reference, estimate, { strict: true }).pairs).toEqual([]);
  });

  it('matches as many as can be, not the first that fits (by arithmetic)', () => {
    const reference = notes([
      [0, 1, 440],
      [0.04, 1, 440],
    ]);
    const estimate = notes([
      [0.05, 1, 440],
      [-0.05, 1, 440],
    ]);
    expect(noteScore(reference, estimate).f).toBe(1);
  });

  it('is 0 for empty lists', () => {
    expect(noteScore([], ESTIMATE).f).toBe(0);
    expect(noteScore(REFERENCE, []).f).toBe(0);
  });
});

describe('onset scores', () => {
  it('counts a second detection inside a used window as false (by arithmetic)', () => {
    const score = onsetScore([1, 1.5, 2], [1.03, 1.56, 2, 2.04]);
    expect(score.precision).toBeCloseTo(0.5, 6);
    expect(score.recall).toBeCloseTo(0.6667, 4);
    expect(score.f).toBeCloseTo(0.5714, 4);
  });
});

describe('frame scores', () => {
  const reference = [440, 0, 220, 220];
  const estimate = [440.1, 330, 440, 330];
  it.each([
    [[1, 0, 1, 1], 1, 0, 0.5],
    [[0, 1, 0, 0], 0, 1, 0],
    [[0.5, 0.5, 0.5, 0.5], 0.5, 0.5, 0.25],
    [[0.8, 0.2, 0.8, 0.8], 0.8, 0.2, 0.4],
  ])('gives the published figures for voicing %j', (voicing, recall, alarm, overall) => {
    const score = frameScore(reference, estimate, { voicing });
    expect(score.voicingRecall).toBeCloseTo(recall, 9);
    expect(score.falseAlarm).toBeCloseTo(alarm, 9);
    expect(score.pitch).toBeCloseTo(1 / 3, 9);
    expect(score.chroma).toBeCloseTo(2 / 3, 9);
    expect(score.overall).toBeCloseTo(overall, 9);
  });

  it.each([
    [0, 0],
    [10, 0],
    [5, -1200],
    [320, 6000],
    [1420.31238974231, 8580.0773605],
  ])('turns %d Hz into %d cents, as published', (hz, cents) => {
    expect(centsOf(hz)).toBeCloseTo(cents, 6);
  });

  it('holds the pitch across unvoiced readings and interpolates others, as published', () => {
    const times = [0, 1 / 35, 2 / 35, 3 / 35];
    const wanted = Array.from({ length: 9 }, (_, i) => i / 100);
    const expected = [2, 2, 2, 0, 0, 0, -0.8, -0.1, 0.6];
    resampleCents(times, [2, 0, -1, 1], wanted).forEach((cents, i) => {
      expect(cents).toBeCloseTo(expected[i], 6);
    });
  });
});
