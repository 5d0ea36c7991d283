import { noCoda, noSegno, type Problem, repeatEmpty, repeatOpen, type TextSpan } from './chart-problems';
import type { RoadSign } from './chart-signs';
import type { BarLine, Item } from './scan-chart';

/** Repeats are played out so far; a chart ends before, and nothing grows without end. */
export const MOST_PLAYED = 4096;
/** More passes than anyone plays. */
const MOST_TIMES = 99;

/** A bar played, and how often a section was begun until then. */
export interface Step {
  readonly item: number;
  readonly entry: number;
}

/** Endings stand side by side; the last number of all of them is how often their repeat is played. */
interface Ending {
  readonly end: number;
  readonly next: number | null;
  readonly most: number;
}

const endsEnding = (item: Item): boolean =>
  item.kind === 'ending' ||
  item.kind === 'label' ||
  (item.kind === 'line' && (item.line.closes || item.line.double));

/** The next item from a place on that is neither a plain bar line nor a number of times. */
const nextThat = (items: readonly Item[], from: number): number => {
  const isPlain = (item: Item): boolean =>
    item.kind === 'times' ||
    (item.kind === 'line' && !item.line.closes && !item.line.opens && !item.line.double);
  let at = from;
  for (let item = items[at]; item !== undefined && isPlain(item); item = items[at]) at += 1;
  return at;
};

/** For each ending of a list of items where it ends, which one follows it, and how often its repeat is played. */
const endingsOf = (items: readonly Item[]): ReadonlyMap<number, Ending> => {
  const endings = new Map<number, Ending>();
  let stop = items.length;
  for (let at = items.length - 1; at >= 0; at -= 1) {
    const item = items[at];
    if (item?.kind === 'ending') {
      const behind = items[stop]?.kind === 'line' ? stop + 1 : stop;
      const follows = nextThat(items, behind);
      const next = items[follows]?.kind === 'ending' ? follows : null;
      const end = next ?? behind;
      const after = next === null ? 0 : (endings.get(next)?.most ?? 0);
      endings.set(at, { end, next, most: Math.max(after, ...item.numbers) });
    }
    if (item !== undefined && endsEnding(item)) stop = at;
  }
  return endings;
};

/** How far a walk through the items has come. */
interface Walk {
  readonly items: readonly Item[];
  readonly endings: ReadonlyMap<number, Ending>;
  readonly steps: Step[];
  readonly problems: Problem[];
  at: number;
  /** Where a repeat goes back to. */
  start: number;
  /** From 1. */
  pass: number;
  entry: number;
  open: TextSpan | null;
  ending: Ending | null;
  /** The D.C. or D.S. that was taken. */
  road: RoadSign | null;
}

const begin = (walk: Walk, at: number): void => {
  walk.start = at;
  walk.pass = 1;
  walk.ending = null;
};

/** How often what ends here is played: as said behind it, as its endings say, or twice. */
const timesAt = ({ items, ending }: Walk, here: number): number => {
  const said = items[here + 1];
  const times = said?.kind === 'times' ? said.times : (ending?.most ?? 2);
  return Math.min(Math.max(times, 1), MOST_TIMES);
};

/** Goes back to where the repeat began, if it is to be played again. */
const meetClose = (walk: Walk, line: TextSpan, here: number): boolean => {
  const between = walk.items.slice(walk.start, here);
  if (!between.some(({ kind }) => kind === 'bar')) walk.problems.push(repeatEmpty(line));
  const again = walk.road === null && walk.pass < timesAt(walk, here);
  if (again) {
    walk.pass += 1;
    walk.at = walk.start;
  } else {
    walk.open = null;
    begin(walk, walk.at);
  }
  return again;
};

const meetLine = (walk: Walk, line: BarLine, here: number): void => {
  if (line.closes) {
    if (meetClose(walk, line, here)) return;
  } else if (line.double && (walk.open === null || walk.ending !== null)) {
    walk.open = null;
    begin(walk, walk.at);
  }
  if (!line.opens) return;
  if (walk.open !== null) walk.problems.push(repeatOpen(walk.open));
  walk.open = line;
  begin(walk, walk.at);
};

const meetEnding = (walk: Walk, here: number, numbers: readonly number[]): void => {
  const ending = walk.endings.get(here);
  if (ending === undefined) return;
  // After D.C. or D.S. repeats are not taken again: the last ending is the one that is left.
  if (numbers.includes(walk.road === null ? walk.pass : ending.most)) {
    walk.ending = ending;
    if (ending.next === null) walk.open = null;
    return;
  }
  walk.at = ending.end;
  if (ending.next !== null) return;
  walk.open = null;
  begin(walk, walk.at);
};

const isSign = (item: Item, sign: 'segno' | 'coda'): boolean =>
  (item.kind === 'road' && item.road.sign === sign) ||
  (item.kind === 'label' && item.name.toLowerCase() === sign);

/** Goes to a sign; where there is none, on from here (coda) or from the beginning (segno). */
const leap = (walk: Walk, sign: 'segno' | 'coda', missing: Problem): void => {
  const from = sign === 'coda' ? walk.at : 0;
  const found = walk.items.findIndex((item, i) => i >= from && isSign(item, sign));
  if (found === -1) walk.problems.push(missing);
  if (found !== -1 || sign === 'segno') walk.at = found + 1;
  walk.entry += 1;
};

const meetRoad = (walk: Walk, road: RoadSign, span: TextSpan): void => {
  if (road.sign === 'fine' && walk.road !== null) walk.at = walk.items.length;
  if (road.sign === 'to coda' && walk.road !== null && 'until' in walk.road && walk.road.until === 'coda') {
    leap(walk, 'coda', noCoda(span));
    walk.open = null;
    begin(walk, walk.at);
  }
  if ((road.sign !== 'da capo' && road.sign !== 'dal segno') || walk.road !== null) return;
  walk.road = road;
  walk.open = null;
  if (road.sign === 'dal segno') leap(walk, 'segno', noSegno(span));
  else walk.at = 0;
  walk.entry += 1;
  begin(walk, walk.at);
};

const meet = (walk: Walk, item: Item, leads: boolean): void => {
  const here = walk.at;
  walk.at += 1;
  if (item.kind === 'bar') walk.steps.push({ item: here, entry: walk.entry });
  else if (item.kind === 'line') meetLine(walk, item.line, here);
  else if (item.kind === 'ending') meetEnding(walk, here, item.numbers);
  else if (item.kind === 'road' && leads) meetRoad(walk, item.road, item.span);
  else if (item.kind === 'label') {
    walk.entry += 1;
    begin(walk, walk.at);
  }
};

/** The bars met, in order, and what was wrong with the signs between them. */
export type Walked = Pick<Walk, 'steps' | 'problems'>;

/** Walks through items as a player's eye does. `leads` says whether D.C. and the like are followed. */
export const walkThrough = (items: readonly Item[], leads: boolean): Walked => {
  const walk: Walk = {
    items,
    endings: endingsOf(items),
    steps: [],
    problems: [],
    at: 0,
    start: 0,
    pass: 1,
    entry: 0,
    open: null,
    ending: null,
    road: null,
  };
  // Every pass but a repeat's last is counted and a road is taken once, so that this ends.
  while (walk.steps.length < MOST_PLAYED) {
    const item = items[walk.at];
    if (item === undefined) break;
    meet(walk, item, leads);
  }
  if (walk.open !== null) walk.problems.push(repeatOpen(walk.open));
  return walk;
};
