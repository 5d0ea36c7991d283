import ts from 'typescript-6';
import { parseSources, type Sources } from './architecture-imports';

/**
 * Names of the language that pure code may use without declaring them. Anything else is a clock, chance, the
 * browser or Node, or belongs in this list on purpose.
 */
const ALLOWED = new Set(
  `Array ArrayBuffer ArrayLike BigInt Boolean DataView Error Exclude Extract Float32Array Float64Array Infinity
  Int16Array Int32Array Int8Array Iterable IterableIterator Generator JSON Map Math NaN NonNullable Number Object Omit
  Parameters Partial Pick RangeError Readonly ReadonlyArray ReadonlyMap ReadonlySet Record RegExp RegExpMatchArray
  RegExpExecArray Required ReturnType Set String Symbol TypeError Uint16Array Uint32Array Uint8Array Uint8ClampedArray
  WeakMap isFinite isNaN parseFloat parseInt undefined const`.split(/\s+/),
);

/** False for names that stand after a dot or name a property: they belong to a value, whatever its type. */
const isReference = (node: ts.Identifier): boolean => {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isQualifiedName(parent)) return parent.left === node;
  if (ts.isBindingElement(parent)) return parent.propertyName !== node;
  if (ts.isPropertyAssignment(parent)) return parent.name !== node;
  if (ts.isJsxAttribute(parent) || ts.isLabeledStatement(parent) || ts.isNamedTupleMember(parent))
    return false;
  if (ts.isImportSpecifier(parent) || ts.isExportSpecifier(parent) || ts.isMetaProperty(parent)) return false;
  return !ts.isBreakOrContinueStatement(parent);
};

const createProgramOf = (trees: readonly ts.SourceFile[]): ts.Program => {
  const byName = new Map(trees.map((tree) => [tree.fileName, tree]));
  return ts.createProgram({
    rootNames: [...byName.keys()],
    options: { noLib: true, noResolve: true, types: [] },
    host: {
      fileExists: (path) => byName.has(path),
      getCanonicalFileName: (path) => path,
      getCurrentDirectory: () => '',
      getDefaultLibFileName: () => '',
      getNewLine: () => '\n',
      getSourceFile: (path) => byName.get(path),
      readFile: () => undefined,
      useCaseSensitiveFileNames: () => true,
      writeFile: () => undefined,
    },
  });
};

const isDeclared = (checker: ts.TypeChecker, node: ts.Identifier): boolean => {
  const symbol = ts.isShorthandPropertyAssignment(node.parent)
    ? checker.getShorthandAssignmentValueSymbol(node.parent)
    : checker.getSymbolAtLocation(node);
  return (symbol?.declarations?.length ?? 0) > 0;
};

/** What is wrong with the use of a name in pure code, or null. */
const problemOf = (checker: ts.TypeChecker, node: ts.Node): string | null => {
  if (ts.isMetaProperty(node)) return node.getText();
  if (!ts.isIdentifier(node) || !isReference(node) || isDeclared(checker, node)) return null;
  if (node.text === 'Math') {
    const { parent } = node;
    if (!ts.isPropertyAccessExpression(parent)) return 'Math other than as Math.name';
    return parent.name.text === 'random' ? 'Math.random' : null;
  }
  return ALLOWED.has(node.text) ? null : node.text;
};

/** Uses, in the given files, of names that pure code may not use, as `file:line uses name`. */
export const impureNames = (sources: Sources): readonly string[] => {
  const trees = parseSources(sources);
  const checker = createProgramOf(trees).getTypeChecker();
  return trees.flatMap((tree) => {
    const found: string[] = [];
    const visit = (node: ts.Node): void => {
      const problem = problemOf(checker, node);
      if (problem !== null) {
        const { line } = tree.getLineAndCharacterOfPosition(node.getStart(tree));
        found.push(`${tree.fileName}:${line + 1} uses ${problem}`);
      }
      ts.forEachChild(node, visit);
    };
    visit(tree);
    return found;
  });
};
