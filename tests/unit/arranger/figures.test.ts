import { describe, expect, it } from 'vitest';
import { FEEL_IDS, feelOf } from '../../../src/core/feels/feels';
import { swingRatio } from '../../../src/core/score/swing';
import { measureFeel } from '../../helpers/measure-score';

/** Bounds of this project, not of a source: outside them a band is empty, crowded, jumpy or mechanical. */
describe.each(FEEL_IDS)('the figures of %s', (feel) => {
  const figures = measureFeel(feel, 11);

  it('keep each part within a playable density, in events a bar', () => {
    expect(figures.drums).toBeGreaterThan(8);
    expect(figures.drums).toBeLessThan(26);
    expect(figures.bass).toBeGreaterThan(2);
    expect(figures.bass).toBeLessThan(8.5);
    expect(figures.chords).toBeGreaterThan(1);
    expect(figures.chords).toBeLessThan(7);
  });

  it('swing as asked, within two per cent', () => {
    const { swing, tempo } = { swing: 'feel', tempo: feelOf(feel).tempo.usual } as const;
    const asked = swingRatio(feelOf(feel), { swing, tempo, part: 'drums' });
    expect(Math.abs((figures.swing ?? 0) / asked - 1)).toBeLessThan(0.02);
  });

  it('lead the chords by less than two semitones a voice, and not by nothing', () => {
    expect(figures.movement).toBeLessThan(2);
    expect(figures.movement).toBeGreaterThan(0.3);
  });

  it('repeat no more than a quarter of the bars note for note', () => {
    expect(figures.repeatedBars).toBeLessThan(0.25);
  });
});
