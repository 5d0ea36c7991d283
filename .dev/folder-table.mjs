// Writes the table of folders in DEVELOPERS.md anew from the rules that the architecture test enforces.
import { readFile, writeFile } from 'node:fs/promises';
import ts from 'typescript-6';

const root = new URL('../', import.meta.url);
const rulesText = await readFile(new URL('tests/helpers/architecture-rules.ts', root), 'utf8');
const { outputText } = ts.transpileModule(rulesText, {
  compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
});
const { FOLDERS, importsInWords, packagesInWords } = await import(
  `data:text/javascript;base64,${Buffer.from(outputText).toString('base64')}`
);

const rows = FOLDERS.map((rule) => [
  rule.folder === '.' ? '`src`' : `\`${rule.folder}\``,
  rule.holds,
  importsInWords(rule),
  packagesInWords(rule.folder),
]);
const table = [['folder of `src`', 'holds', 'may import', 'packages'], ['---', '---', '---', '---'], ...rows]
  .map((cells) => `| ${cells.join(' | ')} |`)
  .join('\n');

const document = new URL('DEVELOPERS.md', root);
const text = await readFile(document, 'utf8');
const old = /\| folder of `src`[^\n]*\n(?:\|[^\n]*\n)+/;
if (!old.test(text)) throw new Error('DEVELOPERS.md has no table that begins with "folder of `src`"');
await writeFile(
  document,
  text.replace(old, () => `${table}\n`),
);
