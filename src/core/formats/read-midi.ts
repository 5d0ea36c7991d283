/**
 * Reads Standard MIDI Files (Standard MIDI-File Format Spec. 1.1, International MIDI Association): notes, names,
 * lyrics, meter and key, of formats 0, 1 and 2. What is damaged ends the track it is in; the rest is kept.
 */

/** A note of a track. Times in ticks of the file. */
export interface MidiFileNote {
  readonly at: number;
  readonly length: number;
  readonly key: number;
  readonly velocity: number;
  /** 0–15; 9 is percussion in General MIDI. */
  readonly channel: number;
}

/** A track as it was read. */
export interface MidiFileTrack {
  readonly name: string;
  readonly notes: readonly MidiFileNote[];
  readonly lyrics: readonly { readonly at: number; readonly text: string }[];
  /** Programs (0–127) by channel, the first of each. */
  readonly programs: ReadonlyMap<number, number>;
}

/** A file as it was read. */
export interface MidiFile {
  readonly ticksPerQuarter: number;
  readonly tracks: readonly MidiFileTrack[];
  readonly meter: { readonly beats: number; readonly unit: number } | null;
  /** Sharps (+) or flats (−), and whether the key is a minor one. */
  readonly key: { readonly fifths: number; readonly minor: boolean } | null;
  /** What could not be read, in sentences. */
  readonly left: readonly string[];
}

/** The largest file that is read, in bytes, and the most events: many hundred short melodies. */
const LARGEST = 1_000_000;
const MOST_EVENTS = 200_000;
const MOST_TRACKS = 64;

const ENDS_EARLY = 'The file ends in the middle of a track; what came before was read.';

interface Growing {
  name: string;
  readonly notes: MidiFileNote[];
  readonly lyrics: { at: number; text: string }[];
  readonly programs: Map<number, number>;
}

interface Reading {
  readonly bytes: Uint8Array;
  readonly tracks: Growing[];
  meter: MidiFile['meter'];
  key: MidiFile['key'];
  events: number;
  readonly left: Set<string>;
}

/** Data bytes of the channel messages 8–E (MIDI 1.0, table of channel voice messages). */
const dataBytes = (status: number): number => (status >> 4 === 0xc || status >> 4 === 0xd ? 1 : 2);

const numberOf = (bytes: Uint8Array, at: number, count: number): number => {
  let value = 0;
  for (let i = 0; i < count; i += 1) value = value * 256 + (bytes[at + i] ?? 0);
  return value;
};

/** Continuation bytes behind a leading byte of UTF-8 (RFC 3629), and the bits it carries itself; null where it is none. */
const leadOf = (byte: number): readonly [more: number, bits: number] | null => {
  if (byte < 0x80) return [0, byte];
  if (byte >= 0xc2 && byte < 0xe0) return [1, byte % 32];
  if (byte >= 0xe0 && byte < 0xf0) return [2, byte % 16];
  return byte >= 0xf0 && byte < 0xf5 ? [3, byte % 8] : null;
};

/** Text as UTF-8; a byte that does not belong to any stands for the letter of its number. */
const textOf = (bytes: Uint8Array): string => {
  const letters: string[] = [];
  const whole = bytes.subarray(0, 200);
  for (let at = 0; at < whole.length; ) {
    const byte = whole[at] ?? 0;
    const [more, bits] = leadOf(byte) ?? [0, byte];
    const rest = [...whole.subarray(at + 1, at + 1 + more)];
    const isWhole = rest.length === more && rest.every((each) => each >= 0x80 && each < 0xc0);
    const code = rest.reduce((sum, each) => sum * 64 + (each % 64), bits);
    letters.push(String.fromCodePoint(isWhole && code <= 0x10ffff ? code : byte));
    at += isWhole ? 1 + more : 1;
  }
  return letters.join('').trim();
};

/** Takes a variable-length quantity of at most four bytes; null where the data ends in it. */
const quantityAt = (
  bytes: Uint8Array,
  at: number,
  end: number,
): { readonly value: number; readonly next: number } | null => {
  let value = 0;
  for (let i = 0; i < 4 && at + i < end; i += 1) {
    const byte = bytes[at + i] ?? 0;
    value = value * 128 + (byte % 128);
    if (byte < 128) return { value, next: at + i + 1 };
  }
  return null;
};

interface Meta {
  readonly at: number;
  readonly type: number;
  readonly data: Uint8Array;
}

const takeMeta = (reading: Reading, track: Growing, { at, type, data }: Meta): void => {
  const [first = 0, second = 0] = data;
  if (type === 0x03 && track.name === '') track.name = textOf(data);
  if (type === 0x05) track.lyrics.push({ at, text: textOf(data) });
  if (type === 0x58 && data.length >= 2 && first > 0 && second < 7) {
    const meter = { beats: first, unit: 2 ** second };
    if (reading.meter !== null && reading.meter.beats / reading.meter.unit !== meter.beats / meter.unit)
      reading.left.add('The meter changes within the file; the bars stay as they began.');
    reading.meter ??= meter;
  }
  if (type === 0x59 && data.length >= 2) {
    const fifths = first > 127 ? first - 256 : first;
    if (Math.abs(fifths) <= 7) reading.key ??= { fifths, minor: second === 1 };
  }
};

/** Notes of one key that began, and how many of them have ended. */
interface KeyNotes {
  readonly begun: { readonly at: number; readonly velocity: number }[];
  ended: number;
}

/** Notes that sound, by channel and key: the first that began ends first. */
type Sounding = Map<number, KeyNotes>;

const endNote = ({ track, sounding, now }: Cursor, channelKey: number): void => {
  const notes = sounding.get(channelKey);
  const begun = notes?.begun[notes.ended];
  if (notes === undefined || begun === undefined) return;
  notes.ended += 1;
  track.notes.push({
    ...{ at: begun.at, length: now - begun.at, velocity: begun.velocity },
    ...{ key: channelKey % 128, channel: Math.floor(channelKey / 128) },
  });
};

interface Message {
  readonly status: number;
  readonly first: number;
  readonly second: number;
}

const takeMessage = (cursor: Cursor, { status, first, second }: Message): void => {
  const { track, sounding, now } = cursor;
  const kind = status >> 4;
  const channel = status % 16;
  const channelKey = 128 * channel + first;
  if (kind === 0xc && !track.programs.has(channel)) track.programs.set(channel, first);
  if (kind === 0x8 || (kind === 0x9 && second === 0)) endNote(cursor, channelKey);
  else if (kind === 0x9) {
    const notes = sounding.get(channelKey) ?? { begun: [], ended: 0 };
    notes.begun.push({ at: now, velocity: second });
    sounding.set(channelKey, notes);
  }
};

/** Where in a track reading stands. */
interface Cursor {
  readonly track: Growing;
  readonly sounding: Sounding;
  readonly end: number;
  next: number;
  now: number;
  /** The status that data bytes without one go on with (running status); 0 for none. */
  running: number;
}

type Step = 'on' | 'end' | 'damaged';

/** A meta event or system exclusive data. */
const takeLongEvent = (reading: Reading, cursor: Cursor, lead: number): Step => {
  const { bytes } = reading;
  const isMeta = lead === 0xff;
  const size = quantityAt(bytes, cursor.next + (isMeta ? 2 : 1), cursor.end);
  const isKnown = isMeta || lead === 0xf0 || lead === 0xf7;
  if (size === null || size.next + size.value > cursor.end || !isKnown) return 'damaged';
  const type = isMeta ? (bytes[cursor.next + 1] ?? 0) : -1;
  if (type === 0x2f) return 'end';
  const data = bytes.subarray(size.next, size.next + size.value);
  takeMeta(reading, cursor.track, { at: cursor.now, type, data });
  cursor.next = size.next + size.value;
  cursor.running = 0;
  return 'on';
};

const takeEvent = (reading: Reading, cursor: Cursor): Step => {
  const { bytes } = reading;
  const delta = quantityAt(bytes, cursor.next, cursor.end);
  reading.events += 1;
  if (delta === null || reading.events > MOST_EVENTS) return 'damaged';
  cursor.now += delta.value;
  cursor.next = delta.next;
  const lead = bytes[cursor.next] ?? 0;
  if (lead >= 0xf0) return takeLongEvent(reading, cursor, lead);
  if (lead >= 0x80) cursor.running = lead;
  const data = lead >= 0x80 ? cursor.next + 1 : cursor.next;
  cursor.next = data + dataBytes(cursor.running);
  if (cursor.running === 0 || cursor.next > cursor.end) return 'damaged';
  const [first, second] = [(bytes[data] ?? 0) % 128, (bytes[data + 1] ?? 0) % 128];
  takeMessage(cursor, { status: cursor.running, first, second });
  return 'on';
};

/** Reads the events of one track, up to its end or to what makes no sense. */
const readTrack = (reading: Reading, from: number, end: number): void => {
  const track: Growing = { name: '', notes: [], lyrics: [], programs: new Map() };
  reading.tracks.push(track);
  const cursor: Cursor = { track, sounding: new Map(), end, next: from, now: 0, running: 0 };
  let step: Step = 'on';
  while (step === 'on' && cursor.next < end) step = takeEvent(reading, cursor);
  if (step === 'damaged') reading.left.add('A track is damaged; what came before was read.');
  for (const [channelKey, { begun }] of cursor.sounding) for (const _ of begun) endNote(cursor, channelKey);
  track.notes.sort((a, b) => a.at - b.at || b.key - a.key);
};

const isChunk = (bytes: Uint8Array, at: number, name: string): boolean =>
  [...name].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

/** Why a file is none that can be read; null where its head is in order. */
const headTrouble = (bytes: Uint8Array): string | null => {
  if (bytes.length > LARGEST)
    return 'This file has more than 1 MB, more than any melody; nothing of it was read.';
  if (!isChunk(bytes, 0, 'MThd') || bytes.length < 14)
    return 'This is no MIDI file, or its beginning is damaged.';
  const division = numberOf(bytes, 12, 2);
  if (division >= 0x8000)
    return 'This MIDI file counts time in film frames instead of beats, so its rhythm cannot be read. Save it with beats.';
  return division === 0 ? 'This MIDI file does not say how long a beat is; its beginning is damaged.' : null;
};

/** Reads a file; a sentence where nothing of it can be used. Never throws on any bytes. */
export const readMidiFile = (bytes: Uint8Array): MidiFile | string => {
  const trouble = headTrouble(bytes);
  if (trouble !== null) return trouble;
  const reading: Reading = { bytes, tracks: [], meter: null, key: null, events: 0, left: new Set() };
  let at = 8 + Math.max(6, numberOf(bytes, 4, 4));
  while (at + 8 <= bytes.length && reading.tracks.length < MOST_TRACKS) {
    const from = at + 8;
    const end = from + numberOf(bytes, at + 4, 4);
    if (end > bytes.length) reading.left.add(ENDS_EARLY);
    if (isChunk(bytes, at, 'MTrk')) readTrack(reading, from, Math.min(end, bytes.length));
    at = end;
  }
  const { tracks, meter, key, left } = reading;
  return { ticksPerQuarter: numberOf(bytes, 12, 2), tracks, meter, key, left: [...left] };
};
