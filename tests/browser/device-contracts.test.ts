import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import { sectionAt } from '../../src/core/arranger/section-at';
import { buildHarp } from '../../src/core/harp/build-harp';
import { TUNINGS } from '../../src/core/harp/tunings';
import { asPitchClass } from '../../src/core/theory/units';
import { BAND_BEHAVIOURS } from '../helpers/band-contract';
import { serveBandPage } from '../helpers/band-page';
import { KEPT_FILE_BEHAVIOURS } from '../helpers/kept-file-contract';
import { KEPT_LOG_BEHAVIOURS } from '../helpers/kept-log-contract';
import { MICROPHONE_BEHAVIOURS } from '../helpers/microphone-contract';
import { MIDI_BEHAVIOURS } from '../helpers/midi-contract';
import { RENDERER_BEHAVIOURS } from '../helpers/renderer-contract';
import type { ServedApp } from '../helpers/serve';
import { fileBrowser } from '../helpers/served-browser';
import { testProgram } from '../helpers/test-charts';

const program = testProgram('shuffle', { plan: { countInBars: 1, choruses: null } });

/** One page for all: what a case leaves behind is a band let go, or a file under a name of its own. */
describe('devices in a browser', () => {
  const browser = fileBrowser();
  let served: ServedApp;
  let page: Page;
  beforeAll(async () => {
    served = await serveBandPage();
    const context = await browser().newContext({ permissions: ['microphone'] });
    page = await context.newPage();
    await page.goto(served.address);
    await page.waitForFunction(() => 'bench' in window);
    await page.click('#gesture');
  });
  afterAll(async () => {
    await served?.dispose();
  });

  it.each(BAND_BEHAVIOURS)('the band $does', async ({ act, expected }) => {
    const call = `window.bench.onStage(${act.toString()}, ...${JSON.stringify([program, RESTING_SOUND])})`;
    expect(await page.evaluate(call)).toEqual(expected);
  });

  it.each(KEPT_FILE_BEHAVIOURS)('a kept file: $does', async ({ does, act, expected }) => {
    const call = `(${act.toString()})(window.bench.keptFile(${JSON.stringify(does)}))`;
    expect(await page.evaluate(call)).toEqual(expected);
  });

  it.each(KEPT_LOG_BEHAVIOURS)('the kept log: $does', async ({ act, expected }) => {
    expect(await page.evaluate(`window.bench.keptLog().then(${act.toString()})`)).toEqual(expected);
  });

  it.each(MICROPHONE_BEHAVIOURS)('the microphone $does', async ({ act, expected }) => {
    const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
    const call = `window.bench.onMicrophone(${act.toString()}, ${JSON.stringify({ harp })})`;
    expect(await page.evaluate(call)).toEqual(expected);
  });

  it.each(MIDI_BEHAVIOURS)('keyboards and instruments $does', async ({ act, expected }) => {
    expect(await page.evaluate(`window.bench.onMidi(${act.toString()})`)).toEqual(expected);
  });

  it.each(RENDERER_BEHAVIOURS)('the renderer: $does', async ({ act, expected }) => {
    const countIn = [sectionAt(program, 0)];
    const { feel, push } = program.style;
    const request = { sections: countIn, feel, push, sound: RESTING_SOUND, sampleRate: 44_100 };
    const call = `window.bench.renderer().then((render) => (${act.toString()})(render, ${JSON.stringify(request)}))`;
    expect(await page.evaluate(call)).toEqual(expected);
  });
});
