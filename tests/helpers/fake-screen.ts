import type { StageDevices } from '../../src/app/stage/stage';
import type { Waking } from '../../src/screen/wake-lock';

/** A screen in tests: says what it was asked for, and is told how it is kept. */
export interface FakeScreen extends StageDevices {
  readonly asked: string[];
  report(waking: Waking): void;
  /** The player leaves the full screen by the browser's own means. */
  leaveFullScreen(): void;
}

export const createFakeScreen = (): FakeScreen => {
  const asked: string[] = [];
  const wakings = new Set<(waking: Waking) => void>();
  const lefts = new Set<() => void>();
  let awake = false;
  return {
    asked,
    wakeLock: {
      want: (now) => {
        if (now !== awake) asked.push(now ? 'awake' : 'may sleep');
        awake = now;
      },
      onChange: (listener) => {
        wakings.add(listener);
        return () => wakings.delete(listener);
      },
      dispose: () => {
        asked.push('dispose');
      },
    },
    fullScreen: {
      enter: () => {
        asked.push('full');
      },
      leave: () => {
        asked.push('window');
      },
      onLeft: (listener) => {
        lefts.add(listener);
        return () => lefts.delete(listener);
      },
    },
    report: (waking) => {
      for (const listener of wakings) listener(waking);
    },
    leaveFullScreen: () => {
      for (const listener of lefts) listener();
    },
  };
};
