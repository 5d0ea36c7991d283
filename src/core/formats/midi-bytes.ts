/**
 * The bytes a Standard MIDI File is made of (Standard MIDI-File Format Spec. 1.1, International MIDI Association):
 * big-endian numbers, variable-length quantities, chunks and meta events.
 */
export type Bytes = readonly number[];

const LONGEST_QUANTITY = 0x0fffffff;

/** A number as `count` bytes, highest first. Throws RangeError when it does not fit or is not a whole number. */
export const bigEndian = (value: number, count: number): Bytes => {
  if (!Number.isInteger(value) || value < 0 || value >= 256 ** count) {
    throw new RangeError(`${count} bytes hold whole numbers from 0 to ${256 ** count - 1}, got ${value}`);
  }
  return Array.from({ length: count }, (_, i) => Math.floor(value / 256 ** (count - 1 - i)) % 256);
};

/**
 * A variable-length quantity: seven bits a byte, the high bit set on all but the last.
 * Throws RangeError unless the value is a whole number from 0 to 0FFFFFFF.
 */
export const variableLength = (value: number): Bytes => {
  if (!Number.isInteger(value) || value < 0 || value > LONGEST_QUANTITY) {
    throw new RangeError(`A variable-length quantity is a whole number from 0 to 0FFFFFFF, got ${value}`);
  }
  const bytes = [value % 128];
  for (let rest = Math.floor(value / 128); rest > 0; rest = Math.floor(rest / 128)) {
    bytes.unshift((rest % 128) + 128);
  }
  return bytes;
};

/** Text as UTF-8, of which ASCII is the part the specification promises every reader understands. */
export const textBytes = (text: string): Bytes =>
  [...text].flatMap((character) => {
    const code = character.codePointAt(0) ?? 0;
    const tail = (shift: number): number => 0x80 + (Math.floor(code / 2 ** shift) % 64);
    if (code < 0x80) return [code];
    if (code < 0x800) return [0xc0 + Math.floor(code / 64), tail(0)];
    if (code < 0x10000) return [0xe0 + Math.floor(code / 4096), tail(6), tail(0)];
    return [0xf0 + Math.floor(code / 262144), tail(12), tail(6), tail(0)];
  });

/** A meta event without its delta time: FF, type, length, data. */
export const metaEvent = (type: number, data: Bytes): Bytes => [
  0xff,
  type,
  ...variableLength(data.length),
  ...data,
];

/** Pieces of a file, one after another. */
export const joinBytes = (pieces: readonly Uint8Array[]): Uint8Array => {
  const joined = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    joined.set(piece, at);
    at += piece.length;
  }
  return joined;
};

/** A chunk: four letters, the length, the data. */
export const chunk = (name: 'MThd' | 'MTrk', data: Bytes): Uint8Array =>
  joinBytes([new Uint8Array([...textBytes(name), ...bigEndian(data.length, 4)]), new Uint8Array(data)]);

/** Something that happens in a track. */
export interface TrackEvent {
  /** Ticks from the start of the file. */
  readonly at: number;
  /** Among events of one tick, the lower comes first. */
  readonly rank: number;
  readonly bytes: Bytes;
}

const END_OF_TRACK = metaEvent(0x2f, []);

/** A track chunk: events in order with their delta times, and the end of track at `end` or after the last event. */
export const trackChunk = (events: readonly TrackEvent[], end: number): Uint8Array => {
  const data: number[] = [];
  let now = 0;
  for (const { at, bytes } of events.toSorted((a, b) => a.at - b.at || a.rank - b.rank)) {
    data.push(...variableLength(at - now), ...bytes);
    now = at;
  }
  data.push(...variableLength(Math.max(0, end - now)), ...END_OF_TRACK);
  return chunk('MTrk', data);
};
