import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ENTRIES } from '../../src/ui/page/entries';

const ROOT = join(import.meta.dirname, '../../src');
/** What is no entry at the top: the choice of a form, and the case, which is a part of its panel. */
const OTHERS = ['Form'];
const PARTS = ['Your case'];

const namesOf = (first: string): readonly string[] => {
  const entry = ENTRIES.find(({ text }) => text === first);
  return [...(entry?.pages.map(({ text }) => text) ?? []), ...PARTS];
};

const SOURCES = readdirSync(ROOT, { encoding: 'utf8', recursive: true })
  .filter((path) => /\.tsx?$/.test(path))
  .map((path) => [path, readFileSync(join(ROOT, path), 'utf8')] as const);

const said = (text: string): string => text.replaceAll(/\/\*.*?\*\/|^\s*\/\/.*$/gms, '');

/** Every “under Entry, Page” that the sentences of the program say, comments left out. */
const placesIn = (text: string): readonly (readonly [string, string | undefined])[] =>
  [...said(text).matchAll(/\bunder ([A-Z][a-z]+(?: away)?)(?:, ([A-Z]\w+(?: the band| case)?))?/g)].map(
    ([, first = '', second]) => [first, second],
  );

describe('the places that sentences send the player to', () => {
  it('are entries at the top, and pages of theirs by the names they have there', () => {
    const places = SOURCES.flatMap(([path, text]) =>
      placesIn(text).map((place) => [path, ...place] as const),
    );
    const wrong = places.filter(
      ([, first, second]) =>
        (!ENTRIES.some(({ text }) => text === first) && !OTHERS.includes(first)) ||
        (second !== undefined && !namesOf(first).includes(second)),
    );
    expect(places.length).toBeGreaterThan(15);
    expect(wrong).toEqual([]);
  });

  it('are never the page loaded again: without a network that may be the end of it', () => {
    const advice = /(?:re)?load (?:the|this) page|reload (?:it|and)|refresh (?:the|this) page/i;
    expect(advice.test('If that does not help, load the page anew.')).toBe(true);
    expect(SOURCES.filter(([, text]) => advice.test(said(text))).map(([path]) => path)).toEqual([]);
  });
});
