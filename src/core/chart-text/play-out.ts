import type { BarPlace } from '../chart/chart';
import { noSection, type Problem, roadBesideOrder, sectionUnplayed, type TextSpan } from './chart-problems';
import type { Item, WrittenBar } from './scan-chart';
import { LONGEST_ORDER, readOrder } from './section-order';
import { MOST_PLAYED, type Step, walkThrough } from './walk-through';

/** A bar as often as it is played, and where. */
export interface PlayedBar {
  readonly bar: WrittenBar;
  /** Of the items scanned. */
  readonly item: number;
  /** Null where the text names no sections. */
  readonly place: BarPlace | null;
}

/** Bars in the order they are played. */
export interface PlayedOut {
  readonly bars: readonly PlayedBar[];
  /** Bars of the text that no order comes to. */
  readonly unplayed: readonly WrittenBar[];
  readonly problems: readonly Problem[];
}

/** What stands before the first name is called so. */
const UNNAMED = 'Start';

/** An introduction by its name, which is played once however often the tune goes round (common practice, no source). */
const INTRO = /^intro(?:duction)?(?![\p{L}])/iu;

/** Marks the bars of introductions at the beginning as played once, where anything follows them. */
const withOnce = (bars: readonly PlayedBar[]): readonly PlayedBar[] => {
  const first = bars.findIndex(({ place }) => place === null || !INTRO.test(place.section));
  return bars.map((each, i) =>
    i < first && each.place !== null ? { ...each, place: { ...each.place, once: true } } : each,
  );
};

/** A named stretch of the text; the first may have no name. */
interface Section {
  readonly name: string;
  readonly span: TextSpan | null;
  /** Of the items. */
  readonly from: number;
  readonly to: number;
}

const sectionsOf = (items: readonly Item[]): readonly Section[] => {
  const labels = items.flatMap((item, at) => (item.kind === 'label' ? [{ at, item }] : []));
  const first = labels[0]?.at ?? items.length;
  return [
    { name: '', span: null, from: 0, to: first },
    ...labels.map(({ at, item: { name, span } }, i) => ({
      name,
      span,
      from: at + 1,
      to: labels[i + 1]?.at ?? items.length,
    })),
  ];
};

const holdsBars = (items: readonly Item[], { from, to }: Section): boolean =>
  items.slice(from, to).some(({ kind }) => kind === 'bar');

interface Ordered {
  /** Null where the text is played as it stands. */
  readonly sections: readonly Section[] | null;
  readonly problems: readonly Problem[];
}

/** The sections as an order names them, or as their names stand again without bars of their own. */
const orderOf = (items: readonly Item[], sections: readonly Section[]): Ordered => {
  const filled = sections.filter((section) => holdsBars(items, section));
  // The first of a name: what stands again under it is another way to play it.
  const byName = new Map(filled.toReversed().map((section) => [section.name.toLowerCase(), section]));
  const named = (name: string): Section | undefined => byName.get(name.toLowerCase());
  const header = items.find((item) => item.kind === 'header' && item.name === 'order');
  if (header?.kind === 'header') {
    const { names, unknown } = readOrder(header.value, [...new Set(filled.map(({ name }) => name))]);
    const played = names.flatMap((name) => named(name) ?? []);
    const left = filled.filter((section) => !played.includes(section));
    const problems = [
      ...unknown.map((word) => noSection(word)),
      ...left.map(({ name, span }) => sectionUnplayed(span ?? header.span, name)),
    ];
    return played.length === 0 ? { sections: null, problems } : { sections: played, problems };
  }
  const isFilled = new Set(filled);
  const again = sections.some((section) => !isFilled.has(section) && named(section.name) !== undefined);
  return { sections: again ? sections.flatMap(({ name }) => named(name) ?? []) : null, problems: [] };
};

const roadsIn = (items: readonly Item[]): readonly Problem[] =>
  items.flatMap((item) =>
    item.kind === 'road' && item.road.sign !== 'fermata' ? [roadBesideOrder(item.span)] : [],
  );

/** Gives each bar its place: the section it stands in, and its number since that was begun. */
const placed = (
  items: readonly Item[],
  steps: readonly Step[],
  sections: readonly Section[],
): PlayedBar[] => {
  let last: Step | null = null;
  let number = 0;
  return steps.flatMap((step): readonly PlayedBar[] => {
    const item = items[step.item];
    const section = sections.findLast(({ from }) => from <= step.item);
    number = last !== null && last.entry === step.entry ? number + 1 : 0;
    last = step;
    if (item?.kind !== 'bar') return [];
    if (section === undefined || sections.length === 1)
      return [{ bar: item.bar, item: step.item, place: null }];
    return [{ bar: item.bar, item: step.item, place: { section: section.name || UNNAMED, bar: number } }];
  });
};

/**
 * Plays a text out: repeats as often as they say, each ending at its time, D.C. and D.S. to Fine or Coda, sections in
 * their order. A `:|` without `|:` goes back to the last double bar, end of a repeat or name of a section, or to the
 * beginning (ABC notation standard 2.1, §4.8); after D.C. or D.S. repeats are not taken again (custom).
 */
export const playOut = (items: readonly Item[]): PlayedOut => {
  const sections = sectionsOf(items);
  const order = orderOf(items, sections);
  const walks =
    order.sections === null
      ? [{ from: 0, walk: walkThrough(items, true) }]
      : order.sections.slice(0, LONGEST_ORDER).map(({ from, to }) => ({
          from,
          walk: walkThrough(items.slice(from, to), false),
        }));
  const steps = walks
    .flatMap(({ from, walk }, turn) =>
      walk.steps.map(({ item, entry }) => ({ item: item + from, entry: entry + turn * items.length })),
    )
    .slice(0, MOST_PLAYED);
  const played = new Set(steps.map(({ item }) => item));
  return {
    bars: withOnce(placed(items, steps, sections)),
    unplayed: items.flatMap((item, at) => (item.kind === 'bar' && !played.has(at) ? [item.bar] : [])),
    problems: [
      ...walks.flatMap(({ walk }) => walk.problems),
      ...order.problems,
      ...(order.sections === null ? [] : roadsIn(items)),
    ],
  };
};
