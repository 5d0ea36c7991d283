import type { ByLevel } from '../feels/level';
import type { Random } from '../theory/random';
import type { BarShape } from './passage';

/** The next phrase goes on with the rhythms of the one before this often, for two phrases in a row at most. */
const SAME_IDEA = 0.6;
const MOST_PHRASES = 2;
/** The last phrase of a section takes rhythms of its own this often (the lines of a blues go A A B). */
const CLOSE_CHANCE = 0.5;

/** What a phrase has in its bars, and in its last one, by level. */
export interface Idea {
  readonly body: ByLevel<string>;
  readonly end: ByLevel<string>;
}

/**
 * Which idea each bar belongs to, from 0: phrases share one or take another, and a section that is played again has
 * those that it had before.
 */
const ideaOfBars = (random: Random, shapes: readonly BarShape[]): readonly number[] => {
  const known = new Map<string, number>();
  const ideas: number[] = [];
  let count = 0;
  let run = 0;
  let line = 0;
  for (const [i, { phrase }] of shapes.entries()) {
    const before = shapes[i - 1]?.phrase;
    if (before !== undefined && before.phrase === phrase.phrase) {
      ideas.push(ideas.at(-1) ?? 0);
      continue;
    }
    line = before?.stretch === phrase.stretch ? line + 1 : 0;
    const place = `${phrase.name}/${line}`;
    const draw = random();
    const goesOn = i > 0 && run < MOST_PHRASES && draw < (phrase.closes ? 1 - CLOSE_CHANCE : SAME_IDEA);
    const idea = known.get(place) ?? (goesOn ? (ideas.at(-1) ?? 0) : count);
    count = Math.max(count, idea + 1);
    run = idea === ideas.at(-1) ? run + 1 : 1;
    known.set(place, idea);
    ideas.push(idea);
  }
  return ideas;
};

/** Finds a rhythm for some bars among others. */
type Choose = (texts: readonly string[], bars: readonly number[]) => string;

const without = (texts: readonly string[], taken: readonly (string | undefined)[]): readonly string[] => {
  const left = texts.filter((text) => !taken.includes(text));
  return left.length > 0 ? left : texts;
};

/**
 * The idea of every bar. A new idea has other rhythms than the one before it, and what ends a phrase is another than what
 * the phrase goes in.
 */
export const ideasOf = (
  random: Random,
  shapes: readonly BarShape[],
  book: ByLevel<readonly string[]>,
  choose: Choose,
): readonly Idea[] => {
  const places = ideaOfBars(random, shapes);
  const ideas: Idea[] = [];
  for (let idea = 0; idea <= Math.max(0, ...places); idea += 1) {
    const bars = places.flatMap((each, bar) => (each === idea ? [bar] : []));
    const ending = bars.filter((bar) => shapes[bar]?.phrase.ends !== 'nothing');
    const within = bars.filter((bar) => !ending.includes(bar));
    const before = ideas.at(-1);
    const bodyAt = (level: 0 | 1 | 2): string => choose(without(book[level], [before?.body[level]]), within);
    const body: ByLevel<string> = [bodyAt(0), bodyAt(1), bodyAt(2)];
    const endAt = (level: 0 | 1 | 2): string =>
      choose(without(book[level], [body[level], before?.end[level]]), ending);
    ideas.push({ body, end: [endAt(0), endAt(1), endAt(2)] });
  }
  return places.map((idea) => ideas[idea] ?? { body: ['', '', ''], end: ['', '', ''] });
};
