import { type BassPattern, TURNAROUND_RIFFS } from '../feels/bass-pattern';
import type { ByLevel } from '../feels/level';
import { pick, type Random } from '../theory/random';
import { isHalfTime, type Passage, type Segment, turnaroundBar } from './passage';
import { turnaroundPitches } from './turnaround-bass';

/** A bar of a turnaround: its line, a pitch a beat. */
interface Turning {
  readonly pitches: readonly number[];
}

/** A phrase's last bar takes another pattern this often. */
const PHRASE_TURN_CHANCE = 0.3;
/** Every other bar of a chorus takes other notes in the same rhythm this often. */
const ANSWER_CHANCE = 0.55;
/** The last phrase of a section takes another pattern this often. */
const CLOSE_CHANCE = 0.4;
/** A section of another name goes on with the patterns of the one before this often. */
const SAME_IDEA = 0.35;
/** One pattern over one chord, bars in a row and in all; those of two bars and in half time twice as long. */
const MOST_IN_A_ROW = 2;
const MOST_IN_ALL = 4;

const rhythmOf = (riff: string): string => riff.replaceAll(/[^-.|\s]/g, 'x');

/** Patterns with the rhythm of one, of one bar as it is, and other notes. */
const answersTo = (pattern: BassPattern, choices: readonly BassPattern[]): readonly BassPattern[] =>
  typeof pattern === 'string' || pattern.riff.includes('|')
    ? []
    : choices.filter(
        (each) =>
          each !== pattern && typeof each !== 'string' && rhythmOf(each.riff) === rhythmOf(pattern.riff),
      );

type Patterns = ByLevel<readonly BassPattern[]>;

/** What a section is played with: its pattern, what answers it in every other bar, and another, by level. */
interface Idea {
  readonly main: readonly BassPattern[];
  readonly answers: readonly BassPattern[];
  readonly other: readonly BassPattern[];
}

const ideaOf = (random: Random, patterns: Patterns, before: Idea | undefined): Idea => {
  const main = patterns.map((choices, level) => {
    const fresh = choices.filter((each) => each !== before?.main[level]);
    return pick(random, fresh.length > 0 ? fresh : choices);
  });
  const other = patterns.map((choices) => pick(random, choices));
  const answers = main.map((pattern, level) => {
    const found = answersTo(pattern, patterns[level] ?? []);
    return found.length > 0 && random() < ANSWER_CHANCE ? pick(random, found) : pattern;
  });
  return { main, other, answers };
};

/** The idea of every section, by its name: sections of one name are played alike. */
const ideasOf = (random: Random, { shapes, feel }: Passage): ReadonlyMap<string, Idea> => {
  const ideas = new Map<string, Idea>();
  let before: Idea | undefined;
  for (const { phrase } of shapes) {
    if (ideas.has(phrase.name)) continue;
    const same = before !== undefined && random() < SAME_IDEA;
    before = same && before !== undefined ? before : ideaOf(random, feel.bassLine.patterns, before);
    ideas.set(phrase.name, before);
  }
  return ideas;
};

/** Watches one pattern over one chord: hands on what is asked for, and something else once that has been heard enough. */
const createRest = (random: Random, passage: Passage) => {
  let chord = '';
  let uses = new Map<BassPattern, number>();
  let last: BassPattern | null = null;
  let run = 0;
  return (bar: readonly Segment[], asked: BassPattern, choices: readonly BassPattern[]): BassPattern => {
    const here = bar.length === 1 ? (bar[0]?.chord.symbol ?? '') : '';
    if (here === '' || here !== chord) [uses, last, run] = [new Map(), null, 0];
    chord = here;
    if (typeof asked === 'string') return asked;
    const longer = asked.riff.includes('|') || isHalfTime(passage) ? 2 : 1;
    const row = asked === last ? run : 0;
    const tired = row >= MOST_IN_A_ROW * longer || (uses.get(asked) ?? 0) >= MOST_IN_ALL * longer;
    const others = choices.filter((each) => each !== asked && each !== last && typeof each !== 'string');
    const least = Math.min(...others.map((each) => uses.get(each) ?? 0));
    const fresh = others.filter((each) => (uses.get(each) ?? 0) === least);
    const pattern = tired && fresh.length > 0 ? pick(random, fresh) : asked;
    run = pattern === last ? run + 1 : 1;
    last = pattern;
    uses.set(pattern, (uses.get(pattern) ?? 0) + 1);
    return pattern;
  };
};

/**
 * What the bass plays in each bar: one pattern for each section, in every other bar often with the notes of another that
 * goes in the same rhythm; often another for the last phrase and now and then for the last bar of a phrase, none for long
 * over one chord; the bar before a closing five chord walked up to it, and a walk out of the last two bars where the feel
 * allows.
 */
export const patternOfBars = (
  random: Random,
  passage: Passage,
  bars: readonly (readonly Segment[])[],
): readonly (BassPattern | Turning)[] => {
  const { patterns, walksOut } = passage.feel.bassLine;
  const count = passage.chart.bars.length;
  const ideas = ideasOf(random, passage);
  const changes = random() < CLOSE_CHANCE;
  const close = walksOut && count > 4 ? random() : 1;
  const turnaround = turnaroundBar(passage);
  const turning = passage.turnaround === null ? [] : turnaroundPitches(random, passage);
  const rested = createRest(random, passage);
  return bars.map((bar) => {
    const index = bar[0]?.bar ?? 0;
    const pitches = turning[index - (passage.turnaround?.bar ?? index)];
    if (pitches !== undefined) return { pitches };
    const shape = passage.shapes[index];
    const level = shape?.level ?? 1;
    if (close < 0.35 && index === turnaround) return { riff: pick(random, TURNAROUND_RIFFS) };
    if (close < 0.6 && index >= count - 2) return 'walk';
    const { main = [], answers = [], other = [] } = ideas.get(shape?.phrase.name ?? '') ?? {};
    const ends = shape?.phrase.ends !== 'nothing';
    const turns = ends && main[level] !== 'walk' && random() < PHRASE_TURN_CHANCE;
    const own = (shape?.phrase.bar ?? 0) % 2 === 1 ? answers[level] : main[level];
    const asked = (turns || (changes && shape?.phrase.closes) ? other[level] : own) ?? 'walk';
    return rested(bar, asked, patterns[level]);
  });
};
