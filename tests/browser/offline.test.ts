import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Program } from '../../src/core/arranger/program';
import { FEEL_IDS, type FeelId, feelOf } from '../../src/core/feels/feels';
import type { BandSound } from '../../src/core/song/band-sound';
import { allSections } from '../helpers/all-sections';
import { serveBandPage } from '../helpers/band-page';
import type { RenderOrder } from '../helpers/band-page/page';
import { type PageWatch, watchPage } from '../helpers/browser';
import { soundFor } from '../helpers/render-here';
import type { ServedApp } from '../helpers/serve';
import { fileBrowser } from '../helpers/served-browser';
import { inSoak } from '../helpers/soak';
import { testChart, testProgram } from '../helpers/test-charts';

const orderFor = (program: Program, sound: BandSound): RenderOrder => ({
  program,
  sections: allSections(program),
  sound,
  sampleRate: 48_000,
});

/** What a file sounds like is held in `tests/reference/band-file.test.ts`; here is what takes a browser. */
describe('files rendered in a page', () => {
  const browser = fileBrowser();
  let served: ServedApp;
  let page: Page;
  let watch: PageWatch;
  const said: string[] = [];

  beforeAll(async () => {
    served = await serveBandPage();
    page = await browser().newPage();
    watch = watchPage(page);
    page.on('console', (message) => said.push(message.text()));
    await page.goto(served.address);
    await page.waitForFunction(() => 'bench' in window);
  });
  afterAll(async () => {
    await served?.dispose();
  });

  it.each(inSoak<FeelId>(FEEL_IDS, ['boogie']))(
    'sound as the nodes do that play %s live, with an organ beside its own instruments',
    async (feel) => {
      // Soft enough for the limiter to rest, which only files have here.
      const program = testProgram(feel, {
        chart: testChart('eight-v-second', 7, feelOf(feel).meter ?? '4/4'),
        style: { second: 'organ' },
        plan: { choruses: 1, ending: 'stop' },
      });
      const sound = { ...soundFor(program, 0.15), second: 'organ' as const };
      const left = await page.evaluate(([order, seconds]) => window.bench.fileAgainstNodes(order, seconds), [
        orderFor(program, sound),
        6,
      ] as const);
      expect(left).toBeLessThan(-100);
    },
  );

  it('can be cancelled', async () => {
    const program = testProgram('shuffle', { plan: { choruses: 6, ending: 'stop' } });
    const order = { ...orderFor(program, soundFor(program)), abortAfter: 300 };
    await expect(page.evaluate((given) => window.bench.render(given), order)).rejects.toThrow(/timed out/);
  });

  it('left the console empty', () => {
    const { errors, failures } = watch;
    const foreign = watch.foreign(served.address);
    expect({ said, errors, failures, foreign }).toEqual({ said: [], errors: [], failures: [], foreign: [] });
  });
});
