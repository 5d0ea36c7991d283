import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import { createKeptFile } from '../../../src/storage/kept-file';

const setUp = () => {
  const factory = new IDBFactory();
  return { factory, kept: createKeptFile('sounds', () => factory) };
};
const textOf = async (kept: ReturnType<typeof createKeptFile>) => {
  const reading = await kept.read();
  return reading.kind === 'file' ? [reading.name, await reading.file.text()] : reading;
};

describe('a kept file', () => {
  it('is not there at first, then is what was written last, then is forgotten', async () => {
    const { factory, kept } = setUp();
    expect(await kept.read()).toEqual({ kind: 'nothing' });
    expect(await kept.write('one.sf2', new Blob(['first']))).toEqual({ kind: 'written' });
    expect(await kept.write('two.sf2', new Blob(['second']))).toEqual({ kind: 'written' });
    expect(await textOf(createKeptFile('sounds', () => factory))).toEqual(['two.sf2', 'second']);
    expect(await createKeptFile('others', () => factory).read()).toEqual({ kind: 'nothing' });
    expect(await kept.forget()).toEqual({ kind: 'written' });
    expect(await kept.read()).toEqual({ kind: 'nothing' });
  });

  it('is refused in words where the browser has no database', async () => {
    const kept = createKeptFile('sounds', () => {
      throw new Error('not in private windows');
    });
    const refused = { kind: 'refused', detail: 'not in private windows' };
    expect(await kept.read()).toEqual(refused);
    expect(await kept.write('one.sf2', new Blob())).toEqual(refused);
    expect(await kept.forget()).toEqual(refused);
  });

  it('tells a full disk from a refusal', async () => {
    const { factory } = setUp();
    const full = createKeptFile('sounds', () => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    expect(await full.write('one.sf2', new Blob())).toEqual({ kind: 'full' });
    expect(await createKeptFile('sounds', () => factory).read()).toEqual({ kind: 'nothing' });
  });

  it('is told from nothing when something else lies in its place', async () => {
    const { factory, kept } = setUp();
    await kept.write('one.sf2', new Blob());
    const database = await new Promise<IDBDatabase>((resolve) => {
      const request = factory.open('combshed');
      request.onsuccess = () => resolve(request.result);
    });
    await new Promise((resolve) => {
      const transaction = database.transaction('files', 'readwrite');
      transaction.objectStore('files').put('a text', 'sounds');
      transaction.oncomplete = resolve;
    });
    database.close();
    expect(await kept.read()).toEqual({ kind: 'no file' });
  });
});
