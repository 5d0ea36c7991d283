import { describe, expect, it } from 'vitest';
import {
  createOggOpusWriter,
  oggChecksum,
  oggPage,
  opusHead,
  opusPacketFrames,
  opusTags,
} from '../../../src/core/formats/ogg-opus';

const STREAM = {
  channels: 2,
  preSkip: 312,
  inputRate: 48000,
  serial: 0x01020304,
  comments: ['TITLE=Take'],
} as const;
const bytesOf = (text: string) => new TextEncoder().encode(text);

interface ReadPage {
  readonly capture: string;
  readonly version: number;
  readonly flags: number;
  readonly granule: bigint;
  readonly serial: number;
  readonly sequence: number;
  readonly checksum: number;
  readonly packets: readonly Uint8Array[];
  readonly bytes: Uint8Array;
}

/** Reads pages by the field table of RFC 3533, section 6. */
const readPages = (file: Uint8Array): readonly ReadPage[] => {
  const pages: ReadPage[] = [];
  for (let at = 0; at < file.length; ) {
    const view = new DataView(file.buffer, file.byteOffset + at);
    const table = [...file.subarray(at + 27, at + 27 + view.getUint8(26))];
    const size = 27 + table.length + table.reduce((sum, length) => sum + length, 0);
    const packets: Uint8Array[] = [];
    let from = at + 27 + table.length;
    let length = 0;
    for (const segment of table) {
      length += segment;
      if (segment === 255) continue;
      packets.push(file.slice(from, from + length));
      from += length;
      length = 0;
    }
    pages.push({
      capture: String.fromCharCode(...file.subarray(at, at + 4)),
      version: view.getUint8(4),
      flags: view.getUint8(5),
      granule: view.getBigUint64(6, true),
      serial: view.getUint32(14, true),
      sequence: view.getUint32(18, true),
      checksum: view.getUint32(22, true),
      packets,
      bytes: file.slice(at, at + size),
    });
    at += size;
  }
  return pages;
};

const written = (packets: readonly Uint8Array[], frames: number): Uint8Array => {
  const writer = createOggOpusWriter(STREAM);
  const parts = [writer.start(), ...packets.map(writer.add), writer.end(frames)];
  return Uint8Array.from(parts.flatMap((part) => [...part]));
};

/** A packet of one 20 ms frame (configuration 31, stereo, code 0), as most encoders make them. */
const packetOf = (length: number) => {
  const packet = new Uint8Array(length);
  packet[0] = 0xfc;
  return packet;
};

describe('the page checksum, RFC 3533 section 6', () => {
  // POSIX.1-2017, utility `cksum`: the same polynomial, start 0, the length appended, all bits turned at the end.
  // `printf 123456789 | cksum` prints 930766865.
  it('agrees with the POSIX checksum once length and complement are added', () => {
    const withLength = Uint8Array.of(...bytesOf('123456789'), 9);
    expect(~oggChecksum(withLength) >>> 0).toBe(930766865);
  });

  it('covers the page with its own field at zero', () => {
    for (const { bytes, checksum } of readPages(written([packetOf(300)], 960))) {
      const blank = bytes.slice();
      blank.set([0, 0, 0, 0], 22);
      expect(oggChecksum(blank)).toBe(checksum);
    }
  });
});

describe('headers, RFC 7845 section 5', () => {
  it('identifies two channels, the samples to skip, the input rate, gain 0 and mapping family 0', () => {
    expect([...opusHead(STREAM)]).toEqual([
      ...bytesOf('OpusHead'),
      ...[1, 2, 0x38, 0x01, 0x80, 0xbb, 0, 0, 0, 0, 0],
    ]);
  });

  it('carries vendor and title, each with its length in front', () => {
    const title = 'Blues in B♭ 🎵';
    const tags = opusTags([`TITLE=${title}`]);
    const view = new DataView(tags.buffer);
    const text = (at: number, length: number) => new TextDecoder().decode(tags.slice(at, at + length));
    expect(text(0, 8)).toBe('OpusTags');
    const vendor = view.getUint32(8, true);
    expect(view.getUint32(12 + vendor, true)).toBe(1);
    const comment = view.getUint32(16 + vendor, true);
    expect(text(20 + vendor, comment)).toBe(`TITLE=${title}`);
    expect(tags).toHaveLength(20 + vendor + comment);
  });
});

describe('the length of a packet, RFC 6716 section 3.1', () => {
  // Table 2: configuration → milliseconds; code 0 one frame, 1 and 2 two frames, 3 as many as the next byte says.
  it.each([
    [[0 << 3], 10],
    [[3 << 3], 60],
    [[11 << 3], 60],
    [[12 << 3], 10],
    [[15 << 3], 20],
    [[16 << 3], 2.5],
    [[31 << 3], 20],
    [[(31 << 3) | 1], 40],
    [[(30 << 3) | 2], 20],
    [[(31 << 3) | 3, 3], 60],
    [[(19 << 3) | 3, 0x80 | 6], 120],
  ])('%j lasts %d ms', (packet, milliseconds) => {
    expect(opusPacketFrames(Uint8Array.from(packet))).toBe(milliseconds * 48);
  });

  it.each([[[]], [[0xff]]])('refuses %j, which does not say', (packet) => {
    expect(() => opusPacketFrames(Uint8Array.from(packet))).toThrow(/1 byte or more/);
  });
});

describe('the file, RFC 7845 sections 3 and 4', () => {
  const packets = Array.from({ length: 150 }, (_, i) => packetOf(1 + ((i * 37) % 600)));
  const frames = 149 * 960;
  const pages = readPages(written(packets, frames));

  it('begins with a page for each header, the first marked, both at granule 0', () => {
    expect(pages[0]?.packets.map(([...packet]) => packet)).toEqual([[...opusHead(STREAM)]]);
    expect(pages[1]?.packets.map(([...packet]) => packet)).toEqual([[...opusTags(['TITLE=Take'])]]);
    expect(pages.slice(0, 2).map(({ flags, granule }) => [flags, granule])).toEqual([
      [2, 0n],
      [0, 0n],
    ]);
  });

  it('numbers its pages, keeps the serial number and marks only the last as the end', () => {
    expect(pages.map(({ sequence }) => sequence)).toEqual(pages.map((_, i) => i));
    expect(new Set(pages.map(({ serial }) => serial))).toEqual(new Set([0x01020304]));
    expect(new Set(pages.map(({ capture, version }) => `${capture}${version}`))).toEqual(new Set(['OggS0']));
    expect(pages.slice(1).map(({ flags }) => flags)).toEqual([...pages.slice(2).map(() => 0), 4]);
  });

  it('gives every packet back, on pages of at most a second', () => {
    const audio = pages.slice(2);
    expect(audio.flatMap((page) => page.packets)).toEqual(packets);
    for (const page of audio) expect(page.packets.length).toBeLessThanOrEqual(50);
  });

  it('counts the samples that are complete with each page, and trims the end', () => {
    let total = 0;
    const expected = pages.slice(2).map((page) => {
      total += page.packets.length * 960;
      return BigInt(total);
    });
    expected[expected.length - 1] = BigInt(frames + 312);
    expect(pages.slice(2).map(({ granule }) => granule)).toEqual(expected);
  });

  it('ends a packet of a multiple of 255 bytes with an empty segment (RFC 3533, section 5)', () => {
    const [page] = readPages(oggPage({ ...pageOf([packetOf(510)]), first: false, last: true }));
    expect(page?.bytes[26]).toBe(3);
    expect(page?.packets.map(({ length }) => length)).toEqual([510]);
  });

  it('refuses more than a page can hold', () => {
    expect(() => oggPage(pageOf([packetOf(255 * 255)]))).toThrow(/255 segments, got 256/);
  });

  it('closes even a file without sound', () => {
    const empty = readPages(written([], 0));
    expect(empty.map(({ flags, packets: held }) => [flags, held.length])).toEqual([
      [2, 1],
      [0, 1],
      [4, 0],
    ]);
  });
});

const pageOf = (packets: readonly Uint8Array[]) => ({
  serial: 1,
  sequence: 2,
  granule: 960,
  first: false,
  last: false,
  packets,
});
