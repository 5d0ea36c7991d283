import { describe, expect, it } from 'vitest';
import { createWakeLock, type Waking } from '../../../src/screen/wake-lock';

/** A browser's screen lock: grants or refuses, and takes back as systems do when a page is hidden. */
const createFakeSource = () => {
  let granting = true;
  let asked = 0;
  const held = new Set<() => void>();
  return {
    asked: () => asked,
    held: () => held.size,
    refuse: () => {
      granting = false;
    },
    grant: () => {
      granting = true;
    },
    takeBack: () => {
      for (const lose of [...held]) lose();
    },
    request: async () => {
      asked += 1;
      if (!granting) throw new DOMException('Battery is low', 'NotAllowedError');
      const listeners = new Set<() => void>();
      const sentinel = {
        released: false,
        addEventListener: (_: 'release', listener: () => void) => void listeners.add(listener),
        release: async () => lose(),
      };
      const lose = (): void => {
        if (!held.delete(lose)) return;
        sentinel.released = true;
        for (const listener of listeners) listener();
      };
      held.add(lose);
      return sentinel;
    },
  };
};

const createFakePage = () => {
  const listeners = new Set<EventListenerOrEventListenerObject>();
  return {
    visibilityState: 'visible' as DocumentVisibilityState,
    addEventListener: (_: string, listener: EventListenerOrEventListenerObject) =>
      void listeners.add(listener),
    removeEventListener: (_: string, listener: EventListenerOrEventListenerObject) =>
      void listeners.delete(listener),
    show(visibility: DocumentVisibilityState) {
      this.visibilityState = visibility;
      for (const listener of listeners)
        if (typeof listener === 'function') listener(new Event('visibilitychange'));
    },
    watched: () => listeners.size,
  };
};

const open = () => {
  const source = createFakeSource();
  const page = createFakePage();
  const lock = createWakeLock({ source, page });
  const heard: Waking[] = [];
  lock.onChange((waking) => heard.push(waking));
  return { source, page, lock, heard };
};

/** Lets what was asked for be answered. */
const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('the screen lock', () => {
  it('is held while it is wanted, asked for once, and let go of', async () => {
    const { source, lock, heard } = open();
    lock.want(true);
    lock.want(true);
    await settle();
    expect([source.asked(), source.held(), heard]).toEqual([1, 1, ['held']]);
    lock.want(false);
    await settle();
    expect([source.held(), heard]).toEqual([0, ['held', 'off']]);
  });

  it('is asked for again when the page is seen again, since the system takes it back while it is hidden', async () => {
    const { source, page, lock, heard } = open();
    lock.want(true);
    await settle();
    page.show('hidden');
    source.takeBack();
    await settle();
    expect([source.asked(), source.held(), heard.at(-1)]).toEqual([1, 0, 'off']);
    page.show('visible');
    await settle();
    expect([source.asked(), source.held(), heard]).toEqual([2, 1, ['held', 'off', 'held']]);
  });

  it('is not asked for while the page is hidden, nor when it comes back unwanted', async () => {
    const { source, page, lock } = open();
    page.show('hidden');
    lock.want(true);
    await settle();
    expect(source.asked()).toBe(0);
    lock.want(false);
    page.show('visible');
    await settle();
    expect(source.asked()).toBe(0);
  });

  it('says that it was refused, and tries again when the page comes back', async () => {
    const { source, page, lock, heard } = open();
    source.refuse();
    lock.want(true);
    await settle();
    expect(heard).toEqual(['refused']);
    source.grant();
    page.show('hidden');
    page.show('visible');
    await settle();
    expect([source.held(), heard]).toEqual([1, ['refused', 'held']]);
  });

  it('is let go of at once when nobody wants it any more by the time it is granted', async () => {
    const { source, lock, heard } = open();
    lock.want(true);
    lock.want(false);
    await settle();
    expect([source.asked(), source.held(), heard]).toEqual([1, 0, []]);
  });

  it('says that the browser has none', async () => {
    const lock = createWakeLock({ source: undefined, page: createFakePage() });
    const heard: Waking[] = [];
    lock.onChange((waking) => heard.push(waking));
    lock.want(true);
    await settle();
    expect(heard).toEqual(['missing']);
  });

  it('leaves nothing behind', async () => {
    const { source, page, lock } = open();
    lock.want(true);
    await settle();
    lock.dispose();
    page.show('visible');
    await settle();
    expect([source.asked(), source.held(), page.watched()]).toEqual([1, 0, 0]);
  });
});
