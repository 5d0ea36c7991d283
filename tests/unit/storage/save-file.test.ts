import { describe, expect, it } from 'vitest';
import { MINUTE, openSaver as open } from '../../helpers/fake-folder';

describe('room on the disk', () => {
  it('says that the disk is full, whenever it becomes so', async () => {
    const { saver, disk, downloads } = open('disk');
    const file = await saver.open('a.wav', 'audio/wav');
    expect(await file.write(Uint8Array.of(1))).toEqual({ kind: 'written' });
    disk.refuse(new DOMException('full', 'QuotaExceededError'));
    expect(await file.write(Uint8Array.of(1))).toEqual({ kind: 'full' });
    expect(await file.rewriteStart(Uint8Array.of(1))).toEqual({ kind: 'full' });
    expect(await file.save()).toEqual({ kind: 'full' });
    expect(downloads).toEqual([]);
  });

  it('passes other refusals on in the browser’s words', async () => {
    const { saver, disk } = open('disk');
    const file = await saver.open('a.wav', 'audio/wav');
    disk.refuse(new DOMException('the disk is gone', 'InvalidStateError'));
    expect(await file.write(Uint8Array.of(1))).toEqual({ kind: 'refused', detail: 'the disk is gone' });
  });

  it('frees the room some time after the download began', async () => {
    const { saver, disk, later } = open('disk');
    const file = await saver.open('a.wav', 'audio/wav');
    await file.save();
    expect(disk.files.size).toBe(1);
    for (const action of later) action();
    await expect.poll(() => disk.files.size).toBe(0);
  });

  it('sweeps what earlier visits left, and spares the new and the locked', async () => {
    const { saver, disk } = open('disk');
    disk.files.set('old', { bytes: [1], lastModified: disk.clock() - 11 * MINUTE, locked: false });
    disk.files.set('busy', { bytes: [1], lastModified: disk.clock() - 99 * MINUTE, locked: true });
    disk.files.set('new', { bytes: [1], lastModified: disk.clock() - 9 * MINUTE, locked: false });
    await saver.open('a.wav', 'audio/wav');
    expect([...disk.files.keys()].slice(0, 2)).toEqual(['busy', 'new']);
    expect(disk.files.size).toBe(3);
  });
});
