/**
 * Calls and exercises to begin with, composed for this program and its invented class, which meets on Thursdays in a
 * village hall; none is borrowed. All calls are in second position, two bars of 4/4, over the home chord.
 */
import type { FormId } from '../chart/forms';
import type { FeelId } from '../feels/feels';
import { readPhrase } from '../phrase/read-phrase';
import type { CallLevel } from '../practice/call-levels';
import type { PartnerChoice } from '../settings/practice-settings';
import type { KeptPhrase } from './kept-phrase';

type Row = readonly [name: string, tab: string];

const FIRST: readonly Row[] = [
  ['Kettle on', '-2:q -2 -3:h | -2:h r'],
  ['Coat hooks', '-4:q -3 -2:h | -2:h r'],
  ['Stacking chairs', '-2:q 3 -3 3 | -2:h r'],
  ['Side door', '-4:h -3 | -2:h r'],
  ['Notice board', '-2:q -3 -4 -3 | -2:h r'],
  ['Tea urn', '-1:q -2:h. | -3:q -2 r:h'],
  ['Biscuit tin', '-4:q 4 -3:h | -2:q -2 r:h'],
  ['Hall key', 'r:q -4 -4 -3 | -2:h r'],
];

const SECOND: readonly Row[] = [
  ['Wet umbrella', "-2:q -3':e -3 -4:q 4 | -3:q -2 r:h"],
  ['Trestle table', "-4:e -4' 4:q -3 -2 | -3:q -2 r:h"],
  ['Piano stool', '6:e -5 -4:q -5:e -4 4:q | -3:q -2 r:h'],
  ['Late bus', '-2:e -3 -4 -5 6:q -5 | -4:q -3:e -2 r:h'],
  ['Lost glove', "-3':q -2 -3':e -2 -1:q | -2:h r"],
  ['Raffle tickets', '-4>:q r -4:e -5 6:q | 6:e -5 -4:q r:h'],
  ['Bunting', '-1..-4:h -3:e -2 -3:q | -2:h r'],
  ['Fuse box', '-4*-5:h -4:q -3 | -2:h r'],
];

const THIRD: readonly Row[] = [
  ['Draughty window', "-2:e -3' -3 -4 -5:q -4:e -3 | -2:q r:e -1 r:h"],
  ['Stage curtain', "6:e -5 -4 -4' 4:q -3 | -2:h r"],
  ['Jumble box', "-3~-3'~-3:h -2:e -3' -2:q | -1:q -2 r:h"],
  ['Fire bucket', "-2'':e -2' -2:q -3':e -3 -4:q | -5:q -4 r:h"],
  ['Two left boots', '(-2 -3 -4)>:q r:e (-3 -4) (-4 -5):q r | -2:h r'],
  ['Puddle by the gate', '-4:et -5 6 -5:q -4:e 4 -3:q | -2:h r'],
  ['Weathercock', "9:e 9' 9:q -9:e -8 8:q | 9:h r"],
  ['Double doors', '(1 4):h (2 5):q (3 6) | (3 6):h r'],
];

const LEVELS: readonly (readonly [CallLevel, readonly Row[]])[] = [
  [1, FIRST],
  [2, SECOND],
  [3, THIRD],
];

/** The calls, the first level first. */
export const STARTER_CALLS: readonly KeptPhrase[] = LEVELS.flatMap(([level, rows]) =>
  rows.map(([name, tab]): KeptPhrase => {
    const id = `starter ${name.toLowerCase()}`;
    const { phrase } = readPhrase(tab, '4/4');
    return { id, name, phrase, position: 2, level, words: '', tags: ['village hall'], earlier: [] };
  }),
);

/** An exercise: what is traded over which music. */
export interface StarterExercise {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  /** Names of its calls; without any they are made up. */
  readonly calls: readonly string[];
  readonly partner: Partial<PartnerChoice>;
  readonly formId: FormId;
  readonly feel: FeelId;
  readonly tempo: number;
}

const named = (rows: readonly Row[], from = 0, to = rows.length): readonly string[] =>
  rows.slice(from, to).map(([name]) => name);

/** Eight evenings of the class, easy ones first. */
export const STARTER_EXERCISES: readonly StarterExercise[] = [
  {
    ...{ id: 'first-evening', name: 'First evening', formId: 'standard', feel: 'shuffle', tempo: 76 },
    about: 'Three notes, slowly. Listen through the gap before you breathe in.',
    calls: named(FIRST, 0, 4),
    partner: { mode: 'echo', level: 1, plan: '2+2', after: 'clean' },
  },
  {
    ...{ id: 'round-the-tables', name: 'Round the tables', formId: 'standard', feel: 'shuffle', tempo: 84 },
    about: 'One after the other round the room: each answers one call.',
    calls: named(FIRST, 4),
    partner: { mode: 'echo', level: 1, plan: '2+2', after: 'on' },
  },
  {
    ...{ id: 'short-and-back', name: 'Short and back', formId: 'standard', feel: 'shuffle', tempo: 92 },
    about: 'One bar, one bar: no time to think, and none needed.',
    calls: [],
    partner: { mode: 'echo', level: 1, plan: '1+1', after: 'on' },
  },
  {
    ...{ id: 'the-first-bend', name: 'The first bend', formId: 'quick-change', feel: 'shuffle', tempo: 80 },
    about: 'Calls with one bend each, repeated until it sits.',
    calls: named(SECOND, 0, 5),
    partner: { mode: 'echo', level: 2, plan: '2+2', after: 'clean' },
  },
  {
    ...{ id: 'slower-please', name: 'Slower, please', formId: 'standard', feel: 'shuffle', tempo: 96 },
    about: 'It comes slower when it was not clean, and back up when it was.',
    calls: named(SECOND, 3),
    partner: { mode: 'echo', level: 2, plan: '2+2', after: 'slower' },
  },
  {
    ...{
      id: 'say-something-back',
      name: 'Say something back',
      formId: 'standard',
      feel: 'slow-12-8',
      tempo: 60,
    },
    about: 'Your own answer: begin as the call began, land on the chord, leave a rest.',
    calls: [],
    partner: { mode: 'answer', level: 2, plan: '2+2', after: 'on' },
  },
  {
    ...{ id: 'you-call', name: 'You call', formId: 'standard', feel: 'shuffle', tempo: 88 },
    about: 'You play first; the harp voice says it back with another end.',
    calls: [],
    partner: { mode: 'lead', level: 2, plan: '2+2', after: 'on' },
  },
  {
    ...{
      id: 'back-row-evening',
      name: 'Back row evening',
      formId: 'quick-change',
      feel: 'shuffle',
      tempo: 92,
    },
    about: 'All of the third level: octaves, triplets, curves, the high end.',
    calls: named(THIRD),
    partner: { mode: 'echo', level: 3, plan: '2+2', after: 'on' },
  },
];
