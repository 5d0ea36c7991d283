// `npm test`: install what is missing, find or install a browser, run every check, and count.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { ensureBuilt } from './build.mjs';
import { ensureChromium } from './chromium.mjs';
import { findFirefox } from './firefox.mjs';
import { ensureInstalled } from './install.mjs';
import { Failure, ROOT, runMain, runTool, say } from './run.mjs';

const VITEST = 'vitest/vitest.mjs';

const readReport = (path) => {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return {};
  }
};

/** The first lines of a message: enough to know what was wrong, without the way there. */
const FIRST_LINES = 12;

/** What failed, by file and name, with the beginning of why. */
const failuresOf = ({ testResults = [] }) =>
  testResults.flatMap((file) => {
    const why = (text = '') => text.split('\n').slice(0, FIRST_LINES).join('\n').replaceAll('\n', '\n      ');
    const path = relative(ROOT, file.name);
    const failed = file.assertionResults.filter(({ status }) => status === 'failed');
    if (file.status === 'failed' && failed.length === 0) return [`${path}\n      ${why(file.message)}`];
    return failed.map(
      ({ fullName, failureMessages }) => `${path}: ${fullName}\n      ${why(failureMessages[0])}`,
    );
  });

/**
 * Counts of a test report. A skipped test counts as failed: it would otherwise stay skipped unnoticed.
 * So does a file that could not be loaded.
 */
const countTests = ({
  numPassedTests = 0,
  numFailedTests = 0,
  numPendingTests = 0,
  numTodoTests = 0,
  testResults = [],
}) => {
  const skipped = numPendingTests + numTodoTests;
  if (skipped > 0) say(`${skipped} skipped tests: they count as failed.`);
  const unloaded = testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  return { passed: numPassedTests, failed: numFailedTests + skipped + unloaded.length };
};

/** The counts of a stage that has no tests of its own. */
const asOne = (code) => ({ passed: 0, failed: code === 0 ? 0 : 1 });

const runTests = async (report, projects) => {
  const code = await runTool(VITEST, [
    'run',
    ...projects.flatMap((project) => ['--project', project]),
    '--allowOnly=false',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  const results = readReport(report);
  return { code, ...countTests(results), failures: failuresOf(results) };
};

/**
 * Format and lint beside the three sets of rules for types, each by one checker: more of them do the same work several
 * times over, and all cores are busy already.
 */
const runStatic = async () => {
  const checkTypes = (folder) => runTool('typescript/bin/tsc', ['-p', folder, '--checkers', '1']);
  const style = runTool('@biomejs/biome/bin/biome', ['ci', '--colors=off', '--diagnostic-level=error']);
  return asOne(Math.max(...(await Promise.all([style, ...['.', 'src', 'src/core'].map(checkTypes)]))));
};

const runBuild = async () => {
  await ensureBuilt();
  return asOne(0);
};

/**
 * The page in Chromium, and in Firefox where there is one: it is not installed for the tests, as Chromium is. Beside
 * what plays in real time, which waits more than it works.
 */
const runInBrowsers = async (report) => {
  if ((await findFirefox()) !== null) return runTests(report, ['browser*', 'firefox']);
  say('There is no Firefox here, so the page was not tried in it (on Debian: apt-get install firefox-esr).');
  return runTests(report, ['browser*']);
};

const stagesOf = (folder) => [
  { name: 'format, lint and types', check: runStatic },
  {
    name: 'unit, reference and component tests',
    check: () => runTests(join(folder, 'core.json'), ['unit', 'ui*']),
  },
  { name: 'build', check: runBuild },
  { name: 'browser tests', check: () => runInBrowsers(join(folder, 'browser.json')) },
];

const runStage = async ({ name, check }) => {
  say(`\n── ${name} ──`);
  const start = performance.now();
  let counts;
  try {
    counts = await check();
  } catch (error) {
    say(error instanceof Failure ? error.message : error.stack);
    counts = asOne(1);
  }
  const failed = counts.failed === 0 && (counts.code ?? 0) !== 0 ? 1 : counts.failed;
  const { passed, failures = [] } = counts;
  return { name, passed, failed, failures, seconds: (performance.now() - start) / 1000 };
};

/** What failed is said once more at the end, where it is looked for. */
const printSummary = (results) => {
  say('');
  for (const failure of results.flatMap(({ failures }) => failures)) say(`FAILED ${failure}\n`);
  for (const { name, passed, failed, seconds } of results) {
    const counts = passed + failed > 0 ? ` (${passed} passed, ${failed} failed)` : '';
    say(`${failed === 0 ? 'ok    ' : 'FAILED'} ${seconds.toFixed(1).padStart(6)} s  ${name}${counts}`);
  }
  const sum = (key) => results.reduce((total, result) => total + result[key], 0);
  say(`\n${sum('passed')} passed, ${sum('failed')} failed`);
  return sum('failed') === 0 && sum('passed') > 0 ? 0 : 1;
};

await runMain(async () => {
  await ensureInstalled();
  process.env.CHROMIUM_PATH = await ensureChromium();
  const folder = mkdtempSync(join(tmpdir(), 'test-reports-'));
  try {
    const results = [];
    for (const stage of stagesOf(folder)) results.push(await runStage(stage));
    return printSummary(results);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
