import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CONTENT_SECURITY_POLICY, serveFolder } from '../../../.dev/serve.mjs';

/** A plain request, because `fetch` would tidy the path before sending it. */
const ask = (port: number, path: string, method = 'GET', headers: Record<string, string> = {}) =>
  new Promise<{ status: number; headers: NodeJS.Dict<string | string[]>; body: string }>(
    (resolve, reject) => {
      request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
        let body = '';
        response.on('data', (chunk) => {
          body += chunk;
        });
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
        );
      })
        .on('error', reject)
        .end();
    },
  );

describe('the server behind npm start', () => {
  const outside = mkdtempSync(join(tmpdir(), 'serve-'));
  const folder = join(outside, 'dist');
  let server: Awaited<ReturnType<typeof serveFolder>>;

  beforeAll(async () => {
    mkdirSync(join(folder, 'assets'), { recursive: true });
    writeFileSync(join(outside, 'secret.txt'), 'secret');
    writeFileSync(join(folder, 'index.html'), '<title>page</title>');
    writeFileSync(join(folder, 'assets', 'a b.js'), 'export {};');
    writeFileSync(join(folder, 'assets', 'font-worker-a1_B-2.js'), 'export {};');
    writeFileSync(join(folder, 'assets', 'mp3-worker-a1_B-2.js'), 'export {};');
    writeFileSync(join(folder, 'font-worker-a1_B-2.js'), 'export {};');
    writeFileSync(join(folder, '.built-from'), 'stamp');
    symlinkSync(join(outside, 'secret.txt'), join(folder, 'linked.txt'));
    symlinkSync(outside, join(folder, 'linked'));
    symlinkSync('.built-from', join(folder, 'stamp.txt'));
    symlinkSync('circle', join(folder, 'circle'));
    symlinkSync('index.html', join(folder, 'start.html'));
    server = await serveFolder(folder, 0);
  });
  afterAll(async () => {
    await server.close();
    rmSync(outside, { recursive: true, force: true });
  });

  it.each([
    ['/', 'text/html; charset=utf-8', 'no-cache', '<title>page</title>'],
    ['/index.html?x=1', 'text/html; charset=utf-8', 'no-cache', '<title>page</title>'],
    [
      '/assets/a%20b.js',
      'text/javascript; charset=utf-8',
      'public, max-age=31536000, immutable',
      'export {};',
    ],
  ])('serves %s under the policy', async (path, type, cache, body) => {
    const answer = await ask(server.port, path);
    expect(answer).toMatchObject({ status: 200, body });
    expect(answer.headers).toMatchObject({
      'content-type': type,
      'cache-control': cache,
      'content-security-policy': CONTENT_SECURITY_POLICY,
    });
  });

  it('lets the workers that unpack SoundFonts and encode MP3 compile WebAssembly, and nobody else', async () => {
    const policyOf = async (path: string) =>
      (await ask(server.port, path)).headers['content-security-policy'];
    const compiling = CONTENT_SECURITY_POLICY.replace(
      "script-src 'self'",
      "script-src 'self' 'wasm-unsafe-eval'",
    );
    expect(CONTENT_SECURITY_POLICY).not.toContain('wasm');
    expect(await policyOf('/font-worker-a1_B-2.js')).toBe(CONTENT_SECURITY_POLICY);
    for (const name of ['font', 'mp3'])
      expect(await policyOf(`/assets/${name}-worker-a1_B-2.js`)).toBe(compiling);
  });

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/../../secret.txt',
    '/.built-from',
    '/assets',
    '/assets/',
    '/missing',
    '/%00',
    '/%E0%A4%A',
    '//',
    '//index.html',
    '/linked.txt',
    '/linked/secret.txt',
    '/stamp.txt',
    '/circle',
    '/index.html/more',
  ])('has nothing at %s', async (path) => {
    const { status, body } = await ask(server.port, path);
    expect(status).toBe(404);
    expect(body).not.toContain('secret');
  });

  it('answers HEAD without a body and refuses to be written to', async () => {
    expect(await ask(server.port, '/', 'HEAD')).toMatchObject({ status: 200, body: '' });
    expect((await ask(server.port, '/', 'POST')).status).toBe(405);
  });

  it('has nothing at names too long for the system', async () => {
    for (const path of [`/${'a'.repeat(300)}`, `/${'a/'.repeat(3000)}`])
      expect((await ask(server.port, path)).status).toBe(404);
  });

  it('serves what a link within the folder leads to', async () => {
    expect(await ask(server.port, '/start.html')).toMatchObject({ status: 200, body: '<title>page</title>' });
  });

  it.each(['localhost', 'LOCALHOST', '127.0.0.1', '[::1]'])('answers under the name %s', async (name) => {
    for (const host of [name, `${name}:${server.port}`, `${name}:5000`])
      expect((await ask(server.port, '/', 'GET', { host })).status).toBe(200);
  });

  it.each([
    'attacker.example',
    'attacker.example:4240',
    'localhost.attacker.example',
    'notlocalhost',
    'localhost.',
    '127.0.0.1.attacker.example',
    '127.0.0.2',
    '0.0.0.0',
    '::1',
    '[::2]',
    'localhost:',
    'localhost:123456',
    'user@localhost',
  ])('is not there for who comes under the name "%s"', async (host) => {
    const { status, body } = await ask(server.port, '/', 'GET', { host });
    expect(status).toBe(421);
    expect(body).not.toContain('page</title>');
  });

  it('says when a port is taken', async () => {
    await expect(serveFolder(folder, server.port)).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});
