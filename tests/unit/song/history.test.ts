import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type History, MOST_STEPS, record, redo, startHistory, undo } from '../../../src/core/song/history';

const written = (texts: readonly string[]): History<string> =>
  texts.reduce<History<string>>(record, startHistory(''));

describe('history', () => {
  it('goes back and forth through what was written', () => {
    const history = written(['C7', 'C7 F7', 'C7 F7 G7']);
    expect(undo(history).present).toBe('C7 F7');
    expect(undo(undo(history)).present).toBe('C7');
    expect(redo(undo(history))).toEqual(history);
    expect(record(undo(history), 'C7 Fm7')).toMatchObject({ present: 'C7 Fm7', future: [] });
  });

  it('stops at both ends and takes no step for the same value', () => {
    const history = startHistory('C7');
    expect([undo(history), redo(history), record(history, 'C7')]).toEqual([history, history, history]);
  });

  it('forgets the oldest steps', () => {
    const history = written(Array.from({ length: MOST_STEPS + 5 }, (_, i) => `${i}`));
    expect(history.past).toHaveLength(MOST_STEPS);
    expect(history.past[0]).toBe('4');
  });

  it('undoes any number of steps and redoes them exactly', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { maxLength: 20 }), fc.nat(25), (texts, steps) => {
        const history = written(texts);
        const times = Math.min(steps, history.past.length);
        let moved = history;
        for (let i = 0; i < times; i += 1) moved = undo(moved);
        for (let i = 0; i < times; i += 1) moved = redo(moved);
        expect(moved).toEqual(history);
      }),
    );
  });
});
