import { execFileSync } from 'node:child_process';
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

/** Every tracked file and folder, each with a slash before it. */
const tracked = execFileSync('git', ['ls-files', '-z'], { encoding: 'utf8' })
  .split('\0')
  .flatMap((path) => path.split('/').map((_, i, parts) => `/${parts.slice(0, i + 1).join('/')}`));

/** What stands between backticks and has the shape of a path, or of a file of code. */
const pathsIn = (markdown: string): readonly string[] =>
  [...markdown.replace(/```.*?```/gs, '').matchAll(/`([^`\n]+)`/g)]
    .flatMap(([, code = '']) => code.split(/\s+/))
    .filter((word) => /^\.?[\w-][\w.-]*(\/[\w.-]+)+$|^[\w-][\w.-]*\.(tsx?|mjs|css)$/.test(word))
    .filter((word) => word !== 'tests/bench/name.bench.ts');

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

  it.each(['DEVELOPERS.md', 'README.md'])('is true of the files: %s names none that is gone', (name) => {
    const paths = pathsIn(readFileSync(name, 'utf8'));
    expect(paths.filter((path) => !tracked.some((each) => each.endsWith(`/${path}`)))).toEqual([]);
    expect(pathsIn('`app/tune.ts`, `src/core/song`, `4/4`, `feels.ts`')).toEqual([
      'app/tune.ts',
      'src/core/song',
      '4/4',
      'feels.ts',
    ]);
  });

  it('names every command of package.json, and no other', () => {
    const { scripts } = JSON.parse(readFileSync('package.json', 'utf8'));
    const told = tableBelow('Commands').map(
      ([command = '']) => command.match(/^`npm (?:run )?([^ `]+)/)?.[1],
    );
    expect(told).toEqual(Object.keys(scripts));
  });
});
