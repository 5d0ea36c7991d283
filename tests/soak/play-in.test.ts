import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../src/core/harp/build-harp';
import { RICHTER } from '../../src/core/harp/tunings';
import { asPitchClass } from '../../src/core/theory/units';
import { watchPage } from '../helpers/browser';
import { openBeside, openEntry } from '../helpers/open-panel';
import { inRoom, playedFile } from '../helpers/room-with-player';
import { servedBrowser } from '../helpers/served-browser';

const TEMPO = 160;
const CALL = '-2:q -3 -4 -3 | -2:h r:h';
/** The keys of the call on a C harp. */
const KEYS = [67, 71, 74, 71, 67];
const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

/**
 * An instrument outside of the page: it follows the clock that it is sent, as MIDI 1.0 has it, and plays keys at pulses
 * counted from the start; and it keeps what it was sent.
 */
const plugIn = (page: Page, notes: readonly (readonly [pulse: number, key: number, pulses: number])[]) =>
  page.addInitScript((score) => {
    const sent: { readonly bytes: readonly number[]; readonly at: number; readonly when: number }[] = [];
    const input = { name: 'Hall piano', type: 'input', state: 'connected', onmidimessage: null as unknown };
    const strike = (at: number, bytes: readonly number[]): void => {
      setTimeout(
        () => {
          const hear = input.onmidimessage as ((event: object) => void) | null;
          hear?.({ data: Uint8Array.from(bytes), timeStamp: at });
        },
        Math.max(0, at - performance.now()),
      );
    };
    let runs = false;
    let pulse = 0;
    let last = 0;
    const output = {
      ...{ name: 'Hall piano', type: 'output', state: 'connected' },
      send: (data: readonly number[], at = performance.now()) => {
        sent.push({ bytes: [...data], at, when: performance.now() });
        const [status = 0, low = 0, high = 0] = data;
        if (status === 0xfa) pulse = 0;
        // A page that was busy for long tells the place in the song once more.
        if (status === 0xf2) pulse = 6 * (low + 128 * high);
        if (status === 0xfa || status === 0xfb) runs = true;
        if (status === 0xfc) runs = false;
        if (status !== 0xf8 || !runs) return;
        const length = at - last;
        for (const [when, key, pulses] of score) {
          if (when === pulse) {
            strike(at, [0x90, key, 90]);
            strike(at + pulses * length, [0x80, key, 0]);
          }
        }
        last = at;
        pulse += 1;
      },
    };
    const access = {
      inputs: new Map([['in', input]]),
      outputs: new Map([['out', output]]),
      onstatechange: null,
    };
    Object.defineProperty(navigator, 'requestMIDIAccess', { value: async () => access });
    Object.assign(window, { sent });
  }, notes);

interface Sent {
  readonly bytes: readonly number[];
  readonly at: number;
  readonly when: number;
}

const sentBy = (page: Page): Promise<readonly Sent[]> =>
  page.evaluate(() => (window as unknown as { sent: readonly Sent[] }).sent);

const open = async (page: Page, address: string): Promise<void> => {
  page.setDefaultTimeout(60_000);
  await page.goto(address);
  await page.getByLabel('Tempo', { exact: true }).fill(String(TEMPO));
  await page.keyboard.press('Tab');
};

const usePluggedIn = async (page: Page): Promise<void> => {
  await openEntry(page, 'Band');
  await openBeside(page, 'MIDI');
  await page.getByRole('button', { name: 'Use what is plugged in (MIDI)' }).click();
  await page.getByLabel('The keys').selectOption('harp');
};

describe('playing in and answering in a browser', () => {
  const { browser, address } = servedBrowser();

  const visit = async () => {
    const context = await browser().newContext({ permissions: ['microphone'], serviceWorkers: 'block' });
    const page = await context.newPage();
    return { context, page, watch: watchPage(page) };
  };

  it('writes what a file plays into the microphone over the band', async () => {
    const { context, page, watch } = await visit();
    const file = playedFile({ tab: CALL, harp, tempo: TEMPO });
    await inRoom(page, { files: [file, file, file], tempo: TEMPO });
    await open(page, address());
    await openEntry(page, 'Practise');
    await openBeside(page, 'Phrases');
    await page.getByRole('button', { name: 'Listen with the microphone' }).click();
    await page.getByText('Play it in', { exact: true }).click();
    await page.getByLabel('Bars to play').selectOption('8');
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.getByLabel('Snap what was played to').waitFor();
    await page.getByLabel('Snap what was played to').selectOption('2');
    const tab = await page.getByRole('textbox', { name: 'Tab' }).inputValue();
    // Two bars of it, in whichever bar the recording began; a hole may be the other one of its pitch.
    expect(tab).toMatch(/(-2|3):q -3 -4 -3 \| (-2|3)/);
    expect(watch.errors).toEqual([]);
    await context.close();
  }, 90_000);

  it('judges the echo of an instrument that follows the clock it is sent, in even pulses ahead of time', async () => {
    const { context, page, watch } = await visit();
    // Two bars of call, two of answer, again and again, since a busy machine may lose a note of one: 96 pulses a bar.
    const turns = [2, 6, 10, 14, 18, 22, 26, 30, 34].flatMap((bar) =>
      KEYS.map((key, i) => [96 * bar + 24 * i, key, i === 4 ? 44 : 22] as const),
    );
    await plugIn(page, turns);
    await open(page, address());
    await usePluggedIn(page);
    await page.getByText('Send out', { exact: true }).click();
    await page.getByLabel(/^The clock/).click();
    await page.getByLabel(/^Bass, channel/).click();
    await openEntry(page, 'Practise');
    await openBeside(page, 'Over the band');
    await page.getByLabel('Trade with the harp voice').click();
    await page.getByLabel(/Your own calls/).fill(CALL);
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect
      .poll(() => page.locator('body').textContent(), { timeout: 60_000, interval: 50 })
      .toContain('All of it, in tune and in time.');
    const sent = await sentBy(page);
    const pulses = sent.filter(({ bytes }) => bytes[0] === 0xf8).map(({ at }) => at);
    const gaps = pulses.slice(1).map((at, i) => at - (pulses[i] ?? 0));
    const wanted = 60_000 / TEMPO / 24;
    // But for where the page was busy for long, if it was.
    const even = gaps.filter((gap) => Math.abs(gap - wanted) < 3);
    expect(even.length / gaps.length).toBeGreaterThan(0.98);
    const bass = sent.filter(({ bytes }) => bytes[0] === 0x90).length;
    expect(bass).toBeGreaterThan(8);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await expect
      .poll(async () => (await sentBy(page)).slice(-4).map(({ bytes }) => bytes.join()))
      .toContain('176,123,0');
    expect(watch.errors).toEqual([]);
    await context.close();
  }, 90_000);

  it('writes what a keyboard plays, without the band', async () => {
    const { context, page, watch } = await visit();
    await plugIn(page, []);
    await open(page, address());
    await usePluggedIn(page);
    await openEntry(page, 'Practise');
    await openBeside(page, 'Phrases');
    await page.getByText('Play it in', { exact: true }).click();
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.evaluate(
      async ({ keys, beat }) => {
        const { inputs } = (await (navigator as Navigator).requestMIDIAccess()) as MIDIAccess;
        const input = [...inputs.values()][0];
        const began = performance.now() + 50;
        const send = async (at: number, bytes: readonly number[]): Promise<void> => {
          await new Promise((resolve) => setTimeout(resolve, Math.max(0, at - performance.now())));
          input?.onmidimessage?.call(input, {
            data: Uint8Array.from(bytes),
            timeStamp: at,
          } as MIDIMessageEvent);
        };
        for (const [i, key] of keys.entries()) {
          await send(began + i * beat, [0x90, key, 90]);
          await send(began + (i + 0.9) * beat, [0x80, key, 0]);
        }
      },
      { keys: KEYS, beat: 60_000 / TEMPO },
    );
    await page.getByLabel('Snap what was played to').waitFor();
    await page.getByLabel('Snap what was played to').selectOption('2');
    const tab = await page.getByRole('textbox', { name: 'Tab' }).inputValue();
    expect(tab).toMatch(/^(-2|3):q -3 -4 -3 \| (-2|3)/);
    expect(watch.errors).toEqual([]);
    await context.close();
  }, 90_000);

  /** Notes that were sent on a channel, by the bar they fall in (from 0) and the pulse within it, as a follower counts. */
  const notesOn = (sent: readonly Sent[], channel: number) => {
    let next = 0;
    let last = { at: 0, pulse: 0 };
    return sent
      .toSorted((a, b) => a.at - b.at)
      .flatMap(({ bytes: [status = 0, low = 0, high = 0], at }) => {
        if (status === 0xfa) next = 0;
        if (status === 0xf2) next = 6 * (low + 128 * high);
        if (status === 0xf8) {
          last = { at, pulse: next };
          next += 1;
        }
        if (status !== 0x90 + channel - 1) return [];
        const pulse = last.pulse + Math.round((at - last.at) / (60_000 / TEMPO / 24));
        return [{ key: low, bar: Math.floor((pulse + 4) / 96), within: ((pulse + 4) % 96) - 4 }];
      });
  };

  it('lets the bass follow the chord that a hand holds, from the next bar on', async () => {
    const { context, page, watch } = await visit();
    // C major from the fourth beat of the second bar on: over the third and fourth the chart has G7.
    await plugIn(
      page,
      [48, 52, 55].map((key) => [96 + 66, key, 400] as const),
    );
    await open(page, address());
    await usePluggedIn(page);
    await page.getByLabel('The keys').selectOption('chords');
    await page.getByLabel('The band follows the chords I hold').click();
    await page.getByText('Send out', { exact: true }).click();
    await page.getByLabel(/^The clock/).click();
    await page.getByLabel(/^Bass, channel/).click();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const ones = async () =>
      notesOn(await sentBy(page), 1)
        .filter(({ within }) => Math.abs(within) < 5)
        .map(({ key, bar }) => `${bar} ${key % 12}`);
    await expect.poll(ones, { timeout: 30_000 }).toEqual(expect.arrayContaining(['0 7', '2 0', '3 0']));
    expect(watch.errors).toEqual([]);
    await context.close();
  }, 90_000);

  it('answers what a keyboard calls, where the player leads', async () => {
    const { context, page, watch } = await visit();
    await plugIn(
      page,
      KEYS.map((key, i) => [24 * i, key, 22] as const),
    );
    await open(page, address());
    await usePluggedIn(page);
    await page.getByText('Send out', { exact: true }).click();
    await page.getByLabel(/^The clock/).click();
    await page.getByLabel(/^Calls and lines/).click();
    await openEntry(page, 'Practise');
    await openBeside(page, 'Over the band');
    await page.getByLabel('Trade with the harp voice').click();
    await page.getByLabel('What you do').selectOption('lead');
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const bars = async () => new Set(notesOn(await sentBy(page), 3).map(({ bar }) => bar));
    await expect.poll(async () => [...(await bars())], { timeout: 30_000 }).toContain(2);
    expect([...(await bars())].filter((bar) => bar < 2)).toEqual([]);
    expect(watch.errors).toEqual([]);
    await context.close();
  }, 90_000);
});
