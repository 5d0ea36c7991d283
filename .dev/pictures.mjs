// Takes the pictures of README.md anew: `node .dev/pictures.mjs`, after the look has changed. The stand by day and
// Stage, both while the band plays the first chorus.
import { join } from 'node:path';
import { DIST, ensureBuilt } from './build.mjs';
import { CHROMIUM_FLAGS, ensureChromium } from './chromium.mjs';
import { ROOT, runMain, say } from './run.mjs';
import { serveFolder } from './serve.mjs';

const PICTURES = join(ROOT, '.pictures');
const SIZE = { width: 1440, height: 900 };
/** Where the chord changes in the bar after it, so that Next has something to say. */
const BAR = { name: /^Bar 4,/ };

const take = async (page, name) => {
  await page.screenshot({ path: join(PICTURES, name), animations: 'disabled' });
  say(name);
};

await runMain(async () => {
  const { chromium } = await import('playwright-core');
  await ensureBuilt();
  const server = await serveFolder(DIST, 0);
  const browser = await chromium.launch({
    executablePath: await ensureChromium(),
    chromiumSandbox: process.getuid?.() !== 0,
    args: CHROMIUM_FLAGS,
  });
  try {
    const page = await browser.newPage({ viewport: SIZE, colorScheme: 'light', reducedMotion: 'reduce' });
    await page.goto(server.address);
    await page.waitForFunction(() => performance.getEntriesByName('whole').length > 0);
    await page.getByRole('button', { name: 'Ask me later' }).click();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.locator('.bars [aria-current="true"]').and(page.getByRole('listitem', BAR)).waitFor();
    await take(page, 'stand.png');
    await page.getByRole('button', { name: 'Stage' }).click();
    await page.locator('.stage-now').waitFor();
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    await take(page, 'stage.png');
  } finally {
    await browser.close();
    await server.close();
  }
});
