import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packText, UnreadableText, unpackText } from '../../../src/link/packed-text';
import { createPageLink, MOST_IN_LINK } from '../../../src/link/page-link';

const letters = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64url');

const openAt = (hash: string) => {
  const shown: string[] = [];
  const link = createPageLink({
    location: { hash, origin: 'http://127.0.0.1:4173', pathname: '/' },
    show: (address) => shown.push(address),
  });
  return { link, shown };
};

describe('packed text', () => {
  it('is read back as it was', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 300 }), async (text) => {
        expect(await unpackText(await packText(text, 10_000), 10_000)).toBe(text);
      }),
      { numRuns: 60 },
    );
  });

  it('agrees with an independent reader of RFC 1951 and RFC 4648 (zlib, Buffer of Node)', async () => {
    const text = '| C7 | F7 | C7 | G7 | '.repeat(40);
    const packed = await packText(text, 10_000);
    expect(packed).toMatch(/^[\w-]+$/);
    expect(inflateRawSync(Buffer.from(packed, 'base64url')).toString()).toBe(text);
    expect(await unpackText(letters(deflateRawSync(text)), 10_000)).toBe(text);
  });

  it('stops inflating where a text grows beyond what it may hold', async () => {
    const bomb = letters(deflateRawSync(Buffer.alloc(40_000_000)));
    expect(bomb.length).toBeLessThan(60_000);
    await expect(unpackText(bomb, MOST_IN_LINK)).rejects.toThrow(/more than the 100 kB/);
    await expect(packText('x'.repeat(200), 100)).rejects.toThrow(/as a file/);
  });

  it('refuses whatever is not one, in a sentence', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ maxLength: 80 }), async (text) => {
        const read = await unpackText(text, 1000).catch((error: unknown) => error);
        expect(typeof read === 'string' || read instanceof UnreadableText).toBe(true);
      }),
      { numRuns: 60 },
    );
    await expect(unpackText('<script>', 1000)).rejects.toThrow(/damaged or cut short/);
  });
});

describe('the page’s address', () => {
  it('carries a text and is clean once that is taken out', async () => {
    const written = await openAt('').link.write('{"name":"Wet Boots"}');
    if (!('text' in written)) throw new Error(written.trouble);
    expect(written.text).toMatch(/^http:\/\/127\.0\.0\.1:4173\/#song=/);
    const { link, shown } = openAt(new URL(written.text).hash);
    expect(await link.take()).toEqual({ text: '{"name":"Wet Boots"}' });
    expect(shown).toEqual(['http://127.0.0.1:4173/']);
  });

  it('without a text is left alone, and a damaged text is said', async () => {
    const plain = openAt('#main');
    expect(await plain.link.take()).toBeNull();
    expect(plain.shown).toEqual([]);
    expect(await openAt('#song=%%%').link.take()).toEqual({
      trouble: expect.stringMatching(/damaged or cut short/),
    });
    expect(await openAt('').link.write('x'.repeat(MOST_IN_LINK + 1))).toEqual({
      trouble: expect.stringMatching(/as a file/),
    });
  });
});
