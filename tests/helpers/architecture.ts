import { posix } from 'node:path';
import { type Import, importsOf, parseSources, resolveImport, type Sources } from './architecture-imports';
import { impureNames } from './architecture-names';
import { FOLDERS, isPure, LONGEST_FILE, MOST_FILES, PACKAGES } from './architecture-rules';

/** The folder of the table a path below src belongs to. */
export const folderOf = (path: string): string => posix.dirname(path);

/** The row of the table for a folder: its own, or that of all folders beside it. */
const rowOf = (folder: string): string =>
  FOLDERS.some((rule) => rule.folder === folder) ? folder : `${posix.dirname(folder)}/*`;

const packageOf = (target: string): string =>
  target
    .split('/')
    .slice(0, target.startsWith('@') ? 2 : 1)
    .join('/');

const packageProblem = ({ file, line, target }: Import): string | null => {
  const name = packageOf(target);
  const folders = PACKAGES[name];
  if (!folders) return `${file}:${line} imports ${name}, which is not in the package table`;
  const folder = folderOf(file);
  return folders.includes(rowOf(folder)) ? null : `${file}:${line} imports ${name}, which ${folder} may not`;
};

const fileProblem = (sources: Sources, use: Import): string | null => {
  const { file, line, target, typeOnly } = use;
  const path = resolveImport(sources, use);
  if (path === null) {
    const known = /\.(svg|png|woff2)$/.test(target);
    return known ? null : `${file}:${line} imports ${target}, which is no file below src`;
  }
  const from = folderOf(file);
  const to = folderOf(path);
  const imports = FOLDERS.find(({ folder }) => folder === rowOf(from))?.imports ?? [];
  const row = rowOf(to);
  if (from === to || imports.includes(row) || (typeOnly && imports.includes(`type ${row}`))) return null;
  return `${file}:${line} imports ${to}${typeOnly ? ' (type)' : ''}, which ${from} may not`;
};

/** Nodes that reach themselves along the edges, each as the loop that was found. */
const loopsIn = (edges: ReadonlyMap<string, ReadonlySet<string>>): readonly string[] => {
  const done = new Set<string>();
  const loops: string[] = [];
  const walk = (node: string, path: readonly string[]): void => {
    const start = path.indexOf(node);
    if (start >= 0) loops.push([...path.slice(start), node].join(' -> '));
    if (start >= 0 || done.has(node)) return;
    for (const next of edges.get(node) ?? []) walk(next, [...path, node]);
    done.add(node);
  };
  for (const node of edges.keys()) walk(node, []);
  return loops;
};

const edgesOf = (pairs: readonly (readonly [string, string])[]): ReadonlyMap<string, ReadonlySet<string>> => {
  const edges = new Map<string, Set<string>>();
  for (const [from, to] of pairs) edges.set(from, (edges.get(from) ?? new Set()).add(to));
  return edges;
};

/** Import loops between files and between folders, type imports included. */
const cycleProblems = (sources: Sources, imports: readonly Import[]): readonly string[] => {
  const files = imports.flatMap((use): (readonly [string, string])[] => {
    const to = use.target.startsWith('.') ? resolveImport(sources, use) : null;
    return to === null ? [] : [[use.file, to]];
  });
  const folders = files
    .map(([from, to]) => [folderOf(from), folderOf(to)] as const)
    .filter(([from, to]) => from !== to);
  return [...loopsIn(edgesOf(files)), ...loopsIn(edgesOf(folders))].map((loop) => `import cycle: ${loop}`);
};

const folderProblems = (sources: Sources): readonly string[] =>
  [...new Set([...sources.keys()].map(folderOf))]
    .filter((name) => !FOLDERS.some(({ folder }) => folder === rowOf(name)))
    .filter((name) => name !== 'core' || [...sources.keys()].some((path) => /^core\/[^/]+\.tsx?$/.test(path)))
    .map((name) => `${name} is not in the folder table`);

const sizeProblems = (sources: Sources): readonly string[] =>
  [...sources]
    .filter(([path]) => /\.tsx?$/.test(path))
    .map(([path, text]) => [path, text.replace(/\n$/, '').split('\n').length] as const)
    .filter(([, lines]) => lines > LONGEST_FILE)
    .map(([path, lines]) => `${path} has ${lines} lines, more than ${LONGEST_FILE}`);

const crowdProblems = (sources: Sources): readonly string[] => {
  const counts = new Map<string, number>();
  for (const path of sources.keys()) counts.set(folderOf(path), (counts.get(folderOf(path)) ?? 0) + 1);
  return [...counts]
    .filter(([, files]) => files > MOST_FILES)
    .map(([folder, files]) => `${folder} holds ${files} files, more than ${MOST_FILES}`);
};

const purityProblems = (sources: Sources): readonly string[] =>
  impureNames(new Map([...sources].filter(([path]) => isPure(folderOf(path))))).map(
    (use) => `${use}: pure code takes time, chance and devices as arguments`,
  );

/** Everything in which the sources break the rules of architecture-rules.ts, one sentence each. */
export const checkArchitecture = (sources: Sources): readonly string[] => {
  const imports = importsOf(sources, parseSources(sources));
  return [
    ...folderProblems(sources),
    ...imports.flatMap((use) => {
      const problem = use.target.startsWith('.') ? fileProblem(sources, use) : packageProblem(use);
      return problem === null ? [] : [problem];
    }),
    ...cycleProblems(sources, imports),
    ...purityProblems(sources),
    ...sizeProblems(sources),
    ...crowdProblems(sources),
  ];
};
