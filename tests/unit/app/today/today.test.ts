import { describe, expect, it, vi } from 'vitest';
import { harpKind } from '../../../../src/core/bends/bend-results';
import { asSeconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createFakeLog } from '../../../helpers/fake-log';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { C_HARP } from '../../../helpers/heard-note';
import { soon } from '../../../helpers/soon';

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

  it('grades a due bend by what was heard, without a word of the player’s', async () => {
    const item = {
      name: '4 draw bent a semitone',
      exercise: { kind: 'bend', sound: "4D'", harpKind: harpKind(C_HARP) },
      memory: { stability: 2, difficulty: 5, last: 20_000, due: 20_002, times: 1, lapses: 0, passes: 1 },
    };
    const storage = createFakeStorage({ 'combshed.practice': JSON.stringify([item]) });
    const opened = open(createFakeLog(), storage);
    const { state, commands, microphone, pass } = opened;
    await commands.listenToMe();
    await goTo(opened, 'due');
    expect(kindOf(opened)).toBe('bend');
    let now = 0;
    /** Lets a pitch be heard for so long, or silence. */
    const sound = (frequency: number, seconds: number): void => {
      const frames = Array.from({ length: Math.round(seconds * 200) }, () => {
        now += 0.005;
        return { known: asSeconds(now), centre: asSeconds(now), frequency, clarity: 0.9, level: -20 };
      });
      microphone.hear({ frames });
    };
    for (let turn = 1; turn <= 3; turn += 1) {
      await soon(() => {
        // Leads and verdicts last seconds, the step minutes.
        if (state().bends.turn?.step !== 'yours') pass(3);
        expect(state().bends.turn?.step).toBe('yours');
      });
      sound(0, 0.2);
      // C sharp 5, which 4 draw of a C harp bends to: 69 is A4, 440 Hz (ISO 16).
      sound(440 * 2 ** (4 / 12), 1.2);
      sound(0, 0.5);
      expect(state().bends.results[0]?.tries).toHaveLength(turn);
    }
    pass();
    const [known] = state().today.items;
    expect(known?.memory).toMatchObject({ times: 2, lapses: 0, passes: 2 });
    // What was passed over on the way here has left nothing behind that would end the next step at once.
    expect(state().today.run?.over).toBe(false);
    expect(stepOf(opened)?.kind).not.toBe('due');
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
