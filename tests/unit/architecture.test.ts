import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkArchitecture } from '../helpers/architecture';
import { deadExports } from '../helpers/architecture-exports';
import { parseSources, readSources } from '../helpers/architecture-imports';
import { PACKAGES } from '../helpers/architecture-rules';

/** Values that no other file of src uses, and why they are there. */
const AWAITED = [
  // `npm run hear` loads these by themselves.
  'core/formats/read-wav.ts: monoOf',
  'core/formats/read-wav.ts: readWav',
  'core/hearing/ear.ts: createEar',
  'core/hearing/grip-notes.ts: eachHole',
];

const readJson = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

describe('the project', () => {
  it('keeps every rule of the architecture', () => {
    expect(checkArchitecture(readSources())).toEqual([]);
  });

  it('exports nothing that only tests use, but for what is awaited', () => {
    const sources = readSources();
    const dead = deadExports(sources, parseSources(sources)).filter((each) => !AWAITED.includes(each));
    expect(dead).toEqual([]);
  });

  it('lists exactly the packages it depends on', () => {
    expect(readJson('package.json')).toMatchObject({ dependencies: expect.anything() });
    const { dependencies } = readJson('package.json') as { dependencies: Record<string, string> };
    expect(Object.keys(dependencies).sort()).toEqual(Object.keys(PACKAGES).sort());
  });

  it('has exactly the agreed top level', () => {
    const tracked = execFileSync('git', ['ls-files', '-z'], { encoding: 'utf8' }).split('\0').filter(Boolean);
    const top = new Set(
      tracked.map((path) => path.split('/')[0] ?? '').filter((name) => !name.startsWith('.')),
    );
    const agreed = [
      'DEVELOPERS.md',
      'README.md',
      'index.html',
      'package-lock.json',
      'package.json',
      'public',
      'src',
      'tests',
      'tsconfig.json',
      'vite.config.ts',
    ];
    expect([...top].sort()).toEqual(agreed);
  });

  it('keeps download addresses out of the lock file', () => {
    expect(readFileSync('package-lock.json', 'utf8')).not.toMatch(/"resolved"|https?:\/\/[^"]*\.tgz/);
  });
});

/** A small project that keeps every rule; each case below adds one file. */
const lawful: readonly (readonly [string, string])[] = [
  [
    'core/theory/units.ts',
    'export type Midi = number;\nexport const asMidi = (value: number): Midi => value;',
  ],
  [
    'core/chart/chart.ts',
    "import type { Midi } from '../theory/units';\nexport interface Chart { at: Midi }",
  ],
  ['core/harp/harp.ts', "import { asMidi } from '../theory/units';\nexport const reed = asMidi(60);"],
  ['core/hearing/frame.ts', 'export interface Frame { hz: number }\nexport const quiet: Frame = { hz: 0 };'],
  ['core/settings/settings.ts', "import { reed } from '../harp/harp';\nexport const first = reed;"],
  ['audio/voices/voice.ts', "import type { Midi } from '../../core/theory/units';\nexport type Note = Midi;"],
  ['audio/band/band.ts', "import { Gain } from 'tone';\nexport type Band = { gain: Gain };"],
  [
    'app/session/session.ts',
    "import type { Band } from '../../audio/band/band';\nexport type Session = { band: Band };",
  ],
  ['ui/state/row.tsx', "import { useState } from 'react';\nexport const Row = () => useState(0);"],
  ['ui/page/app.tsx', "import { Row } from '../state/row';\nimport './app.css';\nexport const App = Row;"],
  [
    'ui/page/app.css',
    '@import "@fontsource/noto-music/400.css";\n.a { background: url("data:image/png;base64,"); }',
  ],
  ['ui/panels/mixer/b.ts', "import '../../state/row';"],
  [
    'main.tsx',
    "import { App } from './ui/page/app';\nexport const main = async () => [App, await import('./audio/band/band')];",
  ],
];

const planting = (path: string, text: string): readonly string[] =>
  checkArchitecture(new Map([...lawful, [path, text]]));

describe('the checker', () => {
  it('finds nothing in a lawful project', () => {
    expect(checkArchitecture(new Map(lawful))).toEqual([]);
  });

  it.each([
    [
      'names as property, parameter and own variable',
      'export const f = (x: { Date: number }, window: number[]) => { const document = x.Date; return { fetch: window[document] }; };',
    ],
    [
      'the language itself',
      'export const f = (x: readonly number[]) => new Map(x.map((n) => [String(n), Math.floor(n)] as const));',
    ],
    ['a type of a later stage', "import type { Frame } from '../hearing/frame';\nexport type F = Frame;"],
  ])('allows %s', (_, text) => {
    expect(planting('core/practice/planted.ts', text)).toEqual([]);
  });

  it.each([
    ['an unlisted folder', 'core/extra/a.ts', 'export const a = 1;', 'core/extra is not in the folder table'],
    ['a file in core itself', 'core/a.ts', 'export const a = 1;', 'core is not in the folder table'],
    [
      'an unlisted sub-folder',
      'audio/deep/a.ts',
      'export const a = 1;',
      'audio/deep is not in the folder table',
    ],
    [
      'an unlisted package',
      'ui/page/a.ts',
      "import 'left-over';",
      'left-over, which is not in the package table',
    ],
    [
      'a built-in of Node',
      'core/theory/a.ts',
      "import 'node:fs';",
      'node:fs, which is not in the package table',
    ],
    [
      'a package elsewhere',
      'ui/page/a.ts',
      "import { Gain } from 'tone';\nexport const g = Gain;",
      'tone, which ui/page may not',
    ],
    [
      'a deep path of a package',
      'app/song/a.ts',
      "export { Gain } from 'tone/build/x.js';",
      'tone, which app/song may not',
    ],
    [
      'a package in a style sheet',
      'audio/band/a.css',
      '@import url("@fontsource/noto-music/a.css");',
      '@fontsource/noto-music, which audio/band may not',
    ],
    [
      'an import upwards',
      'core/theory/a.ts',
      "import { reed } from '../harp/harp';\nexport const r = reed;",
      'imports core/harp, which core/theory may not',
    ],
    [
      'a type import upwards',
      'core/theory/a.ts',
      "import type { Chart } from '../chart/chart';\nexport type C = Chart;",
      'imports core/chart (type), which core/theory may not',
    ],
    [
      'an inline type import',
      'core/theory/a.ts',
      "export type C = import('../chart/chart').Chart;",
      'imports core/chart (type), which core/theory may not',
    ],
    [
      'a re-export',
      'core/theory/a.ts',
      "export * from '../chart/chart';",
      'imports core/chart, which core/theory may not',
    ],
    [
      'a dynamic import',
      'app/song/a.ts',
      "export const load = () => import('../../audio/band/band');",
      'imports audio/band, which app/song may not',
    ],
    [
      'a value where a type is allowed',
      'app/song/a.ts',
      "import { Band } from '../../audio/band/band';\nexport type B = Band;",
      'imports audio/band, which app/song may not',
    ],
    [
      'a value of hearing in practice',
      'core/practice/a.ts',
      "import { quiet } from '../hearing/frame';\nexport const q = quiet;",
      'imports core/hearing, which core/practice may not',
    ],
    [
      'one device in another',
      'mic/a.ts',
      "import type { Band } from '../audio/band/band';\nexport type B = Band;",
      'imports audio/band (type), which mic may not',
    ],
    [
      'one panel in another',
      'ui/panels/harp/a.ts',
      "import '../mixer/b';",
      'imports ui/panels/mixer, which ui/panels/harp may not',
    ],
    [
      'the page in a device',
      'storage/a.ts',
      "import '../ui/page/app';",
      'imports ui/page, which storage may not',
    ],
    [
      'a worker address',
      'app/song/a.ts',
      "export const u = new URL('../../audio/band/band.ts', import.meta.url);",
      'imports audio/band, which app/song may not',
    ],
    [
      'a worker query',
      'app/song/a.ts',
      "import W from '../../audio/band/band?worker';\nexport const w = W;",
      'imports audio/band, which app/song may not',
    ],
    [
      'a computed import',
      'ui/page/a.ts',
      'export const load = (x: string) => import(x);',
      'not in the package table',
    ],
    ['a missing file', 'ui/page/a.ts', "import './gone';", './gone, which is no file below src'],
    ['a long file', 'ui/page/a.ts', 'export {};\n'.repeat(301), 'ui/page/a.ts has 301 lines, more than 300'],
  ])('reports %s', (_, path, text, message) => {
    expect(planting(path, text).join('\n')).toContain(message);
  });

  it('reports a folder that has become a crowd', () => {
    const crowd = Array.from({ length: 31 }, (_, i): readonly [string, string] => [
      `mic/a${i}.ts`,
      'export {};',
    ]);
    expect(checkArchitecture(new Map(crowd))).toEqual(['mic holds 31 files, more than 30']);
  });

  it.each([
    ['used nowhere', 'export const a = 1;', '', ['a.ts: a']],
    ['used at home', 'export const a = 1;\nconst b = a;', '', []],
    ['imported by name', 'export const a = 1;', "import { a } from './a';", []],
    ['imported whole', 'export const a = 1;', "import * as b from './a';", []],
    ['imported later', 'export const a = 1;', "const b = () => import('./a');", []],
    ['handed on', 'export const a = 1;', "export { a } from './a';", []],
    ['a type', 'export type A = 1;', '', []],
  ])('tells whether an export is dead: %s', (_, text, user, dead) => {
    const sources = new Map([
      ['a.ts', text],
      ['b.ts', user],
    ]);
    expect(deadExports(sources, parseSources(sources))).toEqual(dead);
  });

  it('reports loops between files and between folders', () => {
    const files = new Map([
      ['core/theory/a.ts', "import { b } from './b';\nexport const a = () => b;"],
      ['core/theory/b.ts', "import type { A } from './c';\nexport const b = (x: A) => x;"],
      ['core/theory/c.ts', "import { a } from './a';\nexport type A = typeof a;"],
      ['core/song/s.ts', "import { f } from '../formats/f';\nexport const s = f;"],
      ['core/song/t.ts', 'export const t = 1;'],
      ['core/formats/f.ts', "import { t } from '../song/t';\nexport const f = t;"],
    ]);
    expect(checkArchitecture(files)).toEqual([
      'core/formats/f.ts:1 imports core/song, which core/formats may not',
      'import cycle: core/theory/a.ts -> core/theory/b.ts -> core/theory/c.ts -> core/theory/a.ts',
      'import cycle: core/song -> core/formats -> core/song',
    ]);
  });

  it.each([
    ['Date', 'export const f = () => Date.now();'],
    ['Date', 'export const f = (at: Date) => at;'],
    ['Math.random', 'export const f = () => Math.random();'],
    ['Math other than', 'const { random } = Math;\nexport const f = random;'],
    ['Math other than', "export const f = Math['random'];"],
    ['performance', 'export const f = () => performance.now();'],
    ['crypto', 'export const f = () => crypto.getRandomValues(new Uint8Array(1));'],
    ['window', 'export const f = () => window.innerWidth;'],
    ['document', 'export const f = () => document.title;'],
    ['navigator', 'export const f = () => navigator.language;'],
    ['console', "export const f = () => console.log('x');"],
    ['globalThis', "export const f = () => globalThis['Date'];"],
    ['self', 'export const f = () => self;'],
    ['process', 'export const f = () => process.env;'],
    ['fetch', "export const f = () => fetch('x');"],
    ['setTimeout', 'export const f = (go: () => void) => setTimeout(go, 1);'],
    ['requestAnimationFrame', 'export const f = { requestAnimationFrame };'],
    ['AudioContext', 'export type F = AudioContext;'],
    ['localStorage', "export const f = localStorage.getItem('x');"],
    ['Worker', "export const f = new Worker('x');"],
    ['require', "export const f = require('fs');"],
    ['import.meta', 'export const f = import.meta;'],
  ])('reports %s in pure code, and only there', (name, text) => {
    expect(planting('core/theory/planted.ts', text).join('\n')).toContain(`uses ${name}`);
    expect(planting('audio/voices/planted.ts', text).join('\n')).toContain(`uses ${name}`);
    expect(planting('ui/page/planted.ts', text)).toEqual([]);
  });

  it('sees a forbidden name beside an own variable of that name elsewhere', () => {
    const text = 'export const f = (window: number) => window;\nexport const g = () => window;';
    expect(planting('core/theory/planted.ts', text)).toHaveLength(1);
  });
});
