import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import { createKeptLog, type LogChange } from '../../../src/storage/kept-log';
import { createFakeKeptLog } from '../../helpers/fake-log';
import { KEPT_LOG_BEHAVIOURS } from '../../helpers/kept-log-contract';

const inDatabase = () => {
  const factory = new IDBFactory();
  return createKeptLog(() => factory);
};

describe.each([
  { where: 'in memory', open: createFakeKeptLog },
  { where: 'in a database', open: inDatabase },
])('a log kept $where', ({ open }) => {
  it.each(KEPT_LOG_BEHAVIOURS)('$does', async ({ act, expected }) => {
    expect(await act(open())).toEqual(expected);
  });
});

describe('a kept log', () => {
  it('says why where the browser has no database, and tells a full disk', async () => {
    const kept = createKeptLog(() => {
      throw new Error('not in private windows');
    });
    const refused = { kind: 'refused', detail: 'not in private windows' };
    expect([await kept.read(), await kept.put([{ id: 'a' }]), await kept.remove(null)]).toEqual([
      refused,
      refused,
      refused,
    ]);
    const full = createKeptLog(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    expect(await full.put([{ id: 'a' }])).toEqual({ kind: 'full' });
  });

  it('opens its database once, lets it go when it is wanted elsewhere, and opens it again', async () => {
    const factory = new IDBFactory();
    let opens = 0;
    const counted = new Proxy(factory, {
      get: (target, name: keyof IDBFactory) => {
        if (name === 'open') opens += 1;
        return target[name].bind(target);
      },
    });
    const kept = createKeptLog(() => counted);
    await kept.put([{ id: 'a' }]);
    await kept.put([{ id: 'b' }]);
    expect(await kept.read()).toEqual({ kind: 'rows', rows: [{ id: 'a' }, { id: 'b' }] });
    expect(opens).toBe(1);
    await new Promise((resolve, reject) => {
      const request = factory.deleteDatabase('combshed-log');
      request.onsuccess = resolve;
      request.onblocked = () => reject(new Error('the log holds on to its database'));
    });
    expect(await kept.put([{ id: 'c' }])).toEqual({ kind: 'written' });
    expect(await kept.read()).toEqual({ kind: 'rows', rows: [{ id: 'c' }] });
  });

  it('tells other tabs what was written and deleted, and takes no notice of other talk', async () => {
    const factory = new IDBFactory();
    const channel = new EventTarget();
    const teller = {
      addEventListener: channel.addEventListener.bind(channel),
      removeEventListener: channel.removeEventListener.bind(channel),
      postMessage: (data: unknown) => channel.dispatchEvent(new MessageEvent('message', { data })),
    };
    const kept = createKeptLog(() => factory, teller as never);
    const told: LogChange[] = [];
    const leave = kept.onChangedElsewhere((change) => told.push(change));
    await kept.put([{ id: 'a' }]);
    await kept.remove(['a']);
    await kept.remove(null);
    for (const noise of ['changed', null, { put: 4, removed: null }, { put: [], removed: 'a' }])
      teller.postMessage(noise);
    leave();
    await kept.put([{ id: 'b' }]);
    expect(told).toEqual([
      { put: [{ id: 'a' }], removed: [] },
      { put: [], removed: ['a'] },
      { put: [], removed: null },
    ]);
  });
});
