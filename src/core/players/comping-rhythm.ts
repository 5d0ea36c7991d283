import { fitSteps, hitSteps, readSteps, type StepBar } from '../score/steps';
import { pick, type Random } from '../theory/random';
import type { Passage } from './passage';

/** How often a bar in the first half of a phrase is left free, by level: nobody plays all the time. */
const REST_CHANCE = [0.36, 0.14, 0.06] as const;
/** An organ, which carries the harmony with held chords, rests less. */
const ORGAN_RESTS = 0.5;
const STRAY_CHANCE = 0.2;
/** A push into more of the same chord is played this often. */
const IDLE_PUSH_CHANCE = 0.3;
/** The last phrase of a chorus takes a rhythm of its own this often. */
const TURN_CHANCE = 0.5;

const changesAfter = ({ chart, next }: Passage, bar: number): boolean => {
  const coming = bar + 1 < chart.bars.length ? chart.bars[bar + 1]?.chords[0]?.chord : next;
  return chart.bars[bar]?.chords.at(-1)?.chord.symbol !== coming?.symbol;
};

/**
 * The rhythm of every bar: phrases of four bars repeat one rhythm and answer it in their last bar; the last phrase
 * may take another (the lines of a blues go A A B); some bars are left free; a turnaround has figures of its own.
 */
export const rhythmOfBars = (random: Random, passage: Passage): readonly StepBar[] => {
  const { beats } = passage.grid;
  const { bars: books, turnarounds } = passage.feel.comping;
  const book = books[passage.style.chords];
  const choices = [0, 1, 2, 3].map(() => book.map((bars) => pick(random, bars)));
  const ownClose = random() < TURN_CHANCE;
  const turning = [pick(random, turnarounds), pick(random, turnarounds)];
  const read = (text: string) => fitSteps(readSteps(text)[0] ?? [], beats, 'line');
  return passage.shapes.map((shape, bar) => {
    if (shape.chords === 'hits') return hitSteps(shape.hits, beats);
    if (shape.chords === 'tacet') return [];
    const turn = turning[bar - (passage.turnaround?.bar ?? Number.POSITIVE_INFINITY)];
    if (turn !== undefined) return read(turn);
    const late = ownClose && bar >= passage.shapes.length - 4 ? 2 : 0;
    const text = choices[late + (bar % 4 === 3 ? 1 : 0)]?.[shape.level] ?? '';
    const rest = REST_CHANCE[shape.level] * (passage.style.chords === 'organ' ? ORGAN_RESTS : 1);
    const free = bar % 4 < 2 && bar > 0 && random() < rest;
    const stray = random() < STRAY_CHANCE;
    if (free) return [];
    const rhythm = read(stray ? pick(random, book[shape.level]) : text);
    const pushes = random() < IDLE_PUSH_CHANCE || changesAfter(passage, bar);
    return pushes ? rhythm : rhythm.filter((step) => step.mark !== 'p');
  });
};
