// Random changes while the band plays, each watched: no error, Play or Stop within reach, sound where it plays.
import { Failure, say } from './run.mjs';
import { chance, readPage, startBrowser, watch } from './soak-page.mjs';

const CONTROLS = 'button, select, textarea, summary, input:not([type="file"])';
/** Where controls are looked for: everywhere, or where there are fewer buttons than on the map and the chart. */
const SCOPES = ['', '.panel ', '.panel ', '.transport ', 'nav '];
const KEYS = [
  ' ',
  'ArrowLeft',
  'ArrowRight',
  'ArrowUp',
  'ArrowDown',
  '+',
  '-',
  't',
  'r',
  'Escape',
  'Tab',
  'Enter',
  'Home',
  'End',
];
const WORDS = [
  'C7',
  'F#o7/Eb',
  '| ',
  'Bbmaj7#11 ',
  '%',
  ' (F7) ',
  'N.C.',
  'vi7',
  'Gm7b5/Db ',
  '||:',
  '\n',
  'xyz',
  '-4 5 +6',
  '°',
  '12',
  '440',
  '1e9',
  '',
];
/** Seconds a playing band may be silent: some bars at the slowest tempo, and as many as a drop-out may last. */
const QUIET_SECONDS = 30;
const DROP_OUT_SECONDS = 120;
/** Between two looks at the memory, in ms. */
const MEMORY_EVERY = 30_000;
/** What a page may grow by from its second look on: filled caches and what the player wrote, not a leak. */
const GROWTH = { heapMB: 60, nodes: 6000, listeners: 2500 };

/** Runs in the page: marks one visible control and says what it is, and whether nothing lies over it. */
const mark = ([controls, u]) => {
  for (const old of document.querySelectorAll('[data-soak]')) old.removeAttribute('data-soak');
  const all = [...document.querySelectorAll(controls)].filter(
    (element) => element.offsetParent && !element.disabled,
  );
  const element = all[Math.floor(u * all.length)];
  if (!element) return null;
  element.setAttribute('data-soak', '');
  element.scrollIntoView({ block: 'nearest' });
  const box = element.getBoundingClientRect();
  const clear = element.contains(document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2));
  const name = element.getAttribute('aria-label') ?? element.labels?.[0]?.textContent ?? element.textContent;
  const { tagName, type, min, max, options } = element;
  return {
    clear,
    tag: tagName,
    type,
    min,
    max,
    count: options?.length ?? 0,
    name: (name ?? '').trim().slice(0, 50),
  };
};

const valueFor = ({ type, min, max }, { next, of }) => {
  if (type !== 'range' && type !== 'number') return of(WORDS);
  const [low, high] = [Number(min || 0), Number(max || 1)];
  return String(Math.round((low + next() * (high - low)) * 100) / 100);
};

const turnControl = async (page, luck) => {
  const scope = luck.of(SCOPES);
  const controls = CONTROLS.split(', ').map((control) => scope + control);
  const found = await page.evaluate(mark, [controls.join(', '), luck.next()]);
  if (found === null) return 'nothing';
  const control = page.locator('[data-soak]').first();
  const quick = { timeout: 1500 };
  if (found.tag === 'SELECT') await control.selectOption({ index: luck.below(found.count) }, quick);
  else if (found.type === 'range') await control.fill(valueFor(found, luck), quick);
  else if (found.tag === 'TEXTAREA' || /^(text|number|search)$/.test(found.type)) {
    await control.focus(quick);
    await page.keyboard.type(valueFor(found, luck));
    if (luck.next() < 0.5) await page.keyboard.press('Enter');
  } else if (found.clear && luck.next() < 0.8) await control.click(quick);
  else await control.press(found.tag === 'INPUT' ? ' ' : 'Enter', quick);
  return `${found.tag.toLowerCase()} "${found.name}"`;
};

const act = async (page, luck) => {
  const roll = luck.next();
  if (roll < 0.15) {
    const key = luck.of(KEYS);
    await page.keyboard.press(key);
    return `key "${key}"`;
  }
  if (roll < 0.22) {
    await page
      .locator('.tempo-row input')
      .first()
      .fill(String(30 + luck.below(300)), { timeout: 700 });
    return 'tempo';
  }
  return turnControl(page, luck);
};

const SOUNDING = { band: ['drums', 'bass', 'chords'], click: ['click'], drums: ['drums'], bass: ['bass'] };

/** Whether the faders let something of what is played through. */
const meantToBeHeard = ({ mix, plan }) => {
  const solo = Object.values(mix.channels).some((channel) => channel.solo);
  const open = (part) => {
    const channel = mix.channels[part];
    // The click that plays alone is heard even where it is muted.
    const muted = channel.muted && plan.sounding !== 'click';
    return !muted && channel.gain > 0.05 && (!solo || channel.solo);
  };
  return mix.master > 0.05 && SOUNDING[plan.sounding].some(open);
};

const createEar = () => {
  const since = { started: performance.now(), loud: performance.now() };
  let starts = -1;
  const looks = { playing: 0, heard: 0 };
  const problem = ({ button, settings, peak, ...now }) => {
    const time = performance.now();
    const playing = button === 'Stop';
    const heard = playing && (settings === null || meantToBeHeard(settings));
    if (!playing || now.starts !== starts) since.started = time;
    if (!heard || peak > 1e-4) since.loud = time;
    starts = now.starts;
    looks.playing += Number(playing);
    looks.heard += Number(heard && peak > 1e-4);
    const quiet = (time - Math.min(since.started, since.loud)) / 1000;
    const most = settings?.plan.dropOut ? DROP_OUT_SECONDS : QUIET_SECONDS;
    return quiet > most ? `Stop is shown and nothing has sounded for ${quiet.toFixed(0)} s` : null;
  };
  return { problem, looks };
};

const createScales = async (page) => {
  const session = await page.context().newCDPSession(page);
  const looks = [];
  const look = async () => {
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters');
    looks.push({ heapMB: Math.round(usedSize / 1e5) / 10, nodes, listeners: jsEventListeners });
  };
  const problem = () => {
    const [, first] = looks;
    const last = looks.at(-1);
    const grown = Object.keys(GROWTH).filter((key) => first && last[key] - first[key] > GROWTH[key]);
    return grown.length > 0
      ? `${grown.join(', ')} grew: ${JSON.stringify(first)} to ${JSON.stringify(last)}`
      : null;
  };
  return { look, problem, looks };
};

const play = async (page) => {
  const button = page.getByRole('button', { name: 'Play', exact: true });
  if (await button.isVisible()) await button.click({ timeout: 2000 }).catch(() => {});
};

/** Changes things for so many minutes. Throws Failure with the last steps when something was not as it should be. */
export const soakChanges = async ({ address, minutes, seed }) => {
  const luck = chance(seed);
  const browser = await startBrowser();
  const steps = [];
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    const errors = await watch(page);
    await page.goto(address, { waitUntil: 'networkidle' });
    const [ear, scales] = [createEar(), await createScales(page)];
    const until = performance.now() + minutes * 60_000;
    let nextLook = performance.now() + MEMORY_EVERY / 2;
    let missed = 0;
    while (performance.now() < until) {
      const step = await act(page, luck).catch((error) => {
        missed += 1;
        return `missed: ${String(error.message).split('\n')[0]}`;
      });
      steps.push(step);
      if (luck.next() < 0.3) await play(page);
      await page.waitForTimeout(luck.below(400));
      const now = await page.evaluate(readPage);
      if (performance.now() > nextLook) {
        await scales.look();
        nextLook = performance.now() + MEMORY_EVERY;
      }
      const problem =
        errors[0] ??
        (now.button === null ? 'neither Play nor Stop is there' : null) ??
        (now.reachable ? null : `${now.button} is covered`) ??
        ear.problem(now) ??
        (scales.looks.length > 2 ? scales.problem() : null);
      if (problem) throw new Failure(`${problem}\nThe last steps:\n  ${steps.slice(-15).join('\n  ')}`);
    }
    say(
      `  ${steps.length} changes (${missed} missed their control); ${ear.looks.playing} looks at a playing band, ${ear.looks.heard} heard it`,
    );
    for (const look of scales.looks)
      say(`  heap ${look.heapMB} MB, ${look.nodes} nodes, ${look.listeners} listeners`);
  } finally {
    await browser.close();
  }
};
