import { describe, expect, it } from 'vitest';
import { createShareSheet } from '../../../src/storage/share-sheet';

/** A platform that takes files of some kinds and remembers what it was given. */
const platform = (taken: readonly string[], failure: Error | null = null) => {
  const given: ShareData[] = [];
  const ground = {
    canShare: ({ files = [] }: ShareData = {}) => files.every(({ type }) => taken.includes(type)),
    share: async (data: ShareData = {}) => {
      if (failure !== null) throw failure;
      given.push(data);
    },
  };
  return { given, ground };
};

const wav = new Blob([Uint8Array.of(1)], { type: 'audio/wav' });
const midi = new Blob([Uint8Array.of(2)], { type: 'audio/midi' });

describe('the share sheet', () => {
  it('takes what was saved since it began, under its names', async () => {
    const { given, ground } = platform(['audio/wav']);
    const sheet = createShareSheet(ground);
    expect(sheet.takes()).toBe(false);
    sheet.note(midi, 'old.mid');
    sheet.begin();
    sheet.note(wav, '01-wet-boots.wav');
    sheet.note(wav, '02-ferry.wav');
    expect(sheet.takes()).toBe(true);
    expect(await sheet.offer()).toEqual({ kind: 'shared' });
    expect(given[0]?.files?.map(({ name, type }) => `${name} ${type}`)).toEqual([
      '01-wet-boots.wav audio/wav',
      '02-ferry.wav audio/wav',
    ]);
  });

  it('is not offered where the platform takes none of it, or has no sheet', () => {
    const sheet = createShareSheet(platform(['audio/wav']).ground);
    sheet.note(midi, 'a.mid');
    expect(sheet.takes()).toBe(false);
    const without = createShareSheet({});
    without.note(wav, 'a.wav');
    expect(without.takes()).toBe(false);
  });

  it('tells a sheet that was closed again from one that refused', async () => {
    const closed = createShareSheet(platform([], new DOMException('', 'AbortError')).ground);
    expect(await closed.offerLink('https://example.org/#song')).toEqual({ kind: 'left' });
    const refused = createShareSheet(platform([], new DOMException('not now', 'NotAllowedError')).ground);
    expect(await refused.offer()).toEqual({ kind: 'refused', detail: 'not now' });
    expect(await createShareSheet({}).offerLink('https://example.org/')).toMatchObject({ kind: 'refused' });
  });

  it('hands a link on', async () => {
    const { given, ground } = platform([]);
    await createShareSheet(ground).offerLink('https://example.org/#song');
    expect(given).toEqual([{ url: 'https://example.org/#song' }]);
  });
});
