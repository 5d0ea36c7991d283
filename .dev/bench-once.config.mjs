// Benchmarks as a soak runs them: each once, for whether they still work. Its own file because the
// runner of a test project cannot be set from the command line.
import { defineConfig } from 'vitest/config';
import { ROOT } from './run.mjs';

// biome-ignore lint/style/noDefaultExport: the test runner reads its configuration from the default export
export default defineConfig({
  root: ROOT,
  test: {
    name: 'bench',
    runner: 'tests/helpers/one-iteration.ts',
    allowOnly: false,
    // What `measured` of tests/helpers/bench-depth.ts asks for.
    env: { BENCH_ONCE: 'yes' },
    // Nothing is measured here, so that files may run side by side.
    fileParallelism: true,
    maxWorkers: 2,
    pool: 'forks',
    isolate: false,
    testTimeout: 180_000,
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
  },
});
