// The built page in the browsers that `npm test` does not play in: it loads, plays, goes on from bar to bar and keeps.
import { findFirefox } from './firefox.mjs';
import { Failure, runTool, say } from './run.mjs';
import { findWebKit, startWebKit } from './webkit.mjs';

const button = (name) => `//button[normalize-space()="${name}"]`;
const BAR = 'return document.querySelector(\'[aria-current="true"]\')?.getAttribute("aria-label") ?? null';
const TEMPO = 'return JSON.parse(localStorage["combshed.settings"] ?? "{}").tempo === arguments[0]';

const soakWebKit = async (address) => {
  const found = await findWebKit();
  if ('missing' in found) return say(`  ${found.missing} WebKit is left out.`);
  const page = await startWebKit(found.browser);
  try {
    say(`  WebKit ${page.version}`);
    await page.open(address);
    await page.waitFor('the whole page', 60, 'return performance.getEntriesByName("whole").length > 0');
    await page.run(
      'window.troubles = []; addEventListener("error", (event) => troubles.push(event.message))',
    );
    const before = await page.run(
      'return JSON.parse(localStorage["combshed.settings"] ?? "{}").tempo ?? 104',
    );
    await page.press('//button[@aria-label="Faster" or normalize-space()="+"]');
    await page.waitFor('the kept tempo', 10, TEMPO, before + 2);
    await page.press(button('Play'));
    const first = await page.waitFor('the first bar', 30, BAR);
    await page.waitFor(
      'the next bar',
      30,
      `const bar = (() => { ${BAR} })(); return bar !== null && bar !== arguments[0]`,
      first,
    );
    await page.press(button('Stop'));
    await page.waitFor(
      'the silence',
      10,
      `return [...document.querySelectorAll("button")].some((each) => each.textContent.trim() === "Play")`,
    );
    await page.open(address);
    await page.waitFor('the page as it was', 60, TEMPO, before + 2);
    await page.waitFor(
      'its tempo',
      30,
      'return [...document.querySelectorAll("input")].some(({ value }) => value === String(arguments[0]))',
      before + 2,
    );
    const troubles = await page.run('return window.troubles ?? []');
    if (troubles.length > 0) throw new Failure(`In WebKit the page complained: ${troubles.join('; ')}`);
    say('  WebKit: loads, plays, advances, keeps');
  } finally {
    await page.close();
  }
};

const soakFirefox = async () => {
  if ((await findFirefox()) === null) return say('  There is no Firefox here, so it is left out.');
  const code = await runTool('vitest/vitest.mjs', ['run', '--project', 'firefox']);
  if (code !== 0) throw new Failure('The page does not do in Firefox what it should; see above.');
};

/** The page in WebKit and in Firefox, where they are installed. */
export const soakBrowsers = async ({ address }) => {
  await soakWebKit(address);
  await soakFirefox();
};
