import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveFolder } from '../../../.dev/serve.mjs';
import { soakRuns } from '../../helpers/soak';

/** More bytes than any system takes in for a reader who does not read. */
const BIG = 64_000_000;
const SERVER = new URL('../../../.dev/serve.mjs', import.meta.url).href;
/** A process of its own: what would end `npm start` ends it. */
const MAIN = `
  const { serveFolder } = await import(${JSON.stringify(SERVER)});
  const { port } = await serveFolder(process.argv[1], 0);
  process.stdout.write(String(port));`;

const startServer = (folder: string): Promise<{ readonly child: ChildProcess; readonly port: number }> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--input-type=module', '-e', MAIN, folder]);
    child.stdout.once('data', (port) => resolve({ child, port: Number(port) }));
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });

/** How long an answer may stay away, in ms, where any answer is right, and where one is awaited. */
const MOMENT = 60;
const AWAITED = 4000;

/**
 * Sends bytes, says that no more will come when an answer has begun or stayed away for so long (ms), and resolves with
 * all that came back, or null when nothing ends the connection. (To say so at once would be hanging up.)
 */
const send = (port: number, bytes: string, away = AWAITED): Promise<string | null> =>
  new Promise((resolve) => {
    const socket = connect({ host: '127.0.0.1', port });
    let answer = '';
    const finish = (value: string | null): void => {
      clearTimeout(timer);
      socket.destroy();
      resolve(value);
    };
    const timer = setTimeout(() => finish(null), 2 * AWAITED);
    socket.setTimeout(away, () => socket.end());
    socket.on('data', (chunk) => {
      answer += chunk.toString('latin1');
      socket.setTimeout(5, () => socket.end());
    });
    socket.on('error', () => finish(answer));
    socket.on('close', () => finish(answer));
    socket.write(Buffer.from(bytes, 'latin1'));
  });

const closed = (socket: Socket): Promise<number> => {
  const begun = performance.now();
  return new Promise((resolve) => {
    socket.on('error', () => {});
    socket.on('close', () => resolve(performance.now() - begun));
  });
};

const anyBytes = fc.uint8Array({ maxLength: 80 }).map((bytes) => Buffer.from(bytes).toString('latin1'));
const pathPart = fc.oneof(
  fc.constantFrom('..', '.', '%2e%2e', '%2E.', '..%2f', '..%5c', '%00', '%', '%f', '%E0%A4%A', '%ff', '\\..'),
  fc.constantFrom('index.html', 'assets', 'out', 'out.txt', 'secret.txt', '.built-from', 'circle', '', ' '),
  fc.constantFrom('a'.repeat(255), 'a'.repeat(256), 'a'.repeat(5000), '%61'.repeat(300), 'etc', 'passwd'),
  anyBytes,
);
const target = fc.oneof(
  fc.array(pathPart, { maxLength: 8 }).map((parts) => `/${parts.join('/')}`),
  fc.constantFrom(
    '*',
    '/',
    '//',
    '///etc/passwd',
    'http://attacker.example/',
    'file:///etc/passwd',
    '?',
    '#',
    ':0',
  ),
  fc
    .array(pathPart, { maxLength: 3 })
    .map((parts) => `http://localhost/${parts.join('/')}?${parts.join('#')}`),
  anyBytes,
);
const method = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom('GET', 'HEAD') },
  fc.constantFrom(
    'POST',
    'PUT',
    'DELETE',
    'OPTIONS',
    'CONNECT',
    'TRACE',
    'PATCH',
    'M-SEARCH',
    'PRI',
    'get',
    'GETT',
    '',
  ),
);
const header = fc.oneof(
  { weight: 3, arbitrary: fc.constant('Host: localhost') },
  fc.constantFrom('Host: attacker.example', 'Host:', 'Host: [::1]:99999999', 'Host: localhost\r\nHost: x'),
  fc.constantFrom(
    'Content-Length: -1',
    'Content-Length: 99999999999999999999',
    'Content-Length: 5',
    'Content-Length: x',
  ),
  fc.constantFrom(
    'Transfer-Encoding: chunked',
    'Transfer-Encoding: gzip',
    'Expect: 100-continue',
    'Expect: x',
  ),
  fc.constantFrom(
    'Connection: upgrade\r\nUpgrade: websocket',
    'Connection: upgrade\r\nUpgrade: h2c',
    'Range: bytes=9-1',
  ),
  fc.constantFrom(
    'X: '.padEnd(20_000, 'x'),
    'X: y\r\n'.repeat(500).trim(),
    ': x',
    'X',
    ' X: y',
    'X: \0',
    'X: \x7f',
  ),
  anyBytes,
);
const request = fc
  .record({
    method,
    target,
    version: fc.constantFrom('HTTP/1.1', 'HTTP/1.1', 'HTTP/1.1', 'HTTP/1.0', 'HTTP/2.0', 'HTTP/9', 'ICY', ''),
    headers: fc.array(header, { maxLength: 5 }),
    end: fc.constantFrom('\r\n\r\n', '\r\n\r\n', '\r\n\r\n', '\n\n', '\r\n', ''),
    body: fc.oneof(
      fc.constant(''),
      fc.constantFrom('5\r\nhello\r\n', 'zz\r\n', 'hello', '0\r\n\r\n'),
      anyBytes,
    ),
  })
  .map(
    ({ method, target, version, headers, end, body }) =>
      `${[`${method} ${target} ${version}`, ...headers].join('\r\n')}${end}${body}`,
  );

describe('the server behind npm start, among clients that mean it harm', () => {
  const outside = mkdtempSync(join(tmpdir(), 'hostile-'));
  const folder = join(outside, 'dist');

  beforeAll(() => {
    mkdirSync(join(folder, 'assets'), { recursive: true });
    writeFileSync(join(outside, 'secret.txt'), 'secret words');
    writeFileSync(join(folder, 'index.html'), '<title>page</title>');
    writeFileSync(join(folder, 'big.txt'), '');
    truncateSync(join(folder, 'big.txt'), BIG);
    writeFileSync(join(folder, '.built-from'), 'secret words');
    symlinkSync(outside, join(folder, 'out'));
    symlinkSync(join(outside, 'secret.txt'), join(folder, 'out.txt'));
    symlinkSync('circle', join(folder, 'circle'));
  });
  afterAll(() => rmSync(outside, { recursive: true, force: true }));

  const plain = (port: number): Promise<string | null> =>
    send(port, 'GET / HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n');

  it('answers or hangs up on hundreds of hostile requests, gives nothing away and goes on serving', async () => {
    const { child, port } = await startServer(folder);
    const statuses = new Map<string, number>();
    try {
      const property = fc.asyncProperty(
        fc.array(request, { minLength: 40, maxLength: 40 }),
        async (requests) => {
          const answers = await Promise.all(requests.map((bytes) => send(port, bytes, MOMENT)));
          for (const answer of answers) {
            expect(answer).not.toBeNull();
            expect(answer).not.toContain('secret words');
            const status =
              answer === '' ? 'hung up' : (/^HTTP\/1\.1 (\d{3}) /.exec(answer ?? '')?.[1] ?? answer);
            statuses.set(String(status), (statuses.get(String(status)) ?? 0) + 1);
          }
          expect(child.exitCode).toBeNull();
        },
      );
      await fc.assert(property, { numRuns: soakRuns(4000), seed: 14 });
      expect(await plain(port)).toContain('<title>page</title>');
      expect(child.exitCode).toBeNull();
    } finally {
      child.removeAllListeners('exit').kill();
    }
    // The requests got as far as every kind of answer, or they prove little.
    expect([...statuses.keys()]).toEqual(expect.arrayContaining(['200', '400', '404', '405', '421', '431']));
  });

  it('stands what is known to have stopped it', async () => {
    const { child, port } = await startServer(folder);
    try {
      const answer = await send(port, `GET /${'a'.repeat(300)} HTTP/1.1\r\nHost: localhost\r\n\r\n`);
      expect(answer).toMatch(/^HTTP\/1\.1 404 /);
      expect(await plain(port)).toContain('<title>page</title>');
    } finally {
      child.removeAllListeners('exit').kill();
    }
  });

  it('waits for nobody: half a request, a body that never comes, an answer nobody takes', async () => {
    const limits = { headersMs: 300, requestMs: 600, idleMs: 900 };
    const server = await serveFolder(folder, 0, limits);
    const open = (text: string): Socket => {
      const socket = connect({ host: '127.0.0.1', port: server.port });
      socket.write(text);
      return socket;
    };
    const headers = open('GET / HTTP/1.1\r\nHost: loc').resume();
    const body = open('GET / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 10\r\n\r\nabc').resume();
    const unread = open('GET /big.txt HTTP/1.1\r\nHost: localhost\r\n\r\n').pause();
    setTimeout(() => unread.resume(), 3000);
    const lasted = await Promise.all([headers, body, unread].map(closed));
    expect(Math.max(...lasted)).toBeLessThan(9000);
    expect(unread.bytesRead).toBeLessThan(BIG);
    await server.close();
  });

  it('takes no more connections than it said, and comes back when they are gone', async () => {
    const server = await serveFolder(folder, 0, { connections: 5 });
    const sockets = Array.from({ length: 5 }, () => connect({ host: '127.0.0.1', port: server.port }));
    await Promise.all(sockets.map((socket) => new Promise((resolve) => socket.on('connect', resolve))));
    expect(await plain(server.port)).toBe('');
    for (const socket of sockets) socket.destroy();
    await expect.poll(() => plain(server.port)).toContain('<title>page</title>');
    await server.close();
  });

  it('refuses headers that are too large, and a second name', async () => {
    const server = await serveFolder(folder, 0);
    const get = (headers: string) => send(server.port, `GET / HTTP/1.1\r\n${headers}\r\n\r\n`);
    expect(await get(`Host: localhost\r\nX: ${'x'.repeat(17_000)}`)).toMatch(/^HTTP\/1\.1 431 /);
    expect(await get('Host: localhost\r\nHost: attacker.example')).toMatch(/^HTTP\/1\.1 421 /);
    expect(await get('Host:')).toMatch(/^HTTP\/1\.1 421 /);
    await server.close();
  });
});
