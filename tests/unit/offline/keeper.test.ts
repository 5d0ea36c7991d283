import { describe, expect, it } from 'vitest';
import { shelfName } from '../../../src/offline/built-files';
import { createKeeper } from '../../../src/offline/keeper';
import { createFakeCaches } from '../../helpers/fake-caches';

const SCOPE = 'https://hall.example/stand/';

/** SHA-256 of “abc”: FIPS 180-2, appendix B.1. Of the empty message: as known to everybody, from memory. */
const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const NOTHING = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855';

const BUILD = {
  version: '2',
  files: [
    { path: '', digest: ABC },
    { path: 'assets/worker-a1.js', digest: NOTHING },
  ],
};

const open = (answers: Readonly<Record<string, () => Response>> = {}) => {
  const caches = createFakeCaches();
  const asked: string[] = [];
  const all: Readonly<Record<string, () => Response>> = {
    [SCOPE]: () => new Response('abc'),
    [`${SCOPE}assets/worker-a1.js`]: () => new Response('', { headers: { 'content-security-policy': 'x' } }),
    ...answers,
  };
  const fetch = async (request: Request): Promise<Response> => {
    asked.push(`${request.cache} ${request.redirect} ${request.url}`);
    const answer = all[request.url];
    if (!answer) throw new TypeError('no network');
    return answer();
  };
  const keeper = createKeeper({ build: BUILD, scope: SCOPE, caches, fetch });
  return { keeper, caches, asked };
};

const OWN = shelfName(SCOPE, '2');

describe('installing', () => {
  it('asks the server for every file and keeps them with their headers', async () => {
    const { keeper, caches, asked } = open();
    await keeper.install();
    expect(asked).toEqual([`no-cache error ${SCOPE}`, `no-cache error ${SCOPE}assets/worker-a1.js`]);
    expect(await keeper.answer(new Request(SCOPE))?.then((answer) => answer.text())).toBe('abc');
    const worker = await keeper.answer(new Request(`${SCOPE}assets/worker-a1.js`));
    expect(worker?.headers.get('content-security-policy')).toBe('x');
    expect([...caches.held.keys()]).toEqual([OWN]);
    expect(asked.length).toBe(2);
  });

  it.each([
    ['no network', () => Promise.reject(new TypeError('no network')) as never, /no network/],
    ['a missing file', () => new Response('abc', { status: 404 }), /answered with 404/],
    ['half a file', () => new Response('ab'), /is not as it was built/],
    ['the welcome page of a network', () => new Response('<title>Welcome</title>'), /is not as it was built/],
  ])('keeps nothing after %s, and what was there stays', async (_, answer, reason) => {
    const { keeper, caches } = open({ [SCOPE]: answer });
    await caches.open(shelfName(SCOPE, '1'));
    await expect(keeper.install()).rejects.toThrow(reason);
    expect([...caches.held.keys()]).toEqual([shelfName(SCOPE, '1')]);
  });

  it('keeps nothing where there is no room', async () => {
    const { keeper, caches } = open();
    caches.full = true;
    await expect(keeper.install()).rejects.toThrow(/no room/);
    expect([...caches.held.keys()]).toEqual([]);
  });

  it('clears away what an earlier try left', async () => {
    const { keeper, caches } = open();
    caches.held.set(OWN, new Map([[`${SCOPE}stray.js`, new Response('stray')]]));
    await keeper.install();
    expect([...(caches.held.get(OWN)?.keys() ?? [])]).toEqual([SCOPE, `${SCOPE}assets/worker-a1.js`]);
  });
});

describe('answering', () => {
  it('gives its own version before another, and a part only the version before has', async () => {
    const { keeper, caches } = open();
    const before = new Map([
      [SCOPE, new Response('before')],
      [`${SCOPE}assets/worker-b2.js`, new Response('worker before')],
    ]);
    caches.held.set(shelfName(SCOPE, '1'), before);
    await keeper.install();
    await keeper.tidy();
    expect(await keeper.answer(new Request(SCOPE))?.then((answer) => answer.text())).toBe('abc');
    const part = await keeper.answer(new Request(`${SCOPE}assets/worker-b2.js`));
    expect(await part?.text()).toBe('worker before');
  });

  it('asks the network when the browser has thrown a file away', async () => {
    const { keeper, asked } = open();
    const answer = await keeper.answer(new Request(SCOPE));
    expect(await answer?.text()).toBe('abc');
    expect(asked.length).toBe(1);
  });

  it('leaves other requests alone', () => {
    const { keeper } = open();
    expect(keeper.answer(new Request('https://elsewhere.example/'))).toBeNull();
    expect(keeper.answer(new Request(SCOPE, { headers: { range: 'bytes=0-1' } }))).toBeNull();
  });
});
