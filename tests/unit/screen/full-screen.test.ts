import { describe, expect, it } from 'vitest';
import { createFullScreen } from '../../../src/screen/full-screen';

/** A page that fills the screen when asked; the browser tells by an event, as browsers do. */
const createFakePage = (allowed: boolean) => {
  const listeners = new Set<() => void>();
  const root = {
    requestFullscreen: async (): Promise<void> => {
      if (!allowed) throw new TypeError('Permissions check failed');
      page.turn(true);
    },
  };
  const page = {
    fullscreenElement: null as Element | null,
    visibilityState: 'visible' as DocumentVisibilityState,
    documentElement: root,
    exitFullscreen: async (): Promise<void> => page.turn(false),
    addEventListener: (_: 'fullscreenchange', listener: () => void) => void listeners.add(listener),
    turn(full: boolean) {
      page.fullscreenElement = full ? ({} as Element) : null;
      for (const listener of listeners) listener();
    },
  };
  return page;
};

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

const open = async (allowed = true) => {
  const page = createFakePage(allowed);
  const screen = createFullScreen(page);
  let left = 0;
  screen.onLeft(() => {
    left += 1;
  });
  screen.enter();
  await settle();
  return { page, screen, left: () => left };
};

describe('the full screen', () => {
  it('is entered and left, and leaving it by the program itself is no news', async () => {
    const { page, screen, left } = await open();
    expect(page.fullscreenElement).not.toBeNull();
    screen.leave();
    await settle();
    expect([page.fullscreenElement, left()]).toEqual([null, 0]);
  });

  it('tells when the player leaves it by the browser’s own means', async () => {
    const { page, left } = await open();
    page.turn(false);
    expect(left()).toBe(1);
  });

  it('takes going over to another program for no wish to leave', async () => {
    const { page, left } = await open();
    page.visibilityState = 'hidden';
    page.turn(false);
    expect(left()).toBe(0);
  });

  it('does without where the browser does not allow it', async () => {
    const { page, screen, left } = await open(false);
    screen.leave();
    page.turn(false);
    expect([page.fullscreenElement, left()]).toEqual([null, 0]);
  });

  it('leaves a full screen alone that the player had made before', async () => {
    const page = createFakePage(true);
    page.turn(true);
    const screen = createFullScreen(page);
    screen.enter();
    await settle();
    screen.leave();
    await settle();
    expect(page.fullscreenElement).not.toBeNull();
  });
});
