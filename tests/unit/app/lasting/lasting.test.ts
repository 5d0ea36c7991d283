import { describe, expect, it, vi } from 'vitest';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createLastingStorage, type Lasting } from '../../../../src/storage/lasting';
import { createFakeLasting } from '../../../helpers/fake-lasting';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const open = (is: Lasting, answer: Lasting, storage = createFakeStorage()) => {
  const device = createFakeLasting(is, answer);
  const opened = openSession(
    createKeptValues(() => storage, new EventTarget()),
    { lasting: device },
  );
  return { ...opened, device, storage, lasting: () => opened.state().lasting };
};

describe('the offer to have the browser keep everything', () => {
  it('comes once there is something to lose, and nothing is asked before', async () => {
    const { commands, device, lasting } = open('may go', 'kept');
    commands.typeTempo('90');
    expect(lasting()).toEqual({ is: 'unasked', offered: false, declined: false });
    commands.keepSong('Ferry at Noon');
    await vi.waitFor(() => expect(lasting().offered).toBe(true));
    expect(device.asked()).toBe(0);
    await commands.askToKeep();
    expect(lasting()).toEqual({ is: 'kept', offered: false, declined: false });
  });

  it('comes one time only, whatever the answer', async () => {
    const first = open('may go', 'may go');
    first.commands.keepSong('Ferry at Noon');
    await vi.waitFor(() => expect(first.lasting().offered).toBe(true));
    first.commands.leaveKeeping();
    expect(first.state().choices.past).toEqual([]);
    const second = open('may go', 'may go', first.storage);
    await vi.waitFor(() => expect(second.lasting().is).toBe('may go'));
    expect(second.lasting().offered).toBe(false);
    await second.commands.askToKeep();
    expect(second.lasting().declined).toBe(true);
  });

  it.each(['kept', 'unknown'] as const)('does not come where the storage is %s', async (is) => {
    const { commands, lasting } = open(is, is);
    commands.keepSong('Ferry at Noon');
    await vi.waitFor(() => expect(lasting().is).toBe(is));
    expect(lasting().offered).toBe(false);
  });
});

describe('where the browser keeps nothing', () => {
  it('is not offered to keep everything for good', async () => {
    const storage = createFakeStorage();
    storage.refuse = new DOMException('not here', 'SecurityError');
    const { commands, state, lasting } = open('may go', 'kept', storage);
    commands.typeTempo('90');
    await vi.waitFor(() => expect(state().notices.map(({ id }) => id)).toContain('storage'), 20_000);
    commands.keepSong('Ferry at Noon');
    await Promise.resolve();
    expect(state().book.songs).toHaveLength(1);
    expect(lasting()).toEqual({ is: 'unasked', offered: false, declined: false });
  });
});

describe('storage that lasts', () => {
  // The Storage standard, "StorageManager": both answer with a boolean, and reject where the storage is not to be had.
  const says = (answer: boolean) => async (): Promise<boolean> => answer;
  it.each([
    [{ persisted: says(false), persist: says(true) }, 'may go', 'kept'],
    [{ persisted: says(true), persist: says(true) }, 'kept', 'kept'],
    [{ persisted: () => Promise.reject(new TypeError('opaque origin')) }, 'unknown', 'unknown'],
    [undefined, 'unknown', 'unknown'],
  ] as const)('is what the browser says of it: %o', async (source, state, asked) => {
    const storage = createLastingStorage(source);
    expect([await storage.state(), await storage.ask()]).toEqual([state, asked]);
  });
});
