/** What is practised today: a warm-up, what is due, one new thing, and a song for joy. */
import { createRandom, seedFrom } from '../theory/random';
import type { PracticeItem } from './practice-item';
import { asOf, recallOn } from './schedule';

/** How long today can be, in minutes. */
export const TODAY_MINUTES = [10, 20, 45] as const;
export type TodayMinutes = (typeof TODAY_MINUTES)[number];

/** A stretch of some minutes with one thing to do; its seconds are a guide, and the player may go on sooner or later. */
export type TodayStep =
  | { readonly kind: 'warm-up'; readonly seconds: number }
  | { readonly kind: 'rest'; readonly seconds: number }
  | { readonly kind: 'due'; readonly item: PracticeItem; readonly seconds: number }
  | { readonly kind: 'new'; readonly item: PracticeItem; readonly seconds: number }
  /** A song to play for its own sake; null lets the player choose. */
  | { readonly kind: 'joy'; readonly song: string | null; readonly seconds: number };

/** Seconds of the parts, by the minutes there are. A rest comes before lips and throat tire (after 15 minutes or so). */
const PARTS: Readonly<
  Record<TodayMinutes, { readonly warmUp: number; readonly joy: number; readonly item: number }>
> = {
  10: { warmUp: 90, joy: 150, item: 90 },
  20: { warmUp: 180, joy: 240, item: 120 },
  45: { warmUp: 300, joy: 480, item: 180 },
};

const REST = { seconds: 60, after: 15 * 60 } as const;

/** What today is made from. */
export interface TodaySpec {
  readonly minutes: TodayMinutes;
  /** Days from 1970-01-01. */
  readonly day: number;
  readonly items: readonly PracticeItem[];
  /** Ids of songs to choose one for joy from. */
  readonly songs: readonly string[];
  readonly seed: number;
}

const itemAsOf = (item: PracticeItem, day: number): PracticeItem =>
  item.memory === null ? item : { ...item, memory: asOf(item.memory, day) };

/** What is due on a day, the least likely to be still there first. */
export const dueItems = (items: readonly PracticeItem[], day: number): readonly PracticeItem[] =>
  items
    .map((item) => itemAsOf(item, day))
    .flatMap((item) =>
      item.memory !== null && item.memory.due <= day ? [{ item, memory: item.memory }] : [],
    )
    .map(({ item, memory }) => ({ item, recall: recallOn(memory, day) }))
    .sort((a, b) => a.recall - b.recall)
    .map(({ item }) => item);

/** Takes turns between the kinds, so that one kind does not come twice where it can be helped. */
const mixed = (items: readonly PracticeItem[]): readonly PracticeItem[] => {
  const left = [...items];
  const order: PracticeItem[] = [];
  while (left.length > 0) {
    const last = order.at(-1)?.exercise.kind;
    const at = Math.max(
      0,
      left.findIndex(({ exercise }) => exercise.kind !== last),
    );
    order.push(...left.splice(at, 1));
  }
  return order;
};

/** Puts a rest in once it has gone on for a quarter of an hour. */
const withRests = (steps: readonly TodayStep[]): readonly TodayStep[] => {
  let since = 0;
  return steps.flatMap((step): readonly TodayStep[] => {
    const tired = since >= REST.after;
    since = (tired ? 0 : since) + step.seconds;
    return tired ? [{ kind: 'rest', seconds: REST.seconds }, step] : [step];
  });
};

/**
 * The steps of today. What is due comes first and in turn with other kinds; where less is due than there is time for,
 * what comes due next is taken early rather than more that is new. Never more than one new thing.
 */
export const todayPlan = ({ minutes, day, items, songs, seed }: TodaySpec): readonly TodayStep[] => {
  const parts = PARTS[minutes];
  const rest = minutes * 60 >= REST.after + parts.joy ? REST.seconds : 0;
  const room = Math.max(1, Math.floor((minutes * 60 - parts.warmUp - parts.joy - rest) / parts.item));
  const [fresh] = items.filter(({ memory }) => memory === null);
  const due = dueItems(items, day);
  const early = items
    .map((item) => itemAsOf(item, day))
    .flatMap((item) =>
      item.memory !== null && item.memory.due > day && item.memory.last < day ? [item] : [],
    )
    .toSorted((a, b) => (a.memory?.due ?? 0) - (b.memory?.due ?? 0));
  const old = mixed([...due, ...early].slice(0, room - (fresh === undefined ? 0 : 1)));
  const random = createRandom(seedFrom(seed, 'joy', day));
  const song = songs[Math.floor(random() * songs.length)] ?? null;
  const count = old.length + (fresh === undefined ? 0 : 1);
  // Where little is due there is more time for each, up to twice as much, and then for joy.
  const spare = Math.max(0, room - count) * parts.item;
  const seconds = parts.item + (count === 0 ? 0 : Math.min(parts.item, Math.floor(spare / count)));
  const joy = parts.joy + spare - count * (seconds - parts.item);
  return withRests([
    { kind: 'warm-up', seconds: parts.warmUp },
    ...old.map((item): TodayStep => ({ kind: 'due', item, seconds })),
    ...(fresh === undefined ? [] : [{ kind: 'new', item: fresh, seconds } as const]),
    { kind: 'joy', song, seconds: joy },
  ]);
};
