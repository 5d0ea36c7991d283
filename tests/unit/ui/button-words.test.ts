import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const PANELS = 'src/ui/panels';

/** The words that begin buttons, as JSX text on a line of its own or as the name of an act. */
const buttonWords = (text: string): readonly string[] =>
  [...text.matchAll(/^ +([A-Z][a-z]+(?: out| it)?)(?= |$)|act\('([A-Z][a-z]+)'/gm)].map(
    ([, line, act]) => line ?? act ?? '',
  );

const words = new Map(
  readdirSync(PANELS, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path))
    .flatMap((path) =>
      buttonWords(readFileSync(join(PANELS, path), 'utf8')).map((word) => [word, path] as const),
    ),
);

describe('buttons', () => {
  it('have one word for one act', () => {
    expect(['Take out', 'Remove', 'Erase', 'Discard'].filter((word) => words.has(word))).toEqual([]);
    expect(['Delete', 'Forget', 'Out', 'Duplicate'].filter((word) => !words.has(word))).toEqual([]);
  });
});
