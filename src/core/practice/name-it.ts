/** Two minutes of naming: which holes give a chord, what a hole is over it, what moves at a change. */
import type { Chart } from '../chart/chart';
import type { Fit, FitChord } from '../fit/fit';
import { guideMoves } from '../fit/guide-moves';
import { type TabStyle, tab } from '../harp/tab';
import { degreeText, ENGLISH } from '../theory/note-names';
import { createRandom, pick, type Random, seedFrom } from '../theory/random';

/** What is asked. */
export const DRILLS = ['holes', 'degree', 'change'] as const;
export type Drill = (typeof DRILLS)[number];

/** How long a drill lasts, in seconds. */
export const DRILL_SECONDS = 120;

/** A question with answers to choose from. */
export interface Question {
  readonly text: string;
  readonly answers: readonly string[];
  /** Index of the right one. */
  readonly right: number;
}

/** What a drill is made from. */
export interface DrillSpec {
  readonly chart: Chart;
  readonly fit: Fit;
  readonly tabStyle: TabStyle;
  readonly drill: Drill;
  readonly seed: number;
}

/** How many answers stand to choose from at most. */
const ANSWERS = 4;

/** In another order, by chance. */
const shuffled = <Each>(list: readonly Each[], random: Random): readonly Each[] =>
  list
    .map((each) => ({ each, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ each }) => each);

/** The right answer among others that are not it, each once. */
const question = (
  text: string,
  right: string,
  others: readonly string[],
  random: Random,
): Question | null => {
  const wrong = shuffled(
    [...new Set(others)].filter((other) => other !== right),
    random,
  ).slice(0, ANSWERS - 1);
  if (wrong.length === 0) return null;
  const answers = shuffled([right, ...wrong], random);
  return { text, answers, right: answers.indexOf(right) };
};

const chordsOf = ({ fit }: DrillSpec): readonly FitChord[] => {
  const all = fit.bars.flatMap(({ chords }) => chords);
  return [...new Map(all.map((each) => [each.chord.symbol, each])).values()];
};

/** Natural sounds in reach: a bend is known by the hole it comes from. */
const plainSounds = ({ sounds }: FitChord) => sounds.filter(({ technique }) => technique === 'natural');

const holesQuestion = (spec: DrillSpec, random: Random): Question | null => {
  const fit = pick(random, chordsOf(spec));
  const named = (each: FitChord, degree: string): string =>
    plainSounds(each)
      .filter((sound) => sound.role === 'chord' && sound.degree === degree)
      .map((sound) => tab(sound, spec.tabStyle))
      .join('  ');
  const degrees = fit.chord.tones.map(({ degree }) => degree).filter((degree) => named(fit, degree) !== '');
  if (degrees.length === 0) return null;
  const degree = pick(random, degrees);
  const others = chordsOf(spec).flatMap((each) =>
    each.chord.tones.map((tone) => named(each, tone.degree)).filter((text) => text !== ''),
  );
  return question(
    `Which holes give the ${degreeText(degree)} of ${ENGLISH.chord(fit.chord)}?`,
    named(fit, degree),
    others,
    random,
  );
};

const degreeQuestion = (spec: DrillSpec, random: Random): Question | null => {
  const fit = pick(random, chordsOf(spec));
  const sounds = plainSounds(fit).filter(({ role }) => role === 'chord');
  if (sounds.length === 0) return null;
  const sound = pick(random, sounds);
  return question(
    `What is ${tab(sound, spec.tabStyle)} over ${ENGLISH.chord(fit.chord)}?`,
    degreeText(sound.degree),
    fit.chord.tones.map(({ degree }) => degreeText(degree)),
    random,
  );
};

const changeQuestion = (spec: DrillSpec, random: Random): Question | null => {
  const all = spec.fit.bars.flatMap(({ chords }) => chords);
  const changes = all.flatMap((before, i) => {
    const after = all[i + 1];
    if (after === undefined || after.chord.symbol === before.chord.symbol) return [];
    const [move] = guideMoves(before, after);
    return move === undefined ? [] : [{ before, after, move }];
  });
  if (changes.length === 0) return null;
  const { before, after, move } = pick(random, changes);
  const { tabStyle } = spec;
  return question(
    `${ENGLISH.chord(before.chord)} goes to ${ENGLISH.chord(after.chord)}: where does ${tab(move.from, tabStyle)}, its ${degreeText(move.from.degree)}, go?`,
    `${tab(move.to, tabStyle)}, the ${degreeText(move.to.degree)}`,
    plainSounds(after)
      .filter(({ role }) => role === 'chord')
      .map((sound) => `${tab(sound, tabStyle)}, the ${degreeText(sound.degree)}`),
    random,
  );
};

const ASK: Readonly<Record<Drill, (spec: DrillSpec, random: Random) => Question | null>> = {
  holes: holesQuestion,
  degree: degreeQuestion,
  change: changeQuestion,
};

/** The question of a number, from 0: by chance that can be repeated. Null where the song and the harp have none. */
export const drillQuestion = (spec: DrillSpec, number: number): Question | null =>
  ASK[spec.drill](spec, createRandom(seedFrom(spec.seed, spec.drill, number)));
