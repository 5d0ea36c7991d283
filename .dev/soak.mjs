// `npm run soak`: what takes too long for `npm test`. Every part can be had again by the seed that is printed.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import util from 'node:util';
import { ensureBuilt } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { Failure, ROOT, runMain, runTool, say } from './run.mjs';
import { serveFolder } from './serve.mjs';

const PARTS = ['benchmarks', 'properties', 'whole', 'sizes', 'browsers', 'changes', 'ear', 'kills', 'log'];

/** The page at every size, with whatever can be open or shown. */
const SIZES = join('tests', 'soak', 'sizes.test.ts');
const USAGE = `Usage: npm run soak -- [--minutes 15] [--runs 1000000] [--kills 24] [--seed 1] [--only ${PARTS.join('|')}]`;

const numberOf = (name, value, whole) => {
  const number = Number(value);
  if (value.trim() !== '' && Number.isFinite(number) && number >= 0 && (!whole || Number.isInteger(number)))
    return number;
  throw new Failure(
    `--${name} must be a ${whole ? 'whole ' : ''}number from 0 on, got "${value}".\n${USAGE}`,
  );
};

const readOptions = () => {
  const text = (fallback) => ({ type: 'string', default: fallback });
  const options = {
    minutes: text('15'),
    runs: text('1000000'),
    kills: text('24'),
    seed: text(String(Date.now() % 1_000_000)),
    only: { type: 'string' },
  };
  let values;
  try {
    ({ values } = util.parseArgs({ options }));
  } catch (error) {
    throw new Failure(`${error.message}\n${USAGE}`);
  }
  if (values.only !== undefined && !PARTS.includes(values.only))
    throw new Failure(`--only must be one of ${PARTS.join(', ')}, got "${values.only}".\n${USAGE}`);
  return {
    minutes: numberOf('minutes', values.minutes, false),
    runs: numberOf('runs', values.runs, true),
    kills: numberOf('kills', values.kills, true),
    seed: numberOf('seed', values.seed, true),
    parts: values.only ? [values.only] : PARTS,
  };
};

const testFiles = (project) =>
  readdirSync(join(ROOT, 'tests', project), { recursive: true })
    .map((name) => join('tests', project, String(name)))
    .filter((path) => /\.test\.tsx?$/.test(path));

/** Test files whose properties take their number of runs from outside. */
const propertyFiles = () =>
  ['unit', 'reference', 'ui']
    .flatMap(testFiles)
    .filter((path) => /SOAK_RUNS|soakRuns/.test(readFileSync(join(ROOT, path), 'utf8')));

const soakProperties = async ({ runs }) => {
  const files = propertyFiles();
  if (files.length === 0) return say('  no test takes its number of runs from SOAK_RUNS');
  const projects = ['unit', 'ui'].flatMap((project) => ['--project', project]);
  const code = await runTool('vitest/vitest.mjs', ['run', ...projects, '--testTimeout=86400000', ...files], {
    env: { SOAK_RUNS: String(runs) },
  });
  if (code !== 0) throw new Failure('A property does not hold; its counterexample is above.');
};

/** Every benchmark once, for whether it still works: one that breaks gives no sample, and no exit code. */
const soakBenchmarks = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'benchmarks-'));
  const report = join(folder, 'report.json');
  const config = ['--config', '.dev/bench-once.config.mjs'];
  try {
    const code = await runTool('vitest/vitest.mjs', ['bench', '--run', ...config, `--outputJson=${report}`]);
    const { files } = JSON.parse(readFileSync(report, 'utf8'));
    const all = files.flatMap(({ groups }) => groups.flatMap(({ benchmarks }) => benchmarks));
    const broken = all.filter(({ sampleCount }) => !(sampleCount > 0)).map(({ name }) => name);
    if (code !== 0 || all.length === 0 || broken.length > 0)
      throw new Failure(`Of ${all.length} benchmarks these do not run: ${broken.join('; ')}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/**
 * What `npm test` tries a part of, whole: every feel rendered and listened to, every state at every size, what fails
 * half-way; and what only a soak tries, as echoes played over the band's own leak.
 */
const soakWhole = async () => {
  const heard = ['browser', 'reference', 'unit', 'ui']
    .flatMap(testFiles)
    .filter((path) => /inSoak|inTurn|soakIt|soakDescribe/.test(readFileSync(join(ROOT, path), 'utf8')));
  const files = [...heard, ...testFiles('soak').filter((path) => path !== SIZES)];
  const code = await runTool(
    'vitest/vitest.mjs',
    ['run', ...['browser*', 'unit', 'ui', 'soak'].flatMap((project) => ['--project', project]), ...files],
    {
      env: { SOAK_RUNS: '1' },
    },
  );
  if (code !== 0) throw new Failure('Something does not hold; what, and its figures, are above.');
};

const soakSizes = async () => {
  const code = await runTool('vitest/vitest.mjs', ['run', '--project', 'soak', SIZES]);
  if (code !== 0) throw new Failure('Something is cut or covered; what, and at which size, is above.');
};

const inServedPage = async (soak) => {
  const server = await serveFolder(await ensureBuilt(), 0);
  try {
    await soak(server.address);
  } finally {
    await server.close();
  }
};

const soakers = ({ minutes, runs, kills, seed }) => ({
  benchmarks: soakBenchmarks,
  properties: () => soakProperties({ runs }),
  whole: soakWhole,
  sizes: soakSizes,
  browsers: () =>
    inServedPage(async (address) => (await import('./soak-browsers.mjs')).soakBrowsers({ address })),
  changes: () =>
    inServedPage(async (address) =>
      (await import('./soak-changes.mjs')).soakChanges({ address, minutes, seed }),
    ),
  ear: () =>
    inServedPage(async (address) =>
      // Twice as long as the changes: half an hour as a rule.
      (await import('./soak-ear.mjs')).soakEar({ address, minutes: 2 * minutes }),
    ),
  kills: () =>
    inServedPage(async (address) =>
      (await import('./soak-kills.mjs')).soakKills({ address, rounds: kills, seed }),
    ),
  log: () =>
    inServedPage(async (address) =>
      // Twice as many as of charts: fifty as a rule.
      (await import('./soak-log.mjs')).soakLog({ address, rounds: 2 * kills + 2, seed }),
    ),
});

await runMain(async () => {
  const options = readOptions();
  await ensureInstalled();
  const soaks = soakers(options);
  let failed = 0;
  for (const part of options.parts) {
    say(`\n── ${part} (seed ${options.seed}) ──`);
    try {
      await soaks[part]();
      say(`ok: ${part}`);
    } catch (error) {
      failed += 1;
      say(`FAILED: ${part}, again with --only ${part} --seed ${options.seed}`);
      say(error instanceof Failure ? error.message : error.stack);
    }
  }
  return failed === 0 ? 0 : 1;
});
