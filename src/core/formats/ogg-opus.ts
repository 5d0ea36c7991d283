/**
 * Opus packets in an Ogg file: RFC 7845 (the mapping), RFC 3533 (pages) and RFC 6716 (what a packet says of its
 * length). Pages go out as they fill, so nothing needs the whole recording in memory.
 */
import { joinBytes, textBytes } from './midi-bytes';

/** A page of an Ogg stream (RFC 3533, section 6). */
export interface OggPage {
  /** Number of the stream, the same on all its pages. */
  readonly serial: number;
  /** Number of the page in the stream, from 0. */
  readonly sequence: number;
  /** Samples at 48 kHz that are complete once this page is decoded, those to skip at the start included. */
  readonly granule: number;
  readonly first: boolean;
  readonly last: boolean;
  /** Whole packets; none is carried over to another page. */
  readonly packets: readonly Uint8Array[];
}

/** Packets of Opus and what their header tells (RFC 7845, section 5.1). */
export interface OpusStream {
  readonly channels: 1 | 2;
  /** Samples at 48 kHz the decoder drops at the start: what the encoder was late. */
  readonly preSkip: number;
  /** Samples a second before encoding; for information only. */
  readonly inputRate: number;
  readonly serial: number;
  /** `NAME=value`. */
  readonly comments: readonly string[];
}

/** Opus counts in samples at this rate, whatever the input was (RFC 7845, section 4). */
export const OPUS_RATE = 48000;
const PAGE_HEADER_BYTES = 27;
const SEGMENT_BYTES = 255;
const MOST_SEGMENTS = 255;
const FIRST_PAGE = 2;
const LAST_PAGE = 4;
/** Generator of the checksum (RFC 3533, section 6): no reflection, start and final value 0. */
const POLYNOMIAL = 0x04c11db7;
/** RFC 7845, section 9, advises at most about a second a page. */
const PAGE_FRAMES = OPUS_RATE;
const VENDOR = 'Combshed';

const CHECKSUM_STEPS: readonly number[] = Array.from({ length: 256 }, (_, byte) => {
  let rest = byte << 24;
  for (let bit = 0; bit < 8; bit += 1) rest = rest < 0 ? (rest << 1) ^ POLYNOMIAL : rest << 1;
  return rest >>> 0;
});

/** The checksum of an Ogg page (RFC 3533, section 6), of bytes whose checksum field is still 0. */
export const oggChecksum = (bytes: Uint8Array): number => {
  let sum = 0;
  for (const byte of bytes) sum = ((sum << 8) ^ (CHECKSUM_STEPS[(sum >>> 24) ^ byte] ?? 0)) >>> 0;
  return sum;
};

const segmentsOf = (packet: Uint8Array): number => Math.floor(packet.length / SEGMENT_BYTES) + 1;

const lacing = (packet: Uint8Array): readonly number[] => [
  ...Array.from({ length: segmentsOf(packet) - 1 }, () => SEGMENT_BYTES),
  packet.length % SEGMENT_BYTES,
];

/** A page as bytes (RFC 3533, section 6). Throws RangeError when its packets need more than 255 segments. */
export const oggPage = ({ serial, sequence, granule, first, last, packets }: OggPage): Uint8Array => {
  const segments = packets.flatMap(lacing);
  if (segments.length > MOST_SEGMENTS) {
    throw new RangeError(`A page holds at most ${MOST_SEGMENTS} segments, got ${segments.length}`);
  }
  const page = joinBytes([new Uint8Array(PAGE_HEADER_BYTES), Uint8Array.from(segments), ...packets]);
  const view = new DataView(page.buffer);
  page.set([0x4f, 0x67, 0x67, 0x53]);
  view.setUint8(5, (first ? FIRST_PAGE : 0) + (last ? LAST_PAGE : 0));
  view.setBigUint64(6, BigInt(granule), true);
  view.setUint32(14, serial, true);
  view.setUint32(18, sequence, true);
  view.setUint8(26, segments.length);
  view.setUint32(22, oggChecksum(page), true);
  return page;
};

const text = (characters: string): Uint8Array => Uint8Array.from(textBytes(characters));

const uint32 = (value: number): Uint8Array => {
  const view = new DataView(new ArrayBuffer(4));
  view.setUint32(0, value, true);
  return new Uint8Array(view.buffer);
};

/** The identification header (RFC 7845, section 5.1): mono or stereo, no change of level. */
export const opusHead = ({ channels, preSkip, inputRate }: OpusStream): Uint8Array => {
  const head = joinBytes([text('OpusHead'), new Uint8Array(11)]);
  const view = new DataView(head.buffer);
  view.setUint8(8, 1);
  view.setUint8(9, channels);
  view.setUint16(10, preSkip, true);
  view.setUint32(12, inputRate, true);
  return head;
};

/** The comment header (RFC 7845, section 5.2). */
export const opusTags = (comments: readonly string[]): Uint8Array => {
  const vendor = text(VENDOR);
  return joinBytes([
    text('OpusTags'),
    uint32(vendor.length),
    vendor,
    uint32(comments.length),
    ...comments.map(text).flatMap((comment) => [uint32(comment.length), comment]),
  ]);
};

/** Milliseconds of a frame by the two low bits of its configuration (RFC 6716, table 2). */
const SPEECH_MS = [10, 20, 40, 60] as const;
const MUSIC_MS = [2.5, 5, 10, 20] as const;

const frameMilliseconds = (configuration: number): number => {
  if (configuration < 12) return SPEECH_MS[configuration & 3] ?? 0;
  return configuration < 16 ? (SPEECH_MS[configuration & 1] ?? 0) : (MUSIC_MS[configuration & 3] ?? 0);
};

/** Samples at 48 kHz in a packet (RFC 6716, section 3.1). Throws RangeError on a packet too short to say. */
export const opusPacketFrames = (packet: Uint8Array): number => {
  const [contents, count] = packet;
  const code = (contents ?? 0) & 3;
  if (contents === undefined || (code === 3 && count === undefined)) {
    throw new RangeError(`An Opus packet has 1 byte or more (2 with a frame count), got ${packet.length}`);
  }
  const frames = code === 0 ? 1 : code === 3 ? (count ?? 0) & 0x3f : 2;
  return (frames * frameMilliseconds(contents >> 3) * OPUS_RATE) / 1000;
};

/** An Ogg file that grows by packets. Each method gives the next bytes of the file, often none. */
export interface OggOpusWriter {
  /** The two header pages. */
  start(): Uint8Array;
  add(packet: Uint8Array): Uint8Array;
  /** The last page. @param frames samples at 48 kHz that went into the encoder; more is cut off when played. */
  end(frames: number): Uint8Array;
}

/** Starts an Ogg Opus file. */
export const createOggOpusWriter = (stream: OpusStream): OggOpusWriter => {
  const { serial, preSkip } = stream;
  let sequence = 0;
  let total = 0;
  let waiting: Uint8Array[] = [];
  let waitingFrames = 0;
  const page = (packets: readonly Uint8Array[], granule: number, last: boolean): Uint8Array => {
    const bytes = oggPage({ serial, sequence, granule, first: sequence === 0, last, packets });
    sequence += 1;
    return bytes;
  };
  const segmentsWaiting = (): number => waiting.reduce((sum, packet) => sum + segmentsOf(packet), 0);
  return {
    start: () => joinBytes([page([opusHead(stream)], 0, false), page([opusTags(stream.comments)], 0, false)]),
    add: (packet) => {
      const frames = opusPacketFrames(packet);
      const full =
        waiting.length > 0 &&
        (waitingFrames + frames > PAGE_FRAMES || segmentsWaiting() + segmentsOf(packet) > MOST_SEGMENTS);
      const bytes = full ? page(waiting, total, false) : new Uint8Array(0);
      if (full) {
        waiting = [];
        waitingFrames = 0;
      }
      waiting.push(packet);
      waitingFrames += frames;
      total += frames;
      return bytes;
    },
    end: (frames) => page(waiting, Math.min(total, preSkip + frames), true),
  };
};
