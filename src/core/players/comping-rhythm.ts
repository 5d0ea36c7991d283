import type { Level } from '../feels/level';
import { DRUM_KEYS } from '../score/drum-kit';
import type { NoteEvent } from '../score/score';
import {
  fitSteps,
  hitSteps,
  readSteps,
  type Step,
  type StepBar,
  stretchSteps,
  ticksOf,
} from '../score/steps';
import { countWhile } from '../theory/count-while';
import { createRandom, type Random, seedFrom } from '../theory/random';
import { ideasOf } from './comping-plan';
import { type BarShape, isHalfTime, type Passage } from './passage';

/** How often a bar in the first half of a phrase is left free, by level: nobody plays all the time. */
const REST_CHANCE = [0.36, 0.14, 0.06] as const;
/** An organ, which carries the harmony with held chords, rests less. */
const ORGAN_RESTS = 0.5;
const STRAY_CHANCE = 0.2;
/** A push into more of the same chord is played this often. */
const IDLE_PUSH_CHANCE = 0.3;
/** A beat that takes longer than this, in seconds, is a hole behind a short stroke: chords are held as long as they last. */
const LONGEST_STAB = 0.7;
/** Three and more chords of a bar are struck where they begin, or held by an organ and in slow bars. */
const atChanges = ({ chart, grid, style, tempo }: Passage, bar: number): StepBar => {
  const { at = 0, chords = [] } = chart.bars[bar] ?? {};
  const holds = style.chords === 'organ' || 60 / tempo > LONGEST_STAB;
  return chords.map((span, i) => {
    const beat = Math.round((span.at - at) / grid.beatTicks);
    return { beat, step: 0, of: 1, mark: holds ? 'h' : i === 0 ? 'S' : 's' };
  });
};

const changesAfter = ({ chart, next }: Passage, bar: number): boolean => {
  const coming = bar + 1 < chart.bars.length ? chart.bars[bar + 1]?.chords[0]?.chord : next;
  return chart.bars[bar]?.chords.at(-1)?.chord.symbol !== coming?.symbol;
};

/**
 * Strokes this far apart, in ticks, are heard as one; from this velocity on a drum stroke counts: soft ones, which a
 * shuffling snare has everywhere, do not.
 */
const TOGETHER = 24;
const LOUD = 50;
const STRUCK: readonly number[] = [DRUM_KEYS.kick, DRUM_KEYS.snare, DRUM_KEYS.stick, DRUM_KEYS.slap];
/** How much a stroke together with bass or drums speaks against a rhythm; choices are weighed by e to this power. */
const AGAINST = { bass: 4.8, drums: 5 } as const;
/** A held chord lies under the others rather than answers them: it may begin with them. */
const HELD_COUNTS = 0.55;

/** Where bass, drums and of these the kick strike, in ticks of the passage, in order. */
interface Others {
  readonly bass: readonly number[];
  readonly drums: readonly number[];
  readonly kick: readonly number[];
}

const othersOf = (heard: readonly NoteEvent[]): Others => {
  const inOrder = (events: readonly NoteEvent[]) => events.map(({ at }) => at).sort((a, b) => a - b);
  const drums = heard.filter(({ part, velocity }) => part === 'drums' && velocity >= LOUD);
  return {
    bass: inOrder(heard.filter(({ part }) => part === 'bass')),
    drums: inOrder(drums.filter(({ pitch }) => STRUCK.includes(pitch))),
    kick: inOrder(drums.filter(({ pitch }) => pitch === DRUM_KEYS.kick)),
  };
};

const near = (ticks: readonly number[], at: number): boolean => {
  const last = ticks[countWhile(ticks.length, (i) => (ticks[i] ?? 0) < at + TOGETHER) - 1];
  return last !== undefined && last > at - TOGETHER;
};

/** How much a rhythm doubles the others in a bar, 0 to the sum of what speaks against it. */
const doubling = (passage: Passage, others: Others, bar: number, rhythm: StepBar): number => {
  const barAt = passage.chart.bars[bar]?.at ?? 0;
  const strokes = rhythm.filter(({ mark }) => mark !== '.');
  if (strokes.length === 0) return 0;
  const shareOf = (part: 'bass' | 'drums') => {
    const doubled = strokes.filter((step) => near(others[part], barAt + ticksOf(passage.grids[part], step)));
    const weight = doubled.reduce((sum, { mark }) => sum + (mark === 'h' ? HELD_COUNTS : 1), 0);
    return weight / strokes.length;
  };
  return AGAINST.bass * shareOf('bass') + AGAINST.drums * shareOf('drums');
};

/** One of some rhythms, those that answer bass and drums rather than double them the likelier. */
const answering = (random: Random, texts: readonly string[], cost: (text: string) => number): string => {
  const weights = texts.map((text) => Math.exp(-cost(text)));
  let left = random() * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [i, text] of texts.entries()) {
    left -= weights[i] ?? 0;
    if (left < 0) return text;
  }
  return texts.at(-1) ?? '';
};

/**
 * How full the chords are beside the harp: a level thinner while it is heard, never driving while the lead plays, never at
 * their thinnest while it rests, and at their thinnest whenever it is its turn (chords are no busier than a soloist: "On
 * (teaching) comping", a conference paper).
 */
const levelBeside = ({ harp }: Passage, { level, harpsTurn, led }: BarShape): Level => {
  if (harpsTurn) return 0;
  const most = led && level === 2 ? 1 : level;
  return harp === 'plays' ? (level === 2 ? 1 : 0) : harp === 'rests' && level === 0 ? 1 : most;
};

/** The two-note figure of the shuffle, which is a riff of one, four and five, no way to play other chords. */
const hasFigure = (text: string): boolean => /[567]/.test(text);

const takesFigure = ({ chart }: Passage, bar: number): boolean =>
  (chart.bars[bar]?.chords ?? []).every(({ chord: { root, quality } }) => {
    const minor = quality.startsWith('m') && !quality.startsWith('maj');
    const steps = minor && chart.mode === 'major' ? [] : [0, 5, 7];
    return steps.includes((root - chart.key + 12) % 12) && !quality.startsWith('dim');
  });

const chordal = (texts: readonly string[]): readonly string[] => {
  const found = texts.filter((text) => !hasFigure(text));
  return found.length > 0 ? found : texts;
};

const isOffBeat = ({ step, of }: Step): boolean => step > 0 && step >= of / 2;

/** Short strokes on the off-beats alone, three or more: a chop, which stays with the chord that sounds. */
const isChop = (strokes: StepBar): boolean =>
  strokes.length > 2 && strokes.every((step) => isOffBeat(step) && step.mark !== 'h');

/**
 * A stroke on the last off-beat of a bar is heard as the next one come early where that does not strike its first beat:
 * where the chord changes it is the next chord's (anticipation, common practice, no source).
 */
const anticipated = (passage: Passage, bars: readonly StepBar[]): readonly StepBar[] =>
  bars.map((bar, index) => {
    const strokes = bar.filter(({ mark }) => mark !== '.');
    const last = strokes.at(-1);
    const following = (bars[index + 1] ?? []).find(({ mark }) => mark !== '.');
    const { shapes, grid } = passage;
    const plays = [index, index + 1].every((each) => shapes[each]?.chords === 'play');
    const comesEarly =
      plays &&
      last !== undefined &&
      'sSh'.includes(last.mark) &&
      last.beat === grid.beats - 1 &&
      isOffBeat(last) &&
      !isChop(strokes) &&
      following !== undefined &&
      following.beat + following.step > 0 &&
      changesAfter(passage, index);
    return comesEarly ? [...strokes.slice(0, -1), { ...last, mark: 'p' }] : bar;
  });

/** Half a bar's rhythm as the whole of one; where that half has no stroke, the other. */
const halfOf = (bar: StepBar, beats: number, second: boolean): StepBar => {
  const half = stretchSteps(bar, beats, second);
  return half.some(({ mark }) => mark !== '.') ? half : stretchSteps(bar, beats, !second);
};

/** The chords are not silent for longer than this, in seconds: slow bars are long ones. */
const MOST_SILENT = 3.6;
/** A bar that takes longer than this, in seconds, is a hole where nobody strikes it. */
const LONGEST_REST = 2.6;

/**
 * A chord on the first beat of a bar before whose own first stroke the chords would be silent for too long; a stroke
 * later in that beat comes forward, since a second one so soon would be a stumble.
 */
const withoutGaps = (
  { chart, tempo, shapes, grid }: Passage,
  bars: readonly StepBar[],
): readonly StepBar[] => {
  const seconds = 60 / (tempo * chart.meter.beatTicks);
  let silentFrom = 0;
  return bars.map((bar, index) => {
    const { at, length } = chart.bars[index] ?? { at: 0, length: 0 };
    if (shapes[index]?.chords !== 'play') {
      silentFrom = at + length;
      return bar;
    }
    const struck = bar.filter(({ mark }) => mark !== '.');
    const begins = struck[0] === undefined ? at + length : at + ticksOf(grid, struck[0]);
    const late = (begins - silentFrom) * seconds > MOST_SILENT;
    const last = struck.at(-1) ?? (late ? { mark: 'h' } : undefined);
    if (last !== undefined) {
      const lastAt = struck.at(-1);
      silentFrom = last.mark === 'h' || lastAt === undefined ? at + length : at + ticksOf(grid, lastAt);
    }
    return late ? [{ beat: 0, step: 0, of: 1, mark: 'h' }, ...struck.filter(({ beat }) => beat > 0)] : bar;
  });
};

/** So many bars in a row may have one rhythm, and so many hold a chord from a stroke of bass and kick on. */
const MOST_ALIKE = 3;
const MOST_HELD = 3;

const printOf = (bar: StepBar): string =>
  bar.flatMap(({ beat, step, of, mark }) => (mark === '.' ? [] : [beat + step / of])).join();

/** Whether a rhythm holds a chord from where bass and kick both strike. */
const holdsWithAll = (passage: Passage, others: Others, index: number, bar: StepBar): boolean => {
  const barAt = passage.chart.bars[index]?.at ?? 0;
  return bar.some(
    (step) =>
      step.mark === 'h' &&
      near(others.bass, barAt + ticksOf(passage.grids.bass, step)) &&
      near(others.kick, barAt + ticksOf(passage.grids.drums, step)),
  );
};

/** Finds a rhythm of a bar other than what the bars before it have, once they had it often enough. */
const createTiring = (heavyIn: (index: number, bar: StepBar) => boolean) => {
  let before = '';
  let run = 0;
  let held = 0;
  return (
    index: number,
    bar: StepBar,
    another: (wanted: (other: StepBar) => boolean) => StepBar,
  ): StepBar => {
    const heavy = held >= MOST_HELD && heavyIn(index, bar);
    const isFresh = (other: StepBar) => run < MOST_ALIKE || printOf(other) !== before;
    const chosen = heavy
      ? another((other) => isFresh(other) && !heavyIn(index, other))
      : isFresh(bar)
        ? bar
        : another(isFresh);
    const print = printOf(chosen);
    run = print === before ? run + 1 : 1;
    held = heavyIn(index, chosen) ? held + 1 : print === '' ? held : 0;
    before = print;
    return chosen;
  };
};

/**
 * The rhythm of every bar: phrases go in one rhythm and answer it in their last bar (`comping-plan.ts`); some bars are
 * left free; a turnaround has figures of its own. Rhythms that fall between the strokes of bass and drums (`heard`) are
 * preferred. Every bar has chances of its own, so that one that changes leaves the others as they are.
 */
export const rhythmOfBars = (
  random: Random,
  passage: Passage,
  heard: readonly NoteEvent[],
): readonly StepBar[] => {
  const { chart, shapes } = passage;
  const { beats } = passage.grid;
  const { bars: books, turnarounds } = passage.feel.comping;
  const book = books[passage.style.chords];
  const others = othersOf(heard);
  const read = (text: string) => fitSteps(readSteps(text)[0] ?? [], beats, 'line');
  const readIn = (bar: number, text: string) =>
    isHalfTime(passage) ? halfOf(read(text), beats, bar % 2 === 1) : read(text);
  const costIn = (where: readonly number[]) => (text: string) =>
    where.reduce((sum, bar) => sum + doubling(passage, others, bar, readIn(bar, text)), 0) /
    Math.max(1, where.length);
  const ideas = ideasOf(random, shapes, book, (texts, where) => answering(random, texts, costIn(where)));
  const mayRest = (beats * 60) / passage.tempo <= LONGEST_REST;
  const turningAt = passage.turnaround?.bar ?? Number.POSITIVE_INFINITY;
  const turning = [0, 1].map((more) => answering(random, turnarounds, costIn([turningAt + more])));
  const unlike = createTiring((bar, rhythm) => holdsWithAll(passage, others, bar, rhythm));
  const rhythms = shapes.map((shape, bar) => {
    if (shape.chords === 'hits') return hitSteps(shape.hits, beats);
    if (shape.chords === 'tacet') return [];
    const turn = turning[bar - turningAt];
    const chords = chart.bars[bar]?.chords.length ?? 0;
    // A turnaround's bar of one chord is a bar like others.
    if (turn !== undefined && chords > 1) return chords > 2 ? atChanges(passage, bar) : read(turn);
    const own = createRandom(seedFrom(passage.seed, 'chord bar', bar));
    const level = levelBeside(passage, shape);
    const draws = { rest: own(), stray: own(), push: own() };
    const rest = REST_CHANCE[level] * (passage.style.chords === 'organ' ? ORGAN_RESTS : 1);
    const early = shape.phrase.bar < 2 && bar > 0;
    if (mayRest && (passage.harp !== 'rests' || shape.harpsTurn) && early && draws.rest < rest) return [];
    const text = (shape.phrase.ends === 'nothing' ? ideas[bar]?.body : ideas[bar]?.end)?.[level] ?? '';
    const astray = draws.stray < STRAY_CHANCE || (hasFigure(text) && !takesFigure(passage, bar));
    const among = (texts: readonly string[]) => readIn(bar, answering(own, texts, costIn([bar])));
    const taken = astray ? among(chordal(book[level])) : readIn(bar, text);
    const another = (wanted: (other: StepBar) => boolean) => {
      const texts = chordal(book[level]).filter((each) => {
        const other = readIn(bar, each);
        return printOf(other) !== printOf(taken) && wanted(other);
      });
      return texts.length > 0 ? among(texts) : taken;
    };
    const rhythm = unlike(bar, taken, another);
    const pushes = draws.push < IDLE_PUSH_CHANCE || changesAfter(passage, bar);
    return pushes ? rhythm : rhythm.filter((step) => step.mark !== 'p');
  });
  return withoutGaps(passage, anticipated(passage, rhythms));
};
