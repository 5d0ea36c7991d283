import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addServiceWorker, listBuild } from '../../../.dev/service-worker.mjs';

describe('the list of what is kept', () => {
  const folder = mkdtempSync(join(tmpdir(), 'built-'));
  const write = (name: string, text: string) => writeFileSync(join(folder, ...name.split('/')), text);

  beforeAll(() => {
    mkdirSync(join(folder, 'assets'));
    write('index.html', '<title>page</title>');
    write('assets/a b.js', 'export {};');
    write('icon.svg', '<svg/>');
    write('.built-from', 'stamp');
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('has every file under its address with its digest, the page as the empty one, and no dotfile', () => {
    const digest = createHash('sha256').update('<svg/>').digest('hex');
    const { files } = listBuild(folder);
    expect(files.map(({ path }) => path)).toEqual(['', 'assets/a%20b.js', 'icon.svg']);
    expect(files[2]).toEqual({ path: 'icon.svg', digest });
  });

  it('is another version exactly when a file is another', () => {
    const { version } = listBuild(folder);
    write('.built-from', 'another stamp');
    expect(listBuild(folder).version).toBe(version);
    write('icon.svg', '<svg></svg>');
    expect(listBuild(folder).version).not.toBe(version);
    write('icon.svg', '<svg/>');
    expect(listBuild(folder).version).toBe(version);
  });

  it('goes into one script without imports, which does not list itself', async () => {
    const { version, files } = listBuild(folder);
    await addServiceWorker(folder);
    const script = readFileSync(join(folder, 'service-worker.js'), 'utf8');
    expect(script).toContain(version);
    for (const { digest } of files) expect(script).toContain(digest);
    expect(script).not.toMatch(/^\s*import\b|import\(/m);
    expect(listBuild(folder)).toEqual({ version, files });
  });
});
