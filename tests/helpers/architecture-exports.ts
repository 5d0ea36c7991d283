import ts from 'typescript-6';
import { resolveImport, type Sources } from './architecture-imports';

/** Names that a statement exports as values; types are left aside, since they name what values are made of. */
const valuesExported = (node: ts.Statement): readonly string[] => {
  const isExported =
    ts.canHaveModifiers(node) &&
    ts.getModifiers(node)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
  if (!isExported) return [];
  if (ts.isFunctionDeclaration(node) || ts.isClassDeclaration(node)) return node.name ? [node.name.text] : [];
  if (!ts.isVariableStatement(node)) return [];
  return node.declarationList.declarations.flatMap(({ name }) =>
    ts.isIdentifier(name)
      ? [name.text]
      : name.elements.flatMap((each) => ('name' in each ? each.name.getText() : [])),
  );
};

/** `file#name` of everything a tree imports by name; `file#*` where it takes the whole module. */
const usesOf = (sources: Sources, tree: ts.SourceFile): readonly string[] => {
  const uses: string[] = [];
  const use = (specifier: ts.Node | undefined, names: readonly string[]): void => {
    if (specifier === undefined || !ts.isStringLiteralLike(specifier)) return;
    const [target = ''] = specifier.text.split('?');
    const file = resolveImport(sources, { file: tree.fileName, target });
    if (file !== null) uses.push(...names.map((name) => `${file}#${name}`));
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      const bindings = node.importClause?.namedBindings;
      const named = bindings !== undefined && ts.isNamedImports(bindings) ? bindings.elements : [];
      use(
        node.moduleSpecifier,
        bindings !== undefined && ts.isNamespaceImport(bindings)
          ? ['*']
          : named.map(({ name, propertyName }) => (propertyName ?? name).text),
      );
    } else if (ts.isExportDeclaration(node)) {
      const names =
        node.exportClause && ts.isNamedExports(node.exportClause) ? node.exportClause.elements : [];
      use(
        node.moduleSpecifier,
        names.map(({ name, propertyName }) => (propertyName ?? name).text),
      );
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      use(node.arguments[0], ['*']);
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return uses;
};

/**
 * Values that are exported and used nowhere in the code but perhaps by tests, as `file: name`.
 * @param trees of all code; names of files are relative to one folder.
 */
export const deadExports = (sources: Sources, trees: readonly ts.SourceFile[]): readonly string[] => {
  const used = new Set(trees.flatMap((tree) => usesOf(sources, tree)));
  return trees.flatMap((tree) =>
    tree.statements.flatMap(valuesExported).flatMap((name) => {
      const { fileName, text } = tree;
      const usedElsewhere = used.has(`${fileName}#${name}`) || used.has(`${fileName}#*`);
      const usedHere = text.split(new RegExp(`\\b${name}\\b`)).length > 2;
      return usedElsewhere || usedHere ? [] : [`${fileName}: ${name}`];
    }),
  );
};
