import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../src/core/harp/build-harp';
import { RICHTER } from '../../src/core/harp/tunings';
import { asPitchClass } from '../../src/core/theory/units';
import { watchPage } from '../helpers/browser';
import { onceMore } from '../helpers/once-more';
import { HARP_DB, inRoom, playedFile } from '../helpers/room-with-player';
import { servedBrowser } from '../helpers/served-browser';

const TEMPO = 200;
const CALL = '-2:q -3 -4 -3 | -2:h r:h';
const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

/** The answer: the call as it is asked for, but for what is left out or changed. */
const answerFile = (change: (midi: number, index: number) => number | null): string =>
  playedFile({ tab: CALL, harp, tempo: TEMPO, change });

describe('trading in a browser', () => {
  const { browser, address } = servedBrowser();

  const visit = async (context: BrowserContext, files: readonly string[]) => {
    context.setDefaultTimeout(60_000);
    const page = await context.newPage();
    const watch = watchPage(page);
    await inRoom(page, { files, tempo: TEMPO });
    await page.goto(address());
    return { page, watch };
  };

  /** dB of the band in the room, re the harp. */
  const leakOf = async (page: Page): Promise<number> => {
    const power = await page.evaluate(() => {
      const { leak } = window as unknown as { leak: { squares: number; count: number } };
      return leak.squares / leak.count;
    });
    return 10 * Math.log10(power) - HARP_DB;
  };

  it('hears echoes over the band at −6 dB as they were played: a note missing, all of it right, another note', async () => {
    const turns = [
      {
        file: answerFile((midi, i) => (i === 2 ? null : midi)),
        says: 'The third note did not sound, 4 draw',
      },
      { file: answerFile((midi) => midi), says: 'All of it, in tune and in time.' },
      {
        file: answerFile((midi, i) => (i === 3 ? 72 : midi)),
        says: 'The fourth note was 4 blow instead of 3 draw',
      },
    ];
    await onceMore(browser(), async (context) => {
      const { page, watch } = await visit(
        context,
        // Again and again: a machine that is busy may lose a note of one turn.
        Array.from({ length: 5 }, () => turns.map(({ file }) => file)).flat(),
      );
      await page.getByRole('button', { name: 'Practise', exact: true }).click();
      await page.getByLabel('Trade with the harp voice').click();
      await page.getByLabel(/Your own calls/).fill(CALL);
      await page.getByLabel('Tempo', { exact: true }).fill(String(TEMPO));
      await page.keyboard.press('Tab');
      await page.getByRole('button', { name: 'Listen with the microphone' }).click();
      await page.getByRole('button', { name: 'Play', exact: true }).click();
      for (const { says } of turns)
        await expect
          .poll(() => page.locator('body').textContent(), { timeout: 40_000, interval: 50 })
          .toContain(says);
      const leak = await leakOf(page);
      expect(leak).toBeGreaterThan(-7);
      expect(leak).toBeLessThan(-4);
      expect(watch.errors).toEqual([]);
    });
  }, 240_000);
});
