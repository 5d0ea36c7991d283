import { describe, expect, it, vi } from 'vitest';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createFakeLog } from '../../../helpers/fake-log';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const open = (log = createFakeLog(), storage = createFakeStorage()) => ({
  log,
  storage,
  ...openSession(
    createKeptValues(() => storage, new EventTarget()),
    {
      log: log.device,
      today: log.device.clock,
    },
  ),
});

type Opened = ReturnType<typeof open>;

const stepOf = ({ state }: Opened) => state().today.run?.steps[state().today.run?.index ?? 0];

/** Begins today and goes on until a step of this kind is on the stand. */
const goTo = async (opened: Opened, kind: string): Promise<void> => {
  await opened.commands.findToday(10);
  opened.commands.startToday();
  for (let i = 0; i < 12 && stepOf(opened)?.kind !== kind; i += 1) {
    const index = opened.state().today.run?.index;
    opened.commands.nextToday();
    await vi.waitFor(() => expect(opened.state().today.run?.index).not.toBe(index), 20_000);
  }
};

const kindOf = (opened: Opened) => {
  const step = stepOf(opened);
  return step?.kind === 'new' || step?.kind === 'due' ? step.item.exercise.kind : step?.kind;
};

describe('today', () => {
  it('begins with the warm-up, goes on by itself when its time is over, and plays what is new', async () => {
    const opened = open();
    await opened.commands.findToday(10);
    opened.commands.startToday();
    await vi.waitFor(() => expect(opened.state().warmUp).not.toBeNull(), 20_000);
    opened.pass();
    await vi.waitFor(() => expect(kindOf(opened)).toBe('tone'), 20_000);
    await vi.waitFor(() => expect(opened.state().status.kind).toBe('playing'), 20_000);
    expect(opened.state().warmUp).toBeNull();
  });

  it('waits for the player’s word, keeps it, and asks for the thing again when it is due', async () => {
    const opened = open();
    await goTo(opened, 'new');
    opened.pass();
    expect(opened.state().today.run).toMatchObject({ over: true, marked: null });
    opened.commands.markToday('again');
    await vi.waitFor(() => expect(stepOf(opened)?.kind).toBe('joy'), 20_000);
    const [item] = opened.state().today.items;
    expect(item?.memory).toMatchObject({ times: 1, lapses: 0, passes: 0 });
    opened.commands.endToday();
    expect(opened.state().today.run).toBeNull();
    opened.log.wait(86_400);
    const later = open(opened.log, opened.storage);
    await later.commands.findToday(10);
    expect(later.state().today.plan.map(({ kind }) => kind)).toEqual(['warm-up', 'due', 'new', 'joy']);
  });

  it('puts the stand back as it was', async () => {
    const opened = open();
    opened.commands.keepSong('Wet Boots');
    opened.commands.typeTempo('132');
    const before = opened.state().settings;
    await goTo(opened, 'joy');
    await vi.waitFor(() => expect(opened.state().settings.tempo).toBe(104), 20_000);
    opened.commands.endToday();
    expect(opened.state().settings).toEqual(before);
  });

  it('forgets what it is told to', async () => {
    const opened = open();
    await goTo(opened, 'new');
    opened.commands.markToday('clean');
    expect(opened.state().today.items).toHaveLength(1);
    opened.commands.forgetPractice(null);
    expect(opened.state().today.items).toEqual([]);
  });
});
