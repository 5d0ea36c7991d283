import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import {
  addNote,
  bentBy,
  gridSteps,
  mostTicks,
  moveNote,
  onHole,
  otherBreath,
  removeNote,
  resizeNote,
  snapTo,
  soundNote,
} from '../../../src/core/phrase/edit-phrase';
import type { Phrase, PhraseSound } from '../../../src/core/phrase/phrase';
import { printPhrase } from '../../../src/core/phrase/print-phrase';
import { readPhrase } from '../../../src/core/phrase/read-phrase';
import { readTab } from '../../../src/core/phrase/read-tab';
import { asPitchClass } from '../../../src/core/theory/units';
import { anyPhrase } from '../../helpers/phrase-arbitraries';
import { soakRuns } from '../../helpers/soak';

const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const tabOf = (text: string): PhraseSound => {
  const sound = readTab(text);
  if (sound === null) throw new Error(text);
  return sound;
};
const from = (text: string): Phrase => readPhrase(text, '4/4').phrase;

describe('changing a phrase by hand', () => {
  it.each<[string, string, (phrase: Phrase) => Phrase, string]>([
    [
      'adds in a gap',
      '4:q r 5:h',
      (p) => addNote(p, { at: 480, length: 960, sound: tabOf('-4') }),
      '4:q -4 5:h',
    ],
    [
      'adds within a note',
      '4:w',
      (p) => addNote(p, { at: 480, length: 240, sound: tabOf('-4') }),
      '4:q -4:e r:h+e',
    ],
    [
      'adds behind the end, a bar more',
      '4:w',
      (p) => addNote(p, { at: 1920, length: 480, sound: tabOf('5') }),
      '4:w | 5:q r:h.',
    ],
    ['moves up to its neighbours', '4:q -4 r 5', (p) => moveNote(p, 1, 5000), '4:q r -4 5'],
    ['makes longer up to the next', '4:q r -4:h', (p) => resizeNote(p, 0, 5000), '4:h -4'],
    [
      'changes the hole, and leaves loudness',
      "ff -4~-4'~-4>:h",
      (p) => soundNote(p, 0, tabOf('6')),
      'ff 6>:h r',
    ],
    ['takes out', '4:q -4 5', (p) => removeNote(p, 1), '4:q r 5'],
  ])('%s', (_, before, change, after) => {
    expect(printPhrase(change(from(before)), 'signs')).toBe(after);
  });

  it('goes down the bends of a hole to the overbend and back, along the holes, and to the other breath', () => {
    const steps = ['-3', "-3'", "-3''", "-3'''"].map((tab) => soundId(bentBy(harp, tabOf(tab), 1)));
    expect(steps).toEqual(["3D'", "3D''", "3D'''", "3D'''"]);
    expect(soundId(bentBy(harp, tabOf('6'), 1))).toBe('6OB');
    expect(soundId(bentBy(harp, tabOf('4'), -1))).toBe('4B');
    expect(soundId(onHole(harp, tabOf("-3''"), 2))).toBe("2D''");
    expect(soundId(onHole(harp, tabOf("-3''"), 5))).toBe('5D');
    expect(soundId(onHole(harp, tabOf('10'), 11))).toBe('10B');
    expect(soundId(otherBreath(harp, tabOf("-3'")))).toBe('3B');
  });

  it('snaps to eighths first, to thirds of the beat in 12/8', () => {
    expect(snapTo(300, gridSteps('4/4')[0] ?? 0)).toBe(240);
    expect(gridSteps('12/8')[0]).toBe(240);
    expect(snapTo(-50, 240)).toBe(0);
  });

  it('always leaves notes in order and apart, within sixteen bars, that read back as tab', () => {
    const change = fc.record({
      what: fc.constantFrom('add', 'move', 'resize', 'remove', 'sound'),
      index: fc.nat(8),
      tick: fc.integer({ min: -500, max: 40_000 }),
      length: fc.integer({ min: 1, max: 5000 }),
      sound: fc.constantFrom(...['4', '-4', "-3''", '6o', '10'].map(tabOf)),
    });
    const short = anyPhrase.filter((phrase) => phrase.length <= mostTicks(phrase));
    fc.assert(
      fc.property(short, fc.array(change, { maxLength: 12 }), (phrase, changes) => {
        const changed = changes.reduce((now, { what, index, tick, length, sound }) => {
          if (what === 'add') return addNote(now, { at: tick, length, sound });
          if (what === 'move') return moveNote(now, index, tick);
          if (what === 'resize') return resizeNote(now, index, length);
          return what === 'remove' ? removeNote(now, index) : soundNote(now, index, sound);
        }, phrase);
        expect(changed.length).toBeLessThanOrEqual(mostTicks(changed));
        expect(readPhrase(printPhrase(changed, 'signs'), changed.meter).phrase).toEqual(changed);
      }),
      { numRuns: soakRuns(100) },
    );
  });
});
