// What both soaks in a browser need: seeded chance, and a page that tells what it plays.
import { chromium } from 'playwright-core';
import { CHROMIUM_FLAGS, ensureChromium } from './chromium.mjs';

/** Chance that can be had again: uniform numbers from 0 up to 1 (the mulberry32 generator, public domain). */
export const chance = (seed) => {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    next,
    below: (count) => Math.floor(next() * count),
    of: (list) => list[Math.floor(next() * list.length)],
  };
};

/** Runs in the page before its own scripts: counts the sounds it starts and listens to what it puts out. */
const listen = () => {
  const soak = { starts: 0, context: null, meter: null };
  Object.assign(window, { soak });
  const { start } = AudioBufferSourceNode.prototype;
  AudioBufferSourceNode.prototype.start = function (...args) {
    if (this.context === soak.context) soak.starts += 1;
    return start.apply(this, args);
  };
  const { connect } = AudioNode.prototype;
  AudioNode.prototype.connect = function (...args) {
    if (args[0] instanceof AudioDestinationNode && this.context instanceof AudioContext) {
      if (soak.context !== this.context) {
        soak.context = this.context;
        soak.meter = new AnalyserNode(this.context, { fftSize: 32_768 });
      }
      connect.call(this, soak.meter);
    }
    return connect.apply(this, args);
  };
  // Nothing that opens a window of the system, which nobody here would close.
  window.print = () => {};
  delete window.showSaveFilePicker;
};

/** Runs in the page: what a player sees of the transport, and what is played. */
export const readPage = () => {
  const shown = (name) =>
    [...document.querySelectorAll('button')].find(
      (button) => button.textContent.trim() === name && button.offsetParent,
    );
  const stop = shown('Stop');
  const button = stop ?? shown('Play') ?? null;
  const box = button?.getBoundingClientRect();
  const hit = box && document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
  const { starts, context, meter } = window.soak;
  const samples = new Float32Array(meter?.fftSize ?? 0);
  meter?.getFloatTimeDomainData(samples);
  return {
    button: stop ? 'Stop' : button ? 'Play' : null,
    reachable: button !== null && hit !== null && button.contains(hit),
    starts,
    context: context?.state ?? null,
    peak: samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0),
    settings: JSON.parse(localStorage['combshed.settings'] ?? 'null'),
  };
};

/** Starts a browser that keeps nothing. @param flags beside the usual ones. */
export const startBrowser = async (flags = []) =>
  chromium.launch({
    executablePath: await ensureChromium(),
    headless: true,
    chromiumSandbox: process.getuid?.() !== 0,
    args: [...CHROMIUM_FLAGS, ...flags],
  });

/** Prepares a page: `errors` grows with whatever it complains of. */
export const watch = async (page) => {
  const errors = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => errors.push(`page: ${error.stack ?? error}`));
  page.on('crash', () => errors.push('the page crashed'));
  page.on('dialog', (dialog) => void dialog.dismiss().catch(() => {}));
  await page.addInitScript(listen);
  return errors;
};
