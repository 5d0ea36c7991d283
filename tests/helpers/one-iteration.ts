import { BenchmarkRunner } from 'vitest';

/**
 * Runs every benchmark once, without warm-up, whatever times it asks for:
 * for the soak, which must notice a benchmark that no longer runs but has no time to measure.
 */
// biome-ignore lint/style/noDefaultExport: the test runner reads its runner from the default export
export default class OneIterationRunner extends BenchmarkRunner {
  override async importTinybench() {
    const tinybench = await super.importTinybench();
    class OneIterationBench extends tinybench.Bench {
      constructor(options: ConstructorParameters<typeof tinybench.Bench>[0] = {}) {
        super({ ...options, time: 0, iterations: 1, warmupTime: 0, warmupIterations: 0 });
      }
    }
    return { ...tinybench, Bench: OneIterationBench };
  }
}
