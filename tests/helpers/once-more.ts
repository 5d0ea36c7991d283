import type { Browser, BrowserContext } from 'playwright-core';
import { messageOf } from '../../src/core/theory/thrown';

/**
 * Plays something in real time in a context of its own, and once more where it did not hold, and says so: a machine that
 * is held up for a moment moves what is heard against what is played by tens of milliseconds for the rest of a visit,
 * which a browser does not tell of. What is wrong in the program does not hold the second time either.
 */
export const onceMore = async (
  browser: Browser,
  play: (context: BrowserContext) => Promise<void>,
): Promise<void> => {
  const visit = async (): Promise<void> => {
    const context = await browser.newContext({ permissions: ['microphone'], serviceWorkers: 'block' });
    try {
      await play(context);
    } finally {
      await context.close();
    }
  };
  try {
    await visit();
  } catch (error) {
    process.stdout.write(`\n  It did not hold, and is tried once more: ${messageOf(error)}\n`);
    await visit();
  }
};
