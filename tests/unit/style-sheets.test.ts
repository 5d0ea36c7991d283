import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../../src/ui');

/** Sheets that are there to say something of other sheets' classes: layout, contrast, paper. */
const ABOUT_OTHERS = ['layout.css', 'contrast.css', 'print.css'];

describe('the style sheets', () => {
  it('use no class for two things: all of them stand in one page, in an order the builder chooses', () => {
    const owners = new Map<string, string[]>();
    for (const path of readdirSync(ROOT, { encoding: 'utf8', recursive: true })) {
      if (!path.endsWith('.css') || ABOUT_OTHERS.includes(basename(path))) continue;
      const text = readFileSync(join(ROOT, path), 'utf8');
      const classes = new Set([...text.matchAll(/^\.([\w-]+)\s*\{/gm)].map(([, name = '']) => name));
      for (const name of classes) owners.set(name, [...(owners.get(name) ?? []), path]);
    }
    expect(owners.size).toBeGreaterThan(100);
    expect([...owners].filter(([, paths]) => paths.length > 1)).toEqual([]);
  });
});
