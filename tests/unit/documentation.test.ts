import ts from 'typescript-6';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { parseSources, readSources } from '../helpers/architecture-imports';

/** The code files of src with their syntax trees. */
const trees = parseSources(readSources());

interface Export {
  readonly file: string;
  readonly name: string;
  readonly doc: string;
  readonly isFunction: boolean;
}

const isExported = (node: ts.Statement): boolean =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false);

const docOf = (node: ts.Node): string =>
  ts
    .getJSDocCommentsAndTags(node)
    .map((part) =>
      part
        .getText()
        .slice('/**'.length, -'*/'.length)
        .replace(/^ *\* ?/gm, ''),
    )
    .join('\n');

const exportsOf = (tree: ts.SourceFile): readonly Export[] =>
  tree.statements.filter(isExported).flatMap((node) => {
    const doc = docOf(node);
    const file = tree.fileName;
    if (ts.isFunctionDeclaration(node) || ts.isClassDeclaration(node))
      return [{ file, name: node.name?.text ?? '', doc, isFunction: true }];
    if (!ts.isVariableStatement(node)) return [];
    return node.declarationList.declarations.map(({ name, initializer }) => ({
      file,
      name: name.getText(),
      doc,
      isFunction: initializer !== undefined && ts.isArrowFunction(initializer),
    }));
  });

/** What one function takes, or a slice of the state has: said where that is. */
const SAID_ELSEWHERE = /(?:Options|Spec|Order|Request|Devices|Commands|State)$/;

/** Exported types, but for those whose list of values stands beside them. */
const typesOf = (tree: ts.SourceFile): readonly Omit<Export, 'isFunction'>[] =>
  tree.statements.filter(isExported).flatMap((node) => {
    if (!ts.isInterfaceDeclaration(node) && !ts.isTypeAliasDeclaration(node)) return [];
    const isOfList = ts.isTypeAliasDeclaration(node) && node.type.getText().includes('typeof');
    if (isOfList || SAID_ELSEWHERE.test(node.name.text)) return [];
    return [{ file: tree.fileName, name: node.name.text, doc: docOf(node) }];
  });

const exported = trees.flatMap(exportsOf);

const words = (text: string): readonly string[] =>
  text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter(Boolean);

/** Words that say nothing by themselves. */
const EMPTY = new Set(
  'a an the of for in to and create creates make makes get gets return returns'.split(' '),
);

/** Whether a comment says no more than a name does. */
const isEmpty = (doc: string, name: string): boolean =>
  words(doc).every((word) => EMPTY.has(word) || words(name).includes(word));

const modules = import.meta.glob<Readonly<Record<string, unknown>>>('../../src/core/**/*.ts');

/** What an example calls: exports of core, by the names it uses, and valibot. */
const scopeOf = async (code: string): Promise<Readonly<Record<string, unknown>>> => {
  const used = exported.filter(({ file, name }) => file.startsWith('core/') && code.includes(name));
  const loaded = used.map(async ({ file, name }) => {
    const module = await modules[`../../src/${file}`]?.();
    return [name, module?.[name]] as const;
  });
  return { v, ...Object.fromEntries(await Promise.all(loaded)) };
};

/** Runs an example: a line `expression // value` is a claim, every other line is carried out. Returns the claims. */
const runExample = async (code: string): Promise<readonly (readonly [told: unknown, is: unknown])[]> => {
  const scope = await scopeOf(code);
  const lines = code.split('\n').map((line) => {
    const [, expression, value] = /^(\S.*[^;]) \/\/ (.+)$/.exec(line) ?? [];
    return expression === undefined ? line : `claims.push([(${value}), (${expression})]);`;
  });
  const claims: [unknown, unknown][] = [];
  new Function('claims', ...Object.keys(scope), lines.join('\n'))(claims, ...Object.values(scope));
  return claims;
};

/** Examples on lines of their own; one beside the word `@example` is a sketch. */
const examples = exported
  .filter(({ file, doc }) => file.startsWith('core/') && doc.includes('@example\n'))
  .map(({ name, doc }) => [name, (doc.split('@example\n')[1] ?? '').split(/\n@/)[0] ?? ''] as const);

describe('the documentation of src', () => {
  it('says of every exported function what its name does not', () => {
    const silent = exported
      .filter(({ isFunction }) => isFunction)
      .filter(({ name, doc }) => isEmpty(doc, name))
      .map(({ file, name }) => `${file}: ${name}`);
    expect(silent).toEqual([]);
  });

  it('says of every exported type what its name does not', () => {
    const silent = trees
      .flatMap(typesOf)
      .filter(({ name, doc }) => isEmpty(doc, name))
      .map(({ file, name }) => `${file}: ${name}`);
    expect(silent).toEqual([]);
  });

  it('has an example on what readers start from', () => {
    expect(examples.map(([name]) => name)).toEqual(
      expect.arrayContaining([
        'buildChart',
        'buildHarp',
        'createEar',
        'findLine',
        'fitChart',
        'parseSettings',
        'readChart',
        'readPhrase',
        'readSteps',
        'romanChord',
        'sectionAt',
        'setting',
        'tab',
      ]),
    );
  });

  it.each(examples)('is right about %s', async (_, code) => {
    const claims = await runExample(code);
    expect(claims.length).toBeGreaterThan(0);
    for (const [told, is] of claims) expect(is).toEqual(told);
  });
});
