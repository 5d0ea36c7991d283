import { afterAll, bench, describe } from 'vitest';
import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import type { FeelId } from '../../src/core/feels/feels';
import { allSections } from '../helpers/all-sections';
import { serveBandPage } from '../helpers/band-page';
import { benchBrowser, measured } from '../helpers/bench-depth';
import { testProgram } from '../helpers/test-charts';

const served = await serveBandPage();
const { browser, giveBack } = await benchBrowser();
const page = await browser.newPage();
await page.goto(served.address);
await page.waitForFunction(() => 'bench' in window);

afterAll(async () => {
  await giveBack();
  await served.dispose();
});

const orderOf = (feel: FeelId, choruses: number) => {
  const program = testProgram(feel, { plan: { choruses, ending: 'stop' } });
  const { bass, chords, kit } = program.style;
  return {
    program,
    sections: allSections(program),
    sound: { ...RESTING_SOUND, bass, chords, kit },
    sampleRate: 48_000,
    keep: false,
  };
};

const few = { iterations: 3, time: 0, warmupIterations: 1, warmupTime: 0 };

const LENGTHS: readonly (readonly [FeelId, choruses: number, seconds: number])[] = [
  ['shuffle', 1, 27],
  ['shuffle', 8, 213],
  ['slow-12-8', 2, 99],
  ['swing', 4, 77],
];

/** Sounds are computed anew each time, as when a file is saved. */
describe('rendering to samples in Chromium at 48 kHz', () => {
  for (const [feel, choruses, seconds] of measured(LENGTHS, LENGTHS.slice(0, 1))) {
    const order = orderOf(feel, choruses);
    bench(
      `${seconds} s of ${feel}`,
      async () => {
        await page.evaluate((given) => window.bench.render(given), order);
      },
      few,
    );
  }
});
