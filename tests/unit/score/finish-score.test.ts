import { describe, expect, it } from 'vitest';
import { excerpt } from '../../../src/core/chart/excerpt';
import { finishScore } from '../../../src/core/score/finish-score';
import { noteEvent } from '../../../src/core/score/note';
import type { PartId } from '../../../src/core/score/score';
import { silentBars, withoutBars } from '../../../src/core/score/silence';
import { testChart } from '../../helpers/test-charts';

const chart = excerpt(testChart(), 0, 2);
const note = (part: PartId, at: number, length: number, pitch = 40, velocity = 80) =>
  noteEvent(part, { at, length, pitch, velocity });
const texts = (events: readonly { part: string; at: number; length: number; velocity: number }[]) =>
  events.map(({ part, at, length, velocity }) => `${part} ${at}+${length} v${velocity}`);

describe('finishing a score', () => {
  it.each([
    ['sorts', [note('bass', 480, 100), note('bass', 0, 100)], ['bass 0+100 v80', 'bass 480+100 v80']],
    ['cuts what rings over the end', [note('chords', 3800, 100)], ['chords 3800+40 v80']],
    ['leaves out what starts after it', [note('chords', 3840, 100), note('chords', -5, 9)], []],
    [
      'ends a bass note where the next begins',
      [note('bass', 0, 500, 40), note('bass', 480, 100, 45)],
      ['bass 0+480 v80', 'bass 480+100 v80'],
    ],
    [
      'lets different keys of the chord part ring together',
      [note('chords', 0, 500, 60), note('chords', 100, 500, 64)],
      ['chords 0+500 v80', 'chords 100+500 v80'],
    ],
    [
      'ends a key where it is struck again',
      [note('chords', 0, 500, 60), note('chords', 100, 500, 60)],
      ['chords 0+100 v80', 'chords 100+500 v80'],
    ],
    [
      'keeps the louder of two strokes at once',
      [note('drums', 0, 50, 38, 30), note('drums', 0, 50, 38, 100), note('drums', 0, 50, 38, 60)],
      ['drums 0+50 v100'],
    ],
  ])('%s', (_, events, expected) => {
    expect(texts(finishScore(chart, events).events)).toEqual(expected);
  });

  it('keeps velocities in 1–127 and lengths of at least one tick', () => {
    expect(note('bass', 0, 0, 40, 300)).toMatchObject({ length: 1, velocity: 127 });
    expect(note('bass', 0.4, 10.6, 40, -3)).toMatchObject({ at: 0, length: 11, velocity: 1 });
  });
});

describe('silent bars', () => {
  it.each([
    [{ play: 2, rest: 1 }, 0, 6, '..x..x'],
    [{ play: 2, rest: 2 }, 1, 6, 'xx..xx'],
    [{ play: 4, rest: 4 }, 0, 3, '...'],
  ])('of %j in chorus %s of %s bars: %s', (dropOut, chorus, bars, expected) => {
    expect(
      silentBars(dropOut, chorus, bars)
        .map((silent) => (silent ? 'x' : '.'))
        .join(''),
    ).toBe(expected);
  });

  it('need whole bars of each', () => {
    expect(() => silentBars({ play: 0, rest: 1 }, 0, 4)).toThrow(
      'A drop-out needs 1 bar or more of each, got play 0, rest 1',
    );
  });

  it('hold nothing, and cut what rings into them', () => {
    const score = finishScore(chart, [
      note('bass', 1900, 300),
      note('drums', 1920, 50),
      note('chords', 2500, 10),
    ]);
    expect(texts(withoutBars(score, chart, [false, true]).events)).toEqual(['bass 1900+20 v80']);
  });
});
