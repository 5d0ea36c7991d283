import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveFolder } from '../../.dev/serve.mjs';
import { watchPage } from '../helpers/browser';
import { fileBrowser } from '../helpers/served-browser';

const pages: Readonly<Record<string, string>> = {
  'quiet.html':
    '<!doctype html><title>quiet</title><link rel="icon" href="data:,"><script type="module" src="quiet.js"></script>',
  'quiet.js': `
    const url = URL.createObjectURL(new Blob(['postMessage(1 + 1)'], { type: 'text/javascript' }));
    new Worker(url).onmessage = ({ data }) => { document.title = 'worker says ' + data; };`,
  'inline.html': '<!doctype html><title>before</title><script>document.title = "after";</script>',
  'eval.html': '<!doctype html><title>before</title><script type="module" src="eval.js"></script>',
  'eval.js': 'document.title = new Function("return \'after\'")();',
  'abroad.html': '<!doctype html><title>abroad</title><script type="module" src="abroad.js"></script>',
  'abroad.js': 'fetch("http://localhost:9/").catch(() => { document.title = "refused"; });',
  'broken.html': '<!doctype html><title>broken</title><img src="missing.png" alt="">',
};

describe('what a served page may do', () => {
  const browser = fileBrowser();
  let server: Awaited<ReturnType<typeof serveFolder>>;
  const folder = mkdtempSync(join(tmpdir(), 'served-'));

  beforeAll(async () => {
    for (const [name, text] of Object.entries(pages)) writeFileSync(join(folder, name), text);
    server = await serveFolder(folder, 0);
  });
  afterAll(async () => {
    await server?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const visit = async (name: string, title: string) => {
    const page = await browser().newPage();
    const watch = watchPage(page);
    await page.goto(`${server.address}${name}`);
    await expect.poll(() => page.title()).toBe(title);
    return { watch, leave: () => page.close() };
  };

  it('runs its own scripts and workers from blobs, and nothing is reported', async () => {
    const { watch, leave } = await visit('quiet.html', 'worker says 2');
    const { errors, failures, requests, foreign } = watch;
    expect({ errors, failures, foreign: foreign(server.address) }).toEqual({
      errors: [],
      failures: [],
      foreign: [],
    });
    expect(requests).toEqual([`${server.address}quiet.html`, `${server.address}quiet.js`]);
    await leave();
  });

  it.each(['inline.html', 'eval.html'])('refuses code that did not come as a file: %s', async (name) => {
    const { watch, leave } = await visit(name, 'before');
    await expect.poll(() => watch.errors.join()).toMatch(/Content Security Policy/i);
    await leave();
  });

  it('refuses to ask another address, and the watch reports it', async () => {
    const { watch, leave } = await visit('abroad.html', 'refused');
    await expect.poll(() => watch.errors.join()).toMatch(/Content Security Policy/i);
    await leave();
  });

  it('reports a file that is not there', async () => {
    const { watch, leave } = await visit('broken.html', 'broken');
    await expect.poll(() => watch.failures).toEqual([`${server.address}missing.png: 404`]);
    await leave();
  });
});
