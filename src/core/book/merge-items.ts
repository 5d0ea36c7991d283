import { isRecord } from '../theory/is-record';

/** Something the player made and named. */
interface Named {
  readonly id: string;
  readonly name: string;
}

/** Old ids and the ones that took their place. */
export type NewIds = ReadonlyMap<string, string>;

/** What becomes of items that come in. */
export interface MergedItems<Item> {
  /** Items to be put beside those that are there; joined ones take the place of the one with their id. */
  readonly added: readonly Item[];
  /** How many were there already. */
  readonly known: number;
  /** How many were kept beside one of the same id that has become different. */
  readonly copied: number;
  readonly newIds: NewIds;
}

/** JSON with its fields in order, so that equal values are equal text. */
const inOrder = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(inOrder);
  if (!isRecord(value)) return value;
  const names = Object.keys(value).sort();
  return Object.fromEntries(names.map((name) => [name, inOrder(value[name])]));
};

const textOf = (value: unknown): string => JSON.stringify(inOrder(value));

/** The item without what tells a copy from it: its id and the number after its name. */
const bare = ({ id: _, name, ...rest }: Named): string =>
  textOf({ ...rest, name: name.replace(/ \d+$/, '') });

const fresh = (wished: string, taken: Pick<ReadonlySet<string>, 'has'>): string => {
  let name = wished;
  for (let number = 2; taken.has(name); number += 1) name = `${wished} ${number}`;
  return name;
};

/** What comes of two items of one id that are not the same: results of the same thing add up. */
export type JoinItems<Item> = (present: Item, incoming: Item) => Item;

/**
 * Items under ids of their own, since a change of one of two with the same id would take the place of both: a later one
 * that differs gets a number, or is joined with the first where that makes sense; one that is the same goes.
 */
export const withOwnIds = <Item extends Named>(
  items: readonly Item[],
  join?: JoinItems<Item>,
): readonly Item[] => {
  const byId = new Map<string, Item>();
  for (const item of items) {
    const before = byId.get(item.id);
    if (before === undefined) byId.set(item.id, item);
    else if (join !== undefined) byId.set(item.id, join(before, item));
    else if (textOf(before) !== textOf(item)) {
      const id = fresh(item.id, byId);
      byId.set(id, { ...item, id });
    }
  }
  return [...byId.values()];
};

/** What comes in joined with what is there under the same id. */
const joinItems = <Item extends Named>(
  present: readonly Item[],
  incoming: readonly Item[],
  join: JoinItems<Item>,
): MergedItems<Item> => {
  const byId = new Map(present.map((item) => [item.id, item]));
  const changed = incoming.flatMap((item) => {
    const before = byId.get(item.id);
    const joined = before === undefined ? item : join(before, item);
    return before !== undefined && textOf(before) === textOf(joined) ? [] : [joined];
  });
  return { added: changed, known: incoming.length - changed.length, copied: 0, newIds: new Map() };
};

/**
 * Puts items beside others without doubling or losing one: what is there already stays as it is, and what has become
 * different under the same id is kept beside it, under an id and a name of its own; or joined with it, where that makes
 * sense.
 */
export const mergeItems = <Item extends Named>(
  present: readonly Item[],
  incoming: readonly Item[],
  join?: JoinItems<Item>,
): MergedItems<Item> => {
  if (join !== undefined) return joinItems(present, incoming, join);
  const byId = new Map(present.map((item) => [item.id, textOf(item)]));
  const byContent = new Map(present.map((item) => [bare(item), item.id]));
  const names = new Set(present.map(({ name }) => name));
  const added: Item[] = [];
  const newIds = new Map<string, string>();
  let known = 0;
  let copied = 0;
  for (const item of incoming) {
    const twin = byId.get(item.id) === textOf(item) ? item.id : byContent.get(bare(item));
    if (twin !== undefined) {
      known += 1;
      if (twin !== item.id) newIds.set(item.id, twin);
      continue;
    }
    const taken = byId.has(item.id);
    const id = fresh(item.id, byId);
    const kept = { ...item, id, name: taken ? fresh(item.name, names) : item.name };
    if (taken) {
      copied += 1;
      newIds.set(item.id, id);
    }
    added.push(kept);
    byId.set(id, textOf(kept));
    byContent.set(bare(kept), id);
    names.add(kept.name);
  }
  return { added, known, copied, newIds };
};

/** A value with every text that is an old id replaced by the new one, however deep it lies. */
export const withNewIds = (value: unknown, newIds: NewIds): unknown => {
  if (typeof value === 'string') return newIds.get(value) ?? value;
  if (Array.isArray(value)) return value.map((each) => withNewIds(each, newIds));
  if (!isRecord(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, withNewIds(each, newIds)]));
};
