import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FOLDERS, importsInWords, packagesInWords } from '../helpers/architecture-rules';

const text = readFileSync('DEVELOPERS.md', 'utf8');

/** The rows of the table below a heading, as cells. */
const tableBelow = (heading: string): readonly (readonly string[])[] => {
  const [, section = ''] = text.split(`\n## ${heading}\n`);
  return section
    .split(/\n## /)[0]
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .slice(2)
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
};

describe('DEVELOPERS.md', () => {
  it('has the folder table that the architecture test enforces', () => {
    expect(tableBelow('Folders')).toEqual(
      FOLDERS.map((rule) => [
        rule.folder === '.' ? '`src`' : `\`${rule.folder}\``,
        rule.holds,
        importsInWords(rule),
        packagesInWords(rule.folder),
      ]),
    );
  });

  it('names every command of package.json, and no other', () => {
    const { scripts } = JSON.parse(readFileSync('package.json', 'utf8'));
    const told = tableBelow('Commands').map(
      ([command = '']) => command.match(/^`npm (?:run )?([^ `]+)/)?.[1],
    );
    expect(told).toEqual(Object.keys(scripts));
  });
});
