import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METERS } from '../../../src/core/chart/build-chart';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Harp } from '../../../src/core/harp/harp';
import { soundId, TAB_STYLES, tab } from '../../../src/core/harp/tab';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { mostTicks } from '../../../src/core/phrase/edit-phrase';
import { printLength, readLength } from '../../../src/core/phrase/note-lengths';
import { parsePhrase } from '../../../src/core/phrase/parse-phrase';
import { onHarp, type Phrase, type PhraseManner, phraseSound } from '../../../src/core/phrase/phrase';
import { phraseLead } from '../../../src/core/phrase/phrase-lead';
import { phraseWords } from '../../../src/core/phrase/phrase-words';
import { printPhrase } from '../../../src/core/phrase/print-phrase';
import { readPhrase } from '../../../src/core/phrase/read-phrase';
import { readTab } from '../../../src/core/phrase/read-tab';
import type { NoteEvent } from '../../../src/core/score/score';
import { asPitchClass, asTicks } from '../../../src/core/theory/units';
import { anyPhrase } from '../../helpers/phrase-arbitraries';
import { problemSentence } from '../../helpers/problem-sentence';

const cHarp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

/** A phrase as `at+length:ids` words. */
const row = ({ notes }: Phrase): string =>
  notes.map(({ at, length, sounds }) => `${at}+${length}:${sounds.map(soundId).join('&')}`).join(' ');

describe('readTab', () => {
  it.each([
    ['4', '4B'],
    ['+4', '4B'],
    ['-4', '4D'],
    ['−3″', "3D''"],
    [`-3"'`, "3D'''"],
    ["8'", "8B'"],
    ['6o', '6OB'],
    ['-7°', '7OD'],
    ['4b', '4B'],
    ["3D''", "3D''"],
    ['6OB', '6OB'],
    ['7od', '7OD'],
    ['4↑', '4B'],
    ['3↓//', "3D''"],
    ['6↑○', '6OB'],
    ['14', '14B'],
  ])('%s is %s', (text, id) => {
    const sound = readTab(text);
    expect(sound === null ? null : soundId(sound)).toBe(id);
  });

  it.each(['', '0', '15', 'x', '-4B', '4B↑', "6o'", '6OBo', '--4', '4DD', '4:q', 'r', "4''''''''''''"])(
    '%s is none',
    (text) => {
      expect(readTab(text)).toBeNull();
    },
  );

  it('reads every sound of every harp in every style', () => {
    for (const tuning of TUNINGS) {
      for (const sound of buildHarp({ tuning, key: asPitchClass(0), octave: 0 }).sounds) {
        for (const { id } of TAB_STYLES) expect(readTab(tab(sound, id))).toEqual(phraseSound(sound));
      }
    }
  });
});

describe('note lengths', () => {
  it.each([
    ['w', 1920],
    ['h.', 1440],
    ['q', 480],
    ['et', 160],
    ['s.', 180],
    ['h+e', 1200],
    ['37', 37],
  ])('%s is %i ticks and is written so', (text, ticks) => {
    expect(readLength(text)).toBe(ticks);
    expect(printLength(asTicks(ticks))).toBe(text);
  });

  it.each(['', 'x', 'q..', '0', '-1', 'q+', '1.5', 'Infinity', '9999999'])('%s is none', (text) => {
    expect(readLength(text)).toBeNull();
  });

  it('reads back whatever it writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), (ticks) => {
        expect(readLength(printLength(asTicks(ticks)))).toBe(ticks);
      }),
    );
  });
});

describe('readPhrase', () => {
  it.each([
    ["-2:q -3':e -3 4:h", "0+480:2D 480+240:3D' 720+240:3D 960+960:4B"],
    ['4 r 4:h', '0+480:4B 960+960:4B'],
    ['(-2 -3 -4):h. r:q | 2D:w', '0+1440:2D&3D&4D 1920+1920:2D'],
    ['4↑:et 4↓ 5↑', '0+160:4B 160+160:4D 320+160:5B'],
    ['', ''],
  ])('%j', (text, expected) => {
    const { phrase, problems, source } = readPhrase(text, '4/4');
    expect(row(phrase)).toBe(expected);
    expect(problems).toEqual([]);
    expect(source).toBe(text);
  });

  it('begins with a beat of the meter', () => {
    expect(row(readPhrase('4 -4', '12/8').phrase)).toBe('0+720:4B 720+720:4D');
  });

  it.each([
    ['4:q huh -4', 'Line 1, column 5: "huh" is not a note; it stays silent.', '0+480:4B 960+480:4D'],
    ['4:x -4', 'Line 1, column 1: "x" is not a note length', '0+480:4B 480+480:4D'],
    ['\n(4 -4):h -4', 'Line 2, column 1: "(4 -4):h" blows and draws at once', '960+960:4D'],
    ['4:h |', 'Line 1, column 5: Before this bar line there are 2 beats, not 4. Add a note', '0+960:4B'],
    ['4:w+h | -4:w', 'there are 6 beats, not 4. Make a note shorter', '0+2880:4B 2880+1920:4D'],
    ['4:w '.repeat(17), 'column 65: A phrase holds 16 bars', null],
    ['4 (', '"(" is not a note', '0+480:4B'],
  ])('%j is explained', (text, sentence, expected) => {
    const { phrase, problems } = readPhrase(text, '4/4');
    expect(problems.map(problemSentence)).toEqual([expect.stringContaining(sentence)]);
    if (expected !== null) expect(row(phrase)).toBe(expected);
  });

  it('never throws, and gives notes in order within the phrase', () => {
    const word = fc.constantFrom(
      '4',
      "-3'",
      '6OB',
      '(2 3',
      ')',
      '(-2 -3)',
      ':',
      ':q',
      'r',
      '|',
      '\n',
      ' ',
      ':h+e',
      'x',
      '99',
    );
    const text = fc.oneof(
      fc.array(word, { maxLength: 30 }).map((words) => words.join('')),
      fc.string({ unit: 'binary' }),
    );
    fc.assert(
      fc.property(text, (source) => {
        const { phrase } = readPhrase(source, '4/4');
        let at = 0;
        for (const note of phrase.notes) {
          expect(note.at).toBeGreaterThanOrEqual(at);
          at = note.at + note.length;
        }
        expect(at).toBeLessThanOrEqual(phrase.length);
        expect(readPhrase(printPhrase(phrase, 'letters'), '4/4').phrase).toEqual(phrase);
      }),
      { numRuns: 300 },
    );
  });
});

/** How the notes of a text are played: everything but place, length and sounds. */
const manners = (text: string): readonly PhraseManner[] =>
  readPhrase(text, '4/4').phrase.notes.map(({ at: _, length: __, sounds: ___, ...manner }) => manner);

describe('how notes are played', () => {
  it.each<[string, readonly PhraseManner[]]>([
    ["-4~-4'~-4:h", [{ curve: [0, 100, 0] }]],
    ["-3'-30c", [{ curve: [130] }]],
    ["-3'-50c~-3''", [{ curve: [150, 200] }]],
    ['-1..-4:q', [{ slide: 1 }]],
    ['4*5:h', [{ shake: 5 }]],
    ['4> (2 5)>', [{ accent: true }, { accent: true }]],
    ['p 4 -4 ff 5 mf 6', [{ dynamic: 'p' }, { dynamic: 'p' }, { dynamic: 'ff' }, {}]],
    ["6↓~6↓/:q 5D..3D'~3D''>", [{ curve: [0, 100] }, { slide: 5, curve: [100, 200], accent: true }]],
  ])('%s', (text, expected) => {
    expect(readPhrase(text, '4/4').problems).toEqual([]);
    expect(manners(text)).toEqual(expected);
  });

  it.each([
    ['-4~-5', 'a curve stays on one hole and breath'],
    ['6o~6', 'an overbend has no curve'],
    ['1..-4', 'a slide begins on another hole of the same breath'],
    ['4*-5', 'a shake goes to another hole of the same breath'],
    ["-4~-4'*-5", 'a shake has no curve'],
  ])('%s is held, and said to be', (text, why) => {
    const { problems } = readPhrase(`4 ${text}`, '4/4');
    expect(problems.map(problemSentence)).toEqual([
      expect.stringContaining(`Line 1, column 3: "${text}": ${why}`),
    ]);
    expect(manners(text)).toEqual([{}]);
  });

  it('is said in words', () => {
    const words = (text: string): string => phraseWords(readPhrase(text, '4/4').phrase);
    expect(words("-4~-4'~-4:w")).toBe(
      'Bar 1: hole 4 draw, whole, bending over the natural note, a semitone down, the natural note.',
    );
    expect(words('f 1..4*5:h (1 4)>:h')).toBe(
      'Bar 1: hole 4 blow, half, slid into from hole 1, shaken with hole 5, loud; ' +
        'holes 1 blow and 4 blow, half, the holes between blocked, accented, loud.',
    );
  });

  it('is mended in what is stored, note by note', () => {
    const { phrase } = readPhrase("-4~-4':h 4*5:h", '4/4');
    const [bent, shaken] = phrase.notes;
    const read = parsePhrase({
      ...phrase,
      notes: [
        { ...bent, curve: [300, 'x'] },
        { ...shaken, shake: 99 },
      ],
    });
    expect(read.mended).toEqual(['How 2 notes are played could not be read.']);
    expect(read.phrase?.notes).toEqual([
      { at: 0, length: 960, sounds: bent?.sounds },
      { at: 960, length: 960, sounds: shaken?.sounds },
    ]);
  });
});

describe('printPhrase', () => {
  it('writes bar lines, and lengths only where they change', () => {
    const { phrase } = readPhrase("-2:q -3' -3 4 | r:h 4:q r", '4/4');
    expect(printPhrase(phrase, 'signs')).toBe("-2:q -3' -3 4 | r:h 4:q r");
    expect(printPhrase(phrase, 'arrows')).toBe('2↓:q 3↓/ 3↓ 4↑ | r:h 4↑:q r');
  });

  it('reads back as the same phrase in every style', () => {
    fc.assert(
      fc.property(anyPhrase, fc.constantFrom(...TAB_STYLES), (phrase, { id }) => {
        const reading = readPhrase(printPhrase(phrase, id), phrase.meter);
        if (phrase.length <= 16 * METERS[phrase.meter].beats * METERS[phrase.meter].beatTicks) {
          expect(reading.phrase).toEqual(phrase);
          expect(reading.problems.filter(({ what }) => !what.includes('bar line'))).toEqual([]);
        }
      }),
      { numRuns: 1000 },
    );
  });
});

describe('parsePhrase', () => {
  it('takes back what was stored', () => {
    fc.assert(
      fc.property(
        anyPhrase.filter((phrase) => phrase.length <= mostTicks(phrase)),
        (phrase) => {
          expect(parsePhrase(JSON.parse(JSON.stringify(phrase)))).toEqual({ phrase, mended: [] });
        },
      ),
    );
  });

  // A note in bar four billion made the page write out every bar before it, and again at each visit.
  it('ends where a phrase ends, wherever a note of it stands', () => {
    const { phrase } = readPhrase('4:q', '4/4');
    const [first] = phrase.notes;
    const read = parsePhrase({ meter: '4/4', length: 9e15, notes: [first, { ...first, at: 8e15 }] });
    expect(read.phrase).toEqual(phrase);
    expect(read.mended).toEqual([
      'A phrase holds 16 bars: 1 of 2 notes after them were left out.',
      'The length of the phrase did not fit its notes and was set anew.',
    ]);
  });

  it('mends what it can and says what it left out', () => {
    const { phrase } = readPhrase('4:q -4 5', '4/4');
    const [first, ...others] = phrase.notes;
    expect(parsePhrase({ ...phrase, notes: [first, { at: 3 }, 'x', ...others] })).toEqual({
      phrase,
      mended: ['2 of 5 notes could not be read and were left out.'],
    });
    expect(parsePhrase({ ...phrase, length: 5 }).mended).toEqual([
      'The length of the phrase did not fit its notes and was set anew.',
    ]);
    const wrong = { hole: 4, breath: 'draw', technique: 'natural', bend: 2 };
    expect(parsePhrase({ ...phrase, notes: [{ at: 0, length: 5, sounds: [wrong] }] }).phrase?.notes).toEqual(
      [],
    );
  });

  it.each([
    ['minus zero as the length', { meter: '4/4', length: -0, notes: [] }],
    ['minus zero as a beginning', { meter: '4/4', length: 480, notes: [{ at: -0, length: 480 }] }],
    ['an end past the whole numbers', { meter: '4/4', length: 0, notes: [{ at: 2 ** 53 - 1, length: 9 }] }],
  ])('gives what JSON keeps, whatever it was given: %s', (_, { notes, ...value }) => {
    const sounds = [{ hole: 4, breath: 'blow', technique: 'natural', bend: 0 }];
    const { phrase } = parsePhrase({ ...value, notes: notes.map((note) => ({ ...note, sounds })) });
    expect(parsePhrase(JSON.parse(JSON.stringify(phrase)))).toEqual({ phrase, mended: [] });
  });

  it('never throws and never lets a bad phrase through', () => {
    const anything = fc.anything({ withNullPrototype: true });
    const close = fc.record(
      {
        meter: fc.constantFrom('4/4', '5/4', '__proto__', null),
        length: fc.oneof(fc.integer(), anything),
        notes: fc.array(
          fc.record(
            {
              at: fc.oneof(fc.integer(), anything),
              length: fc.oneof(fc.nat(), anything),
              sounds: fc.oneof(
                fc.constant([
                  phraseSound(cHarp.sounds[0] ?? { hole: 1, breath: 'blow', technique: 'natural', bend: 0 }),
                ]),
                anything,
              ),
            },
            { requiredKeys: [] },
          ),
        ),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.oneof(anything, close), (value) => {
        const { phrase, mended } = parsePhrase(value);
        if (phrase === null) expect(mended).toHaveLength(1);
        else expect(parsePhrase(JSON.parse(JSON.stringify(phrase)))).toEqual({ phrase, mended: [] });
      }),
      { numRuns: 500 },
    );
  });
});

describe('onHarp', () => {
  it('finds the sounds and names the missing ones once', () => {
    const { phrase } = readPhrase("-2:q -5' -5' 12 (-2 -13)", '4/4');
    const { notes, missing } = onHarp(phrase, cHarp);
    expect(notes.map(({ at, sounds }) => [at, sounds.map(({ pitch }) => pitch)])).toEqual([
      [0, [67]],
      [1920, [67]],
    ]);
    expect(missing).toEqual(["5D'", '12B', '13D']);
  });
});

describe('a phrase in another key', () => {
  it('moves whole: every event by the same interval', () => {
    fc.assert(
      fc.property(anyPhrase, fc.integer({ min: 0, max: 11 }).map(asPitchClass), (phrase, key) => {
        const other = buildHarp({ tuning: RICHTER, key, octave: 0 });
        const by = (other.reeds[0]?.pitch ?? 0) - (cHarp.reeds[0]?.pitch ?? 0);
        const rounded = (harp: Harp, up: number): readonly unknown[] =>
          phraseLead(phrase, { harp, at: asTicks(0), swing: 2 }).map(({ pitch, glideFrom = 0, ...note }) => ({
            ...note,
            cents: Math.round(100 * (pitch + up)),
            glide: Math.round(100 * glideFrom),
          }));
        expect(rounded(other, 0)).toEqual(rounded(cHarp, by));
      }),
    );
  });
});

describe('phraseLead', () => {
  it('plays a phrase at its place, swung, with slides and chords', () => {
    const { phrase } = readPhrase("-3:e -3' (-2 -3):h", '4/4');
    expect(phraseLead(phrase, { harp: cHarp, at: asTicks(1920), swing: 2 })).toMatchObject([
      { at: 1920, length: 320, pitch: 71 },
      { at: 2240, length: 160, pitch: 70, glideFrom: 1 },
      { at: 2400, length: 960, pitch: 67 },
      { at: 2400, length: 960, pitch: 71 },
    ]);
  });

  const played = (text: string): readonly string[] =>
    phraseLead(readPhrase(text, '4/4').phrase, { harp: cHarp, at: asTicks(0), swing: 1 }).map(
      ({ at, length, pitch, velocity, glideFrom = 0 }) =>
        `${at}+${length} ${pitch}${glideFrom === 0 ? '' : ` from ${glideFrom}`} v${velocity}`,
    );

  it.each<[string, readonly string[]]>([
    // C harp: 4 draw is D5 = 74, and its bend C#5 = 73.
    ["-4~-4'~-4:h", ['0+480 73 from 1 v92', '480+480 74 from -1 v92']],
    ["-4~-4~-4'~-4':w", ['0+640 74 v92', '640+1280 73 from 1 v92']],
    ['-4-50c:h', ['0+960 73.5 v92']],
    // 1, 2, 3 blow are C4, E4, G4 = 60, 64, 67, and 4 blow C5 = 72.
    ['1..4:h', ['0+36 60 v92', '36+36 64 v92', '72+36 67 v92', '108+852 72 v92']],
    ['4*5:e', ['0+80 72 v92', '80+80 76 v84', '160+80 72 v92']],
    ['pp 4>:q ff -4', ['0+440 72 v66', '480+480 74 v118']],
  ])('plays %s as it is written', (text, events) => {
    expect(played(text)).toEqual(events);
  });

  it('is always a lead part in order', () => {
    fc.assert(
      fc.property(anyPhrase, fc.double({ min: 1, max: 3.5, noNaN: true }), (phrase, swing) => {
        const events: readonly NoteEvent[] = phraseLead(phrase, { harp: cHarp, at: asTicks(0), swing });
        events.forEach(({ at, length, part }, i) => {
          expect(part).toBe('lead');
          expect(length).toBeGreaterThan(0);
          const next = events.slice(i + 1).find((each) => each.at > at);
          if (next !== undefined) expect(at + length).toBeLessThanOrEqual(next.at);
        });
        expect(events.map(({ at }) => at)).toEqual(events.map(({ at }) => at).sort((a, b) => a - b));
      }),
    );
  });
});
