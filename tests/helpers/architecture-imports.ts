import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, sep } from 'node:path';
import ts from 'typescript-6';

/** Path below src, with slashes -> text. */
export type Sources = ReadonlyMap<string, string>;

export interface Import {
  readonly file: string;
  readonly line: number;
  /** What stands between the quotes, without a bundler's query. */
  readonly target: string;
  readonly typeOnly: boolean;
}

const isCode = (path: string): boolean => /\.tsx?$/.test(path);

/** By path: several tests read the whole of src, in one process. */
const parsed = new Map<string, ts.SourceFile>();

const parseSource = (path: string, text: string): ts.SourceFile => {
  const known = parsed.get(path);
  if (known?.text === text) return known;
  const tree = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  parsed.set(path, tree);
  return tree;
};

/** The syntax trees of the code files among the sources. */
export const parseSources = (sources: Sources): readonly ts.SourceFile[] =>
  [...sources].filter(([path]) => isCode(path)).map(([path, text]) => parseSource(path, text));

/** The code and styles of src as they are. */
export const readSources = (): Sources =>
  new Map(
    readdirSync('src', { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(tsx?|css)$/.test(name))
      .map((name) => [name.split(sep).join('/'), readFileSync(join('src', name), 'utf8')]),
  );

const importClauseIsTypes = (clause: ts.ImportClause | undefined): boolean => {
  if (!clause) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const { namedBindings } = clause;
  if (clause.name || !namedBindings || !ts.isNamedImports(namedBindings)) return false;
  return namedBindings.elements.length > 0 && namedBindings.elements.every((element) => element.isTypeOnly);
};

const isUrlOfModule = (node: ts.Node): node is ts.NewExpression =>
  ts.isNewExpression(node) &&
  ts.isIdentifier(node.expression) &&
  node.expression.text === 'URL' &&
  node.arguments?.[1]?.getText() === 'import.meta.url';

/** The import a syntax node makes, if any: declarations, re-exports, types, dynamic imports, worker addresses. */
const importOf = (node: ts.Node): { specifier: ts.Node | undefined; typeOnly: boolean } | null => {
  if (ts.isImportDeclaration(node)) {
    return { specifier: node.moduleSpecifier, typeOnly: importClauseIsTypes(node.importClause) };
  }
  if (ts.isExportDeclaration(node)) return { specifier: node.moduleSpecifier, typeOnly: node.isTypeOnly };
  if (ts.isImportTypeNode(node)) {
    const { argument } = node;
    return { specifier: ts.isLiteralTypeNode(argument) ? argument.literal : undefined, typeOnly: true };
  }
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
    return { specifier: node.arguments[0], typeOnly: false };
  }
  return isUrlOfModule(node) ? { specifier: node.arguments?.[0], typeOnly: false } : null;
};

const lineOf = (tree: ts.SourceFile, node: ts.Node): number =>
  tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;

const importsOfCode = (tree: ts.SourceFile): readonly Import[] => {
  const found: Import[] = [];
  const visit = (node: ts.Node): void => {
    const made = importOf(node);
    if (made?.specifier) {
      const target = ts.isStringLiteralLike(made.specifier)
        ? made.specifier.text
        : `(computed: ${made.specifier.getText(tree)})`;
      const [path = ''] = target.split('?');
      found.push({ file: tree.fileName, line: lineOf(tree, node), target: path, typeOnly: made.typeOnly });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
};

const importsOfStyle = (file: string, text: string): readonly Import[] =>
  [...text.matchAll(/@import\s+(?:url\()?\s*["']([^"']+)["']|url\(\s*["']?([^"')]+)["']?\s*\)/g)]
    .map((match) => ({
      file,
      line: text.slice(0, match.index).split('\n').length,
      target: match[1] ?? match[2] ?? '',
      typeOnly: false,
    }))
    .filter(({ target }) => !target.startsWith('data:') && !target.startsWith('#'));

/** Every import of the code and of the style sheets. */
export const importsOf = (sources: Sources, trees: readonly ts.SourceFile[]): readonly Import[] => [
  ...trees.flatMap(importsOfCode),
  ...[...sources]
    .filter(([path]) => path.endsWith('.css'))
    .flatMap(([path, text]) => importsOfStyle(path, text)),
];

/** The file below src a relative import means, or null when there is none. */
export const resolveImport = (
  sources: Sources,
  { file, target }: Pick<Import, 'file' | 'target'>,
): string | null => {
  const base = posix.join(posix.dirname(file), target);
  return [base, `${base}.ts`, `${base}.tsx`].find((path) => sources.has(path)) ?? null;
};
