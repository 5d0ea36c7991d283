import { availableParallelism } from 'node:os';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { instrumentsAddress, instrumentsPlugin } from './.dev/instruments.mjs';
import { programVersion, shippedLicences } from './.dev/licences.mjs';
import { SCRIPTS } from './.dev/scripts-of-page.mjs';

const project = (name: string, environment: 'node' | 'happy-dom', seconds: number, folders = [name]) => ({
  extends: true as const,
  test: {
    name,
    environment,
    include: folders.map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`),
    pool: 'forks' as const,
    // A file that puts nothing in the place of a module needs no process and no copy of every module of its own.
    isolate: false,
    setupFiles: `tests/helpers/${environment === 'node' ? 'property' : 'ui'}-setup.ts`,
    // Short-lived objects, of which properties and drawing make many, are then given up before they are copied; and only
    // what runs for long is optimized, as a quarter of the time went into optimizing what is soon over (a tenth less).
    execArgv: ['--max-semi-space-size=64', '--interrupt-budget=300000'],
    // Left alone, one core of two would stand idle.
    maxWorkers: availableParallelism(),
    testTimeout: seconds * 1000,
    hookTimeout: seconds * 1000,
    expect: { poll: { timeout: 20_000 } },
    benchmark: { include: name === 'unit' ? ['tests/bench/**/*.bench.ts'] : [] },
  },
});

/** Files that play in real time: they wait more than they work, and nothing runs beside them but each other. */
const TIMED = ['band', 'band-trouble', 'ear', 'missing-files', 'page-sound'].map(
  (name) => `tests/browser/${name}.test.ts`,
);

/** What breaks modules of the page on purpose. */
const BREAKING = ['tests/ui/broken-modules.test.tsx'];
const pages = project('ui', 'happy-dom', 120);

const inBrowser = (name: string) => {
  const { extends: from, test } = project('browser', 'node', 180);
  const patience = { poll: { timeout: 30_000 } };
  return {
    extends: from,
    test: { ...test, name, globalSetup: 'tests/helpers/build-first.ts', expect: patience },
  };
};
const browser = inBrowser('browser');
const timed = inBrowser('browser-timed');
const firefox = inBrowser('firefox');
const soaked = inBrowser('soak');

// biome-ignore lint/style/noDefaultExport: the build tool reads its configuration from the default export
export default defineConfig({
  base: './',
  plugins: [instrumentsPlugin(), react()],
  define: {
    VERSION: JSON.stringify(programVersion()),
    SHIPPED: JSON.stringify(shippedLicences()),
    INSTRUMENTS: JSON.stringify(instrumentsAddress()),
  },
  build: {
    target: 'es2022',
    chunkSizeWarningLimit: 700,
    assetsInlineLimit: 0,
    // Browsers without it fetch the same files a little later.
    modulePreload: { polyfill: false },
    // The packages tonal is made of fill dictionaries of their own when they load; those that are not used may go.
    rolldownOptions: {
      treeshake: { moduleSideEffects: [{ test: /@tonaljs|[/]tonal[/]/, sideEffects: false }] },
      output: { codeSplitting: { groups: SCRIPTS } },
    },
  },
  worker: { format: 'es' },
  test: {
    projects: [
      // One project, as each compiles every module for itself.
      project('unit', 'node', 120, ['unit', 'reference']),
      { ...pages, test: { ...pages.test, exclude: BREAKING } },
      { ...pages, test: { ...pages.test, name: 'ui-broken', include: BREAKING, isolate: true } },
      {
        ...browser,
        test: { ...browser.test, exclude: TIMED, maxWorkers: 3, sequence: { groupOrder: 1 } },
      },
      {
        ...timed,
        test: { ...timed.test, include: TIMED, maxWorkers: 3, sequence: { groupOrder: 2 } },
      },
      // What takes its time in a browser: `npm run soak` alone runs it.
      { ...soaked, test: { ...soaked.test, include: ['tests/soak/**/*.test.ts'], maxWorkers: 1 } },
      {
        ...firefox,
        test: {
          ...firefox.test,
          include: ['tests/firefox/**/*.test.ts'],
          maxWorkers: 3,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
