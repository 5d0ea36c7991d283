import { type LentBrowser, launchBrowser, lendBrowser } from './browser';

/** True in a soak, which runs every benchmark once for whether it still works: its figures mean nothing there. */
const ONCE = process.env.BENCH_ONCE !== undefined;

/** What a benchmark measures, or as little as shows that it still works. */
export const measured = <T>(whole: T, little: T): T => (ONCE ? little : whole);

const launchAlone = async (): Promise<LentBrowser> => {
  const browser = await launchBrowser();
  return { browser, giveBack: () => browser.close() };
};

/** A browser for one benchmark: one of its own where it is measured, as what others leave behind would be measured too. */
export const benchBrowser = (): Promise<LentBrowser> => measured(launchAlone, lendBrowser)();
