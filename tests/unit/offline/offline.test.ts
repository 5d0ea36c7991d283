import { describe, expect, it } from 'vitest';
import { createOffline, type OfflineStatus } from '../../../src/offline/offline';
import { createFakeContainer, type FakeContainer } from '../../helpers/fake-workers';

/** The page on workers moved by hand; `idle` lets the page come to rest. */
const open = (container: FakeContainer | undefined, secure = true) => {
  const waiting: (() => void)[] = [];
  const told: OfflineStatus[] = [];
  let reloads = 0;
  const offline = createOffline({
    container: () => container as unknown as ServiceWorkerContainer | undefined,
    secure,
    whenIdle: (run) => waiting.push(run),
    reload: () => {
      reloads += 1;
    },
  });
  offline.onStatus((status) => told.push(status));
  const idle = async () => {
    for (const run of waiting.splice(0)) run();
    await new Promise((resolve) => setTimeout(resolve, 0));
  };
  return { offline, told, idle, reloads: () => reloads };
};

describe('keeping the program', () => {
  it('asks for nothing before the page rests, then for the worker beside the page, never a stored one', async () => {
    const container = createFakeContainer({ kept: false });
    const { idle } = open(container);
    expect(container.asked).toEqual([]);
    await idle();
    expect(container.asked).toEqual([['./service-worker.js', { updateViaCache: 'none' }]]);
  });

  it('says at a first visit when all is kept, and offers no newer version', async () => {
    const container = createFakeContainer({ kept: false });
    const { offline, told, idle, reloads } = open(container);
    await idle();
    const worker = container.registration.find();
    expect(offline.status()).toEqual({ keeping: 'fetching', newer: false });
    worker.become('installed');
    container.registration.active = worker;
    worker.become('activated');
    container.controller = worker;
    container.dispatchEvent(new Event('controllerchange'));
    expect(told).toEqual([{ keeping: 'kept', newer: false }]);
    expect(reloads()).toBe(0);
  });

  it('says when not everything could be fetched', async () => {
    const container = createFakeContainer({ kept: false });
    const { offline, idle } = open(container);
    await idle();
    container.registration.find().become('redundant');
    expect(offline.status()).toEqual({ keeping: 'failed', newer: false });
  });

  it.each([
    ['the script cannot be had', new TypeError('404'), 'failed'],
    ['the browser forbids it', new DOMException('no', 'SecurityError'), 'refused'],
    ['the user forbids it', new DOMException('no', 'NotSupportedError'), 'refused'],
  ] as const)('says so when %s', async (_, error, keeping) => {
    const container = createFakeContainer({ kept: false });
    container.refuse = error;
    const { offline, idle } = open(container);
    await idle();
    expect(offline.status().keeping).toBe(keeping);
  });

  it('says so where there are no such workers, and why', () => {
    expect(open(undefined).offline.status().keeping).toBe('refused');
    expect(open(undefined, false).offline.status().keeping).toBe('insecure');
    const forbidden = createOffline({
      container: () => {
        throw new DOMException('no', 'SecurityError');
      },
      secure: true,
      whenIdle: () => {},
      reload: () => {},
    });
    expect(forbidden.status().keeping).toBe('refused');
  });
});

describe('a newer version', () => {
  const found = async () => {
    const container = createFakeContainer({ kept: true });
    const opened = open(container);
    await opened.idle();
    const worker = container.registration.find();
    return { ...opened, container, worker };
  };

  it('is told once it is whole, and waits', async () => {
    const { offline, worker, reloads } = await found();
    expect(offline.status()).toEqual({ keeping: 'kept', newer: false });
    worker.become('installed');
    expect(offline.status()).toEqual({ keeping: 'kept', newer: true });
    expect(worker.told).toEqual([]);
    expect(reloads()).toBe(0);
  });

  it('found at an earlier visit is told as well', async () => {
    const container = createFakeContainer({ kept: true });
    const { registration } = container;
    registration.waiting = registration.find();
    registration.waiting.state = 'installed';
    registration.installing = null;
    const { offline, idle } = open(container);
    await idle();
    expect(offline.status().newer).toBe(true);
  });

  it('that could not be fetched whole is not spoken of', async () => {
    const { offline, worker } = await found();
    worker.become('redundant');
    expect(offline.status()).toEqual({ keeping: 'kept', newer: false });
  });

  it('takes over when asked to, and the page loads anew once it has', async () => {
    const { offline, worker, container, reloads } = await found();
    offline.takeNewer();
    expect(worker.told).toEqual([]);
    worker.become('installed');
    container.registration.waiting = worker;
    offline.takeNewer();
    offline.takeNewer();
    expect(worker.told).toEqual(['take over']);
    expect(reloads()).toBe(0);
    container.dispatchEvent(new Event('controllerchange'));
    expect(reloads()).toBe(1);
  });

  it('taken in another window is offered here, and only loads the page anew', async () => {
    const { offline, container, reloads } = await found();
    container.dispatchEvent(new Event('controllerchange'));
    expect(offline.status().newer).toBe(true);
    expect(reloads()).toBe(0);
    offline.takeNewer();
    expect(reloads()).toBe(1);
  });
});
