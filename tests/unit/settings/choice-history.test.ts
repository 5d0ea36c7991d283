import { describe, expect, it } from 'vitest';
import { recordChoice, redoChoice, undoChoice } from '../../../src/core/settings/choice-history';
import { choiceName } from '../../../src/core/settings/choice-name';
import { type ChoiceHistory, NO_CHOICES } from '../../../src/core/settings/choice-steps';
import { DEFAULT_SETTINGS as D } from '../../../src/core/settings/defaults';
import type { Settings } from '../../../src/core/settings/settings';
import { withFeel, withForm, withHarpKey, withPosition } from '../../../src/core/song/key-coupling';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';

const pinned = { ...D, songPinned: true };
const repeated = { ...D, plan: { ...D.plan, repeat: { from: 0, to: 3 } } };

describe('the name of a choice', () => {
  it.each<[string, Settings, Settings]>([
    ['tempo', D, { ...D, tempo: asBpm(90) }],
    ['harp and song key', D, withHarpKey(D, asPitchClass(5))],
    ['position and song key', D, withPosition(D, 3)],
    ['harp and position', pinned, withPosition(pinned, 3)],
    ['form', repeated, withForm(repeated, 'standard')],
    ['repeat', D, repeated],
    ['feel', D, withFeel(D, 'rock')],
    ['tempo and feel', D, withFeel(D, 'slow-12-8')],
    ['volume', D, { ...D, mix: { ...D.mix, master: 0.2 } }],
    ['calls', D, { ...D, trade: { ...D.trade, calls: '4' } }],
    ['day or night look', D, { ...D, look: 'night' }],
    ['', D, { ...D, plan: { ...D.plan } }],
  ])('is “%s”', (name, from, to) => expect(choiceName(from, to)).toBe(name));
});

const slow = { ...D, tempo: asBpm(60) };
const record = (history: ChoiceHistory, from: Settings, to: Settings, joins = false): ChoiceHistory =>
  recordChoice(history, from, to, joins);

describe('the history of choices', () => {
  it('takes choices back one by one and makes them again', () => {
    const night: Settings = { ...slow, look: 'night' };
    const history = record(record(NO_CHOICES, D, slow), slow, night);
    const once = undoChoice(history, night);
    expect([once?.name, once?.settings]).toEqual(['day or night look', slow]);
    const twice = once && undoChoice(once.history, once.settings);
    expect([twice?.name, twice?.settings]).toEqual(['tempo', D]);
    expect(twice && undoChoice(twice.history, D)).toBeNull();
    const again = twice && redoChoice(twice.history, twice.settings);
    expect([again?.name, again?.settings]).toEqual(['tempo', slow]);
  });

  it('leaves what came in otherwise since', () => {
    const history = record(NO_CHOICES, D, slow);
    const calls = { ...slow, trade: { ...slow.trade, calls: '4 -4' } };
    expect(undoChoice(history, calls)?.settings).toEqual({ ...D, trade: calls.trade });
  });

  it('joins a drag to one step, and forgets one that ends where it began', () => {
    const at = (tempo: number) => ({ ...D, tempo: asBpm(tempo) });
    const dragged = record(record(NO_CHOICES, at(100), at(101)), at(101), at(102), true);
    expect(dragged.past.map(({ from, to }) => [from.tempo, to.tempo])).toEqual([[100, 102]]);
    expect(record(dragged, at(102), at(100), true).past).toEqual([]);
  });

  it('forgets what was undone at the next choice, and is none the longer for no choice', () => {
    const undone = undoChoice(record(NO_CHOICES, D, slow), slow);
    const next = record(undone?.history ?? NO_CHOICES, D, { ...D, look: 'day' });
    expect([next.past.length, next.future]).toEqual([1, []]);
    expect(record(NO_CHOICES, D, { ...D })).toEqual(NO_CHOICES);
  });
});
