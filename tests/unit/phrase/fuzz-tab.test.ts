import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MeterName } from '../../../src/core/chart/chart';
import { HOLES } from '../../../src/core/harp/build-harp';
import { TAB_STYLES, tab } from '../../../src/core/harp/tab';
import { printPhrase } from '../../../src/core/phrase/print-phrase';
import { readPhrase } from '../../../src/core/phrase/read-phrase';
import { readTab } from '../../../src/core/phrase/read-tab';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const runs = { numRuns: soakRuns() };
const word = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.string({ unit: fc.constantFrom(...'0123456789+-−–bdBDoO↑↓\'’′"″”/○°#'), maxLength: 6 }),
  },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 8 }) },
);
const SOUNDS = [
  '4',
  '-4',
  "-3'",
  '-3"',
  '6o',
  '7D',
  "10B''",
  '(1 2 3)',
  '(-2 -3)',
  '(4 -4)',
  'r',
  '|',
  '99',
  '-2',
];
const LENGTHS = ['', '', '', ':q', ':e', ':h', ':w', ':s', ':q.', ':et', ':qt', ':x', ':'];
const phraseText = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .array(fc.tuple(fc.constantFrom(...SOUNDS), fc.constantFrom(...LENGTHS)), { maxLength: 9 })
      .map((words) => words.map((parts) => parts.join('')).join(' ')),
  },
  {
    weight: 1,
    arbitrary: fc.string({ unit: fc.constantFrom(...'0123456789-+()|:r qeht.\'"od\n'), maxLength: 20 }),
  },
);
const meter = fc.constantFrom<MeterName>('4/4', '12/8');

describe('reading tab, tried at random', () => {
  it(
    'one sound: nothing, or a sound that every style writes and reads back',
    () => {
      let read = 0;
      fc.assert(
        fc.property(word, (text) => {
          const sound = readTab(text);
          if (sound === null) return true;
          read += 1;
          return (
            sound.hole >= 1 &&
            sound.hole <= HOLES.most &&
            (sound.technique === 'bend') === sound.bend > 0 &&
            TAB_STYLES.every(({ id }) => JSON.stringify(readTab(tab(sound, id))) === JSON.stringify(sound))
          );
        }),
        runs,
      );
      expect(read).toBeGreaterThan(runs.numRuns / 100);
    },
    SOAK_TIMEOUT,
  );

  it(
    'a phrase: what is left out is said, and what is read is printed and read back the same',
    () => {
      fc.assert(
        fc.property(phraseText, meter, fc.constantFrom(...TAB_STYLES), (text, name, { id }) => {
          const { phrase, problems } = readPhrase(text, name);
          const words = text.match(/[^\s|()]+/g) ?? [];
          const said =
            problems.length > 0 || phrase.notes.length > 0 || words.every((each) => /^r(:\S*)?$/i.test(each));
          const again = readPhrase(printPhrase(phrase, id), name);
          return (
            said &&
            problems.every(({ what, advice }) => what.endsWith('.') && advice.endsWith('.')) &&
            JSON.stringify(again.phrase) === JSON.stringify(phrase)
          );
        }),
        runs,
      );
    },
    SOAK_TIMEOUT,
  );
});
