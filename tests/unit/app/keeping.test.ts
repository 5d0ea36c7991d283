import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { storableSettings } from '../../../src/core/settings/parse-settings';
import { listCharts } from '../../../src/core/song/chart-drafts';
import { openSession } from '../../helpers/fake-session';
import { createFakeStorage } from '../../helpers/fake-storage';
import { createFakeTabs } from '../../helpers/fake-tabs';
import { poisoned } from '../../helpers/poisoned-store';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const FULL = new DOMException('no room', 'QuotaExceededError');
const SETTINGS = 'combshed.settings';

const openTabs = (items: Readonly<Record<string, string>> = {}) => {
  const storage = createFakeStorage(items);
  const tabs = createFakeTabs(storage);
  return { storage, tabs, open: () => openSession(tabs.open()) };
};

const stored = (storage: { readonly items: ReadonlyMap<string, string> }, name: string) =>
  JSON.parse(storage.items.get(`combshed.${name}`) ?? 'null');

type Opened = ReturnType<typeof openSession>;

const write = ({ commands }: Opened, name: string, text: string): void => {
  commands.newChart();
  commands.editChart({ name, text });
};

const standing = ({ state }: Opened, name: string) =>
  listCharts(state()).find((chart) => chart.name === name)?.standing;

describe('a full storage', () => {
  it('calls a chart saved only when it is written, and writes it as soon as anything else can be', () => {
    const { storage, open } = openTabs();
    const page = open();
    write(page, 'Thursday', 'G7 | C7');
    storage.refuse = FULL;
    page.commands.saveChart();
    expect(standing(page, 'Thursday')).toBe('unwritten');
    expect(page.notices()).toMatch(/full/);
    expect(stored(storage, 'chart-drafts')).toMatchObject([{ text: 'G7 | C7' }]);
    storage.refuse = null;
    page.commands.nudgeTempo(2);
    expect(stored(storage, 'charts')).toMatchObject([{ name: 'Thursday', text: 'G7 | C7' }]);
    expect(stored(storage, 'chart-drafts')).toEqual([]);
    expect(standing(page, 'Thursday')).toBe('saved');
    expect(page.notices()).toBe('');
  });

  it('is tried again from time to time without being asked, and the notice stays till then', () => {
    const { storage, open } = openTabs();
    const page = open();
    storage.refuse = FULL;
    page.commands.nudgeTempo(2);
    page.pass();
    expect(page.notices()).toMatch(/full/);
    storage.refuse = null;
    page.pass();
    expect(stored(storage, 'settings')).toMatchObject({ tempo: DEFAULT_SETTINGS.tempo + 2 });
    expect(page.notices()).toBe('');
  });

  it('takes in the end what was deleted and changed meanwhile, in both tabs', () => {
    const { storage, open } = openTabs();
    const [one, two] = [open(), open()];
    for (const name of ['Monday', 'Tuesday']) {
      write(one, name, 'G7');
      one.commands.saveChart();
    }
    storage.refuse = FULL;
    one.commands.editChart({ text: 'C7' });
    one.commands.saveChart();
    const [monday] = one.state().ownCharts;
    one.commands.openChart(monday?.id ?? '');
    one.commands.deleteChart();
    storage.refuse = null;
    write(two, 'Friday', 'D7');
    two.commands.saveChart();
    one.pass();
    expect(stored(storage, 'charts')).toMatchObject([
      { name: 'Tuesday', text: 'C7' },
      { name: 'Friday', text: 'D7' },
    ]);
  });
});

describe('text that cannot be read', () => {
  const LOST = `{"half a chart${'.'.repeat(2000)}`;

  it.each(['charts', 'chart-drafts', 'harps', 'tunings', 'settings'])(
    'and is too large to be copied is not written over, and that is said: %s',
    (name) => {
      const { storage, open } = openTabs({ [`combshed.${name}`]: LOST });
      storage.capacity = 3000;
      const page = open();
      expect(page.notices()).toMatch(/no room for a copy.*nothing is written over it/);
      write(page, 'Thursday', 'G7');
      page.commands.saveChart();
      page.commands.nudgeTempo(2);
      page.commands.keepTuning({ ...DEFAULT_SETTINGS.tuning, id: 'mine' });
      page.commands.keepHarp({
        ...DEFAULT_SETTINGS,
        id: 'h',
        name: 'h',
        key: DEFAULT_SETTINGS.harpKey,
        octave: 0,
      });
      expect(storage.items.get(`combshed.${name}`)).toBe(LOST);
      storage.capacity = 20_000;
      page.pass();
      expect(storage.items.get(`combshed.${name}.unread.1`)).toBe(LOST);
      expect(storage.items.get(`combshed.${name}`)).not.toBe(LOST);
      expect(page.notices()).not.toMatch(/storage for this page/);
    },
  );
});

describe('settings in two tabs', () => {
  it('keep the calls typed in one when the tempo is stepped in the other, told of it or not', () => {
    for (const deaf of [false, true]) {
      const { storage, tabs, open } = openTabs();
      tabs.deaf = deaf;
      const [one, two] = [open(), open()];
      one.commands.choose({ trade: { on: true, calls: '4 5 6' } });
      two.commands.nudgeTempo(2);
      expect(stored(storage, 'settings')).toMatchObject({
        tempo: DEFAULT_SETTINGS.tempo + 2,
        trade: { on: true, calls: '4 5 6' },
      });
      const third = open().state().settings;
      expect([third.tempo, third.trade.calls]).toEqual([DEFAULT_SETTINGS.tempo + 2, '4 5 6']);
    }
  });

  it('show the calls typed in the other tab, and leave tempo and key to each', () => {
    const { open } = openTabs();
    const [one, two] = [open(), open()];
    one.commands.nudgeTempo(6);
    one.commands.choose({ trade: { on: true, calls: '4 5 6' } });
    expect(two.state().settings.trade).toEqual({ on: false, calls: '4 5 6' });
    expect(two.state().settings.tempo).toBe(DEFAULT_SETTINGS.tempo);
    two.commands.choose({ trade: { on: false, calls: '4 5 6\n-3' } });
    expect(one.state().settings.trade).toEqual({ on: true, calls: '4 5 6\n-3' });
  });

  it('keep calls that could not be written while another tab’s arrive', () => {
    const { storage, open } = openTabs();
    const [one, two] = [open(), open()];
    storage.refuse = FULL;
    one.commands.choose({ trade: { on: false, calls: 'mine' } });
    storage.refuse = null;
    two.commands.nudgeTempo(2);
    one.commands.nudgeTempo(4);
    expect(stored(storage, 'settings').trade.calls).toBe('mine');
  });
});

describe('one chart in two tabs', () => {
  const twoTabs = () => {
    const { storage, tabs, open } = openTabs();
    const one = open();
    write(one, 'Thursday', 'G7');
    one.commands.saveChart();
    const two = open();
    const [chart] = two.state().ownCharts;
    two.commands.openChart(chart?.id ?? '');
    return { storage, tabs, one, two };
  };
  const texts = (storage: Parameters<typeof stored>[0], name: string): readonly string[] =>
    stored(storage, name).map((chart: { name: string; text: string }) => `${chart.name}: ${chart.text}`);

  it('is followed while it is typed, and saved as one', () => {
    const { storage, one, two } = twoTabs();
    one.commands.editChart({ text: 'G7 | C7' });
    expect(two.draft()?.text).toBe('G7 | C7');
    two.commands.editChart({ text: 'G7 | C7 | D7' });
    expect(one.draft()?.text).toBe('G7 | C7 | D7');
    one.commands.saveChart();
    expect(texts(storage, 'charts')).toEqual(['Thursday: G7 | C7 | D7']);
    expect(standing(two, 'Thursday')).toBe('saved');
    expect(two.notices()).toBe('');
  });

  it('keeps both texts and says so where the other tab typed unseen', () => {
    const { storage, tabs, one, two } = twoTabs();
    tabs.deaf = true;
    one.commands.editChart({ text: 'one' });
    two.commands.editChart({ text: 'two' });
    expect(texts(storage, 'chart-drafts')).toEqual(['Thursday: one', 'Thursday 2: two']);
    expect(two.draft()).toMatchObject({ name: 'Thursday 2', text: 'two' });
    expect(two.notices()).toMatch(/Another tab changed “Thursday” too.*“Thursday 2”/);
    one.commands.saveChart();
    two.commands.editChart({ text: 'two more' });
    two.commands.saveChart();
    expect(texts(storage, 'charts')).toEqual(['Thursday: one', 'Thursday 2: two more']);
  });

  it('keeps both texts and says so where the other tab saved unseen', () => {
    const { storage, tabs, one, two } = twoTabs();
    two.commands.editChart({ text: 'two' });
    tabs.deaf = true;
    one.commands.editChart({ text: 'one' });
    one.commands.saveChart();
    two.commands.saveChart();
    expect(texts(storage, 'charts')).toEqual(['Thursday: one', 'Thursday 2: two']);
    expect(two.notices()).toMatch(/Both texts are kept/);
  });

  it('bears names half typed, and names a chart without one when it is saved', () => {
    const { storage, one, two } = twoTabs();
    for (const name of ['', 'F', 'Fri ', '']) one.commands.editChart({ name });
    expect([two.draft()?.name, one.notices()]).toEqual(['', '']);
    one.commands.saveChart();
    one.commands.editChart({ text: 'C7' });
    expect(texts(storage, 'charts')).toEqual(['Chart without a name: G7']);
    expect([one.notices(), two.notices(), one.state().ownCharts.length]).toEqual(['', '', 1]);
  });

  it('can still be undone after it has parted, as the chart it became', () => {
    const { tabs, one, two } = twoTabs();
    two.commands.editChart({ text: 'G7 | C7' });
    tabs.deaf = true;
    one.commands.editChart({ text: 'one' });
    two.commands.transposeChart(2);
    two.commands.undoChart();
    expect(two.draft()).toMatchObject({ name: 'Thursday 2', text: 'G7 | C7' });
  });
});

describe('whatever is stored', () => {
  const CHART = { id: 'chart-1', name: 'Hall', text: 'G7 | C7', tonic: 'G', mode: 'major', meter: '4/4' };
  const HARP = {
    id: 'harp-1',
    name: 'Low one',
    tuning: DEFAULT_SETTINGS.tuning,
    key: 5,
    octave: -1,
    intonation: { cents: { blow: Array(10).fill(1), draw: Array(10).fill(2) } },
    reference: 442,
    valved: [2],
  };
  const BASE = {
    settings: { ...storableSettings(DEFAULT_SETTINGS), formId: 'chart-1' },
    charts: [CHART],
    'chart-drafts': [{ ...CHART, text: 'G7 | D7' }],
    harps: [HARP],
    tunings: [{ ...DEFAULT_SETTINGS.tuning, id: 'mine' }],
  };

  // Opening a session costs some hundred times what reading settings does.
  it('the session opens, and nothing that was there is lost', { timeout: SOAK_TIMEOUT }, () => {
    fc.assert(
      fc.property(poisoned([BASE]), (values) => {
        const items = Object.fromEntries(
          Object.entries(Object(values)).map(([name, value]) => [`combshed.${name}`, JSON.stringify(value)]),
        );
        const { storage, open } = openTabs(items);
        const page = open();
        page.commands.nudgeTempo(2);
        write(page, 'New', 'F7');
        page.commands.saveChart();
        expect(page.state().tune.fit.bars.length).toBeGreaterThan(0);
        for (const name of ['settings', 'charts', 'chart-drafts', 'harps', 'tunings']) {
          const raw = items[`combshed.${name}`];
          const said = page.state().notices.some(({ id }) => id === `unread-${name}`);
          if (raw !== undefined && said) expect([...storage.items.values()]).toContain(raw);
        }
      }),
      { numRuns: soakRuns(400) },
    );
  });

  it.each(['', '{', '[', 'null', '3', '[[[[', '{"version":2}', '"\u0000"', '{"__proto__":{"tempo":1}}'])(
    'the session opens on the text %j',
    (text) => {
      const { storage, open } = openTabs({ [SETTINGS]: text, 'combshed.charts': text });
      const page = open();
      expect(page.state().tune.chart.bars).toHaveLength(12);
      page.commands.nudgeTempo(2);
      expect(stored(storage, 'settings')).toMatchObject({ tempo: DEFAULT_SETTINGS.tempo + 2 });
    },
  );
});
