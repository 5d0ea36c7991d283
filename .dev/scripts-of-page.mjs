// Which script of the page a module goes into: left alone, the builder makes a file of every overlap between parts.
import { join } from 'node:path';
import { ROOT } from './run.mjs';

const ENTRY = join(ROOT, 'src', 'main.tsx');
const APP = join(ROOT, 'src', 'app');
const BAND = join(ROOT, 'src', 'audio', 'band');
const CORE = join(ROOT, 'src', 'core');
const UI = join(ROOT, 'src', 'ui');

/** All that modules need before they run, themselves included. */
const neededBy = (ids, infoOf) => {
  const found = new Set(ids);
  for (const id of found) for (const next of infoOf(id)?.importedIds ?? []) found.add(next);
  return found;
};

let known = null;

const partsOf = (context) => {
  if (known !== null) return known;
  const infoOf = (each) => context.getModuleInfo(each);
  const fetchedBy = (ids, isOne) =>
    neededBy(
      [...ids].filter(isOne).flatMap((each) => infoOf(each)?.dynamicallyImportedIds ?? []),
      infoOf,
    );
  const stand = neededBy([ENTRY], infoOf);
  const session = fetchedBy(stand, (id) => id === ENTRY || id.startsWith(APP));
  const band = fetchedBy(session, (id) => id.startsWith(BAND));
  const music = new Set([...band].filter((id) => id.startsWith(CORE)));
  known = { stand, session, music, views: fetchedBy(stand, (id) => id.startsWith(UI)) };
  return known;
};

const group = (part, priority) => ({
  debugName: part,
  name: (id, context) => (partsOf(context)[part].has(id) ? part : null),
  priority,
});

/**
 * Groups of modules that go into one script each: what the first picture needs, what carries commands out, the music
 * that band and paper share, and every view that comes later.
 */
export const SCRIPTS = [group('stand', 4), group('session', 3), group('music', 2), group('views', 1)];
