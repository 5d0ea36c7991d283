import { describe, expect, it } from 'vitest';
import { createOffline } from '../../../src/offline/offline';
import { createFakeOffline } from '../../helpers/fake-offline';
import { createFakeContainer } from '../../helpers/fake-workers';
import { OFFLINE_BEHAVIOURS, type OfflineStage } from '../../helpers/offline-contract';

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

const real = (): OfflineStage => {
  const container = createFakeContainer({ kept: false });
  const offline = createOffline({
    container: () => container as unknown as ServiceWorkerContainer,
    secure: true,
    whenIdle: (run) => run(),
    reload: () => undefined,
  });
  const { registration } = container;
  return {
    offline,
    keep: async () => {
      await settled();
      registration.active ??= registration.find();
      registration.active.become('activated');
    },
    find: async () => {
      registration.waiting = registration.find();
      registration.waiting.become('installed');
    },
    taken: () => registration.waiting?.told.length ?? 0,
  };
};

const fake = (): OfflineStage => {
  const offline = createFakeOffline();
  return {
    offline,
    keep: async () => offline.report({ keeping: 'kept', newer: false }),
    find: async () => offline.report({ keeping: 'kept', newer: true }),
    taken: offline.taken,
  };
};

describe.each([
  { which: 'by hand', create: fake },
  { which: 'by a service worker', create: real },
])('the program kept $which', ({ create }) => {
  it.each(OFFLINE_BEHAVIOURS)('$does', async ({ act, expected }) => {
    expect(await act(create())).toEqual(expected);
  });
});
