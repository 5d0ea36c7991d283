import fc from 'fast-check';

/** A change of one place anywhere in a stored value. */
interface Mutation {
  readonly at: number;
  readonly how: 'replace' | 'drop' | 'double' | 'shorten' | 'nudge';
  readonly by: unknown;
}

const NASTY: readonly unknown[] = [
  null,
  true,
  '',
  'equal',
  '\u0000',
  '__proto__',
  'x'.repeat(200),
  0,
  -0,
  -1,
  0.5,
  1e9,
  Number.MAX_SAFE_INTEGER,
  1e308,
  [],
  {},
  [[]],
  [null],
  { cents: { blow: [], draw: [] } },
  { cents: { blow: Array(12).fill(3), draw: Array(12).fill(-3) } },
  { kind: 'list', keys: [0] },
  { from: 5, to: 90 },
];

const mutation: fc.Arbitrary<Mutation> = fc.record({
  at: fc.nat(),
  how: fc.constantFrom<Mutation['how']>('replace', 'replace', 'drop', 'double', 'shorten', 'nudge'),
  by: fc.oneof(fc.constantFrom(...NASTY), fc.integer({ min: -20, max: 200 }), fc.string({ maxLength: 8 })),
});

type Holder = Record<string, unknown>;

const isHolder = (value: unknown): value is Holder => typeof value === 'object' && value !== null;

/** Every place in a value: the object or array that holds it, and its name there. */
const placesIn = (holder: Holder): (readonly [Holder, string])[] =>
  Object.keys(holder).flatMap((key): (readonly [Holder, string])[] => {
    const value = holder[key];
    return [[holder, key], ...(isHolder(value) ? placesIn(value) : [])];
  });

const mutate = (root: Holder, { at, how, by }: Mutation): void => {
  const places = placesIn(root);
  const place = places[at % Math.max(1, places.length)];
  if (place === undefined) return;
  const [holder, key] = place;
  const value = holder[key];
  if (how === 'drop') {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  } else if (how === 'double' && Array.isArray(value)) holder[key] = [...value, ...value];
  else if (how === 'shorten' && Array.isArray(value)) holder[key] = value.slice(0, value.length >> 1);
  else if (how === 'nudge' && typeof value === 'number') holder[key] = value + (at % 7) - 3;
  else holder[key] = structuredClone(by);
};

/** Values as a storage might give them back: good ones changed in up to six places. */
export const poisoned = (bases: readonly unknown[]): fc.Arbitrary<unknown> =>
  fc
    .record({
      base: fc.constantFrom(...bases.map((base) => JSON.stringify(base))),
      mutations: fc.array(mutation, { maxLength: 6 }),
    })
    .map(({ base, mutations }) => {
      const root: unknown = JSON.parse(base);
      for (const each of mutations) if (isHolder(root)) mutate(root, each);
      return root;
    });
