import { describe, expect, it } from 'vitest';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createFakeKeptLog, createFakeLog } from '../../../helpers/fake-log';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const settle = () => new Promise((resolve) => setTimeout(resolve, 0));

const open = async (log = createFakeLog(), storage = createFakeStorage()) => {
  const kept = createKeptValues(() => storage, new EventTarget());
  const opened = openSession(kept, { log: log.device });
  await settle();
  return { ...opened, log, storage };
};

type Opened = Awaited<ReturnType<typeof open>>;

/** Plays a chorus with its count-in, two seconds a bar, and on to the first bar after it. */
const playChorus = async ({ commands, band, log, state }: Opened) => {
  const { plan } = state().settings;
  commands.choose({ plan: { ...plan, choruses: 1, countInBars: 1, intro: 'none' } });
  await commands.play();
  band.hear(0, 0);
  for (let bar = 0; bar < 12; bar += 1) {
    log.wait(2);
    band.hear(1, bar);
  }
  log.wait(2);
  band.hear(2, 0);
};

describe('the log', () => {
  it('writes a song down while it is played, and keeps it for the next visit', async () => {
    const opened = await open();
    const { commands, state, log, storage } = opened;
    commands.keepSong('Wet Boots');
    await playChorus(opened);
    await settle();
    expect([...log.kept.rows.values()]).toMatchObject([
      { song: 'Wet Boots', key: 'G', harp: 'C harp', position: 2, choruses: 1, seconds: 26, version: 1 },
    ]);
    // Nobody has pressed Stop: the page was simply gone.
    const later = await open(log, storage);
    expect(later.state().log.entries).toMatchObject([{ song: 'Wet Boots', day: '2026-11-25' }]);
    expect(state().log.entries).toHaveLength(1);
  });

  it('begins another entry where harp and song become others', async () => {
    const opened = await open();
    const { commands, band, log, state } = opened;
    await playChorus(opened);
    commands.chooseFeel('rhumba');
    for (const bar of [0, 1, 2, 3]) {
      band.hear(1, bar);
      log.wait(2);
    }
    commands.stop();
    expect(state().log.entries.map(({ song, seconds }) => [song, seconds])).toEqual([
      ['Shuffle in G', 26],
      ['Rhumba blues in G', 8],
    ]);
  });

  it('takes the warm-up as one entry, whatever it is made of', async () => {
    const { commands, band, log, state, pass } = await open();
    commands.startWarmUp();
    pass();
    await settle();
    for (const bar of [0, 1, 2]) {
      band.hear(1, bar);
      log.wait(4);
    }
    commands.skipWarmUpStep();
    commands.skipWarmUpStep();
    await settle();
    band.hear(1, 0);
    log.wait(4);
    commands.endWarmUp();
    expect(state().log.entries.map(({ kind, choruses }) => [kind, choruses])).toEqual([['warm-up', 0]]);
  });

  it('writes nothing while it is switched off', async () => {
    const opened = await open();
    opened.commands.choose({ keepLog: false });
    await playChorus(opened);
    opened.commands.stop();
    await settle();
    expect(opened.log.kept.rows.size).toBe(0);
    expect(opened.state().log.entries).toEqual([]);
  });

  it('deletes an entry or all, and brings back what was deleted last', async () => {
    const opened = await open();
    await playChorus(opened);
    opened.commands.stop();
    await playChorus(opened);
    opened.commands.stop();
    const [first, second] = opened.state().log.entries;
    opened.commands.dropLog([first?.id ?? '']);
    expect(opened.state().log.entries.map(({ id }) => id)).toEqual([second?.id]);
    opened.commands.restoreLog();
    opened.commands.dropLog(null);
    await settle();
    expect(opened.log.kept.rows.size).toBe(0);
    opened.commands.restoreLog();
    await settle();
    expect([...opened.log.kept.rows.keys()].toSorted()).toEqual([first?.id, second?.id].toSorted());
  });

  it('does not write on what was deleted while it was played', async () => {
    const opened = await open();
    await playChorus(opened);
    opened.commands.dropLog(null);
    opened.commands.stop();
    await settle();
    expect(opened.log.kept.rows.size).toBe(0);
  });

  it('says when nothing could be kept, and writes it with the next bar', async () => {
    const opened = await open();
    opened.log.kept.refuse = { kind: 'full' };
    await playChorus(opened);
    await settle();
    expect(opened.notices()).toMatch(/Your log: The browser’s storage for this page is full/);
    opened.log.kept.refuse = null;
    opened.commands.stop();
    await settle();
    expect([...opened.log.kept.rows.values()]).toMatchObject([{ seconds: 26 }]);
    expect(opened.notices()).not.toMatch(/Your log/);
  });

  it('says when it could not be opened, as it looks empty then', async () => {
    const refused = { kind: 'refused', detail: 'VersionError' } as const;
    const { notices } = await open(createFakeLog({ ...createFakeKeptLog(), read: async () => refused }));
    expect(notices()).toMatch(/Your log could not be opened, so it looks empty; nothing of it was deleted/);
  });

  it('shows what another tab has written and deleted', async () => {
    const { log, state } = await open();
    const row = { version: 1, id: 'b', kind: 'song', began: 5, day: '2026-11-24', song: 'Ferry at Noon' };
    log.kept.tell({ put: [row], removed: [] });
    expect(state().log.entries.map(({ song }) => song)).toEqual(['Ferry at Noon']);
    log.kept.tell({ put: [], removed: null });
    expect(state().log.entries).toEqual([]);
  });

  it('is in the file with everything, and comes back from it once', async () => {
    const opened = await open();
    await playChorus(opened);
    opened.commands.stop();
    await opened.commands.saveEverything();
    const bytes = opened.takeAway.files.at(-1)?.bytes ?? [];
    const text = new TextDecoder().decode(new Uint8Array(bytes));
    const other = await open();
    await other.commands.restoreEverything(text, false);
    await other.commands.restoreEverything(text, false);
    expect(other.state().log.entries).toEqual(opened.state().log.entries);
  });

  it('has a drill in it', async () => {
    const { commands, state } = await open();
    commands.noteDrill({ name: 'holes', tries: 12, passed: 9 });
    const drill = { kind: 'drill', song: 'Name it', phrases: [{ name: 'holes', tries: 12, passed: 9 }] };
    expect(state().log.entries).toMatchObject([drill]);
  });

  it('is handed over as a file', async () => {
    const opened = await open();
    await playChorus(opened);
    expect(await opened.commands.saveLog('csv')).toBe('Handed over as combshed-log.csv.');
    expect(opened.log.files.map(({ name, type }) => [name, type])).toEqual([
      ['combshed-log.csv', 'text/csv'],
    ]);
  });
});
