// Which script of the page a module goes into: left alone, the builder makes a file of every overlap between parts.
import { join } from 'node:path';
import { ROOT } from './run.mjs';

const ENTRY = join(ROOT, 'src', 'main.tsx');
const FEATURES = join(ROOT, 'src', 'app', 'session', 'features.ts');

/** All that modules need before they run, themselves included. */
const neededBy = (ids, infoOf) => {
  const found = new Set(ids);
  for (const id of found) for (const next of infoOf(id)?.importedIds ?? []) found.add(next);
  return found;
};

const dynamicImportsOf = (id, infoOf) => infoOf(id)?.dynamicallyImportedIds ?? [];

let known = null;

const partsOf = (context) => {
  const infoOf = (each) => context.getModuleInfo(each);
  known ??= {
    stand: neededBy([ENTRY], infoOf),
    session: neededBy([...dynamicImportsOf(ENTRY, infoOf), ...dynamicImportsOf(FEATURES, infoOf)], infoOf),
  };
  return known;
};

/** Groups of modules that go into one script each: what the first picture needs, and then what carries commands out. */
export const SCRIPTS = [
  { name: (id, context) => (partsOf(context).stand.has(id) ? 'stand' : null), priority: 2 },
  { name: (id, context) => (partsOf(context).session.has(id) ? 'session' : null), priority: 1 },
];
