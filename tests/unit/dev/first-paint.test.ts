import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt } from '../../../.dev/build.mjs';

/** Script the browser must have before it can draw the stand, packed; React is 67 kB of it. Whatever the first picture does without comes later. */
const MOST_GZIP_BYTES = 125_000;

/** What a built script names with an import that runs before it does: `import … from "./x.js"`, `import "./x.js"`. */
const STATIC_IMPORT =
  /(?:^|[;}\s])(?:import|export)\s*(?:[^"'();]*?\sfrom\s*|[^"'();]*?\}\s*from\s*)?["'](\.[^"']+\.js)["']/g;

/** A word out of each part that comes later. */
const LATER = {
  'the care panel': 'audiologist',
  paper: 'So long a chart leaves no room',
  'a lead sheet': 'score-partwise',
  MIDI: 'MThd',
  'the limiter of the band': 'createDynamicsCompressor',
  'the sign for your turn': 'call-note',
  'the search for a line': 'A breath is comfortable',
  'what a feel plays': 'xo Xo xo Xo',
  'the ear': 'getUserMedia',
  'what is heard, over the map': 'heard-ring',
  'the book': 'song-gone',
  commands: 'harp-swap',
  'charts of the player’s own': 'chart-drafts',
};

let folder = '';
const textOf = (path: string): string => readFileSync(join(folder, path), 'utf8');

/** The scripts of the page and all they import statically, by path in the built folder. */
const firstScripts = (): readonly string[] => {
  const scripts = [...textOf('index.html').matchAll(/<script type="module"[^>]*src="\.\/([^"]+)"/g)];
  const found = new Set(scripts.flatMap(([, path]) => path ?? []));
  for (const path of found) {
    for (const [, name] of textOf(path).matchAll(STATIC_IMPORT))
      if (name !== undefined) found.add(posix.join(posix.dirname(path), name));
  }
  return [...found];
};

describe('the built page', () => {
  beforeAll(async () => {
    folder = await ensureBuilt();
  }, 120_000);

  it(`needs at most ${MOST_GZIP_BYTES / 1000} kB of script, packed, before it is drawn`, () => {
    const bytes = firstScripts().reduce((sum, path) => sum + gzipSync(textOf(path)).length, 0);
    expect(bytes).toBeGreaterThan(60_000);
    expect(bytes).toBeLessThanOrEqual(MOST_GZIP_BYTES);
  });

  it('has panels, paper, files and the band in scripts of their own', () => {
    const first = new Set(firstScripts());
    const all = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.js'));
    for (const [part, word] of Object.entries(LATER)) {
      const scripts = all.map((name) => `assets/${name}`).filter((path) => textOf(path).includes(word));
      expect([part, scripts.length > 0, scripts.filter((path) => first.has(path))]).toEqual([part, true, []]);
    }
  });
});
