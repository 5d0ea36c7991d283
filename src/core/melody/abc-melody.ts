import { LETTER_STEPS, SHARPS_IN_ORDER } from '../theory/letters';
/** The notes of an ABC tune (standard 2.1 of 2011): pitches by its key, lengths, ties; one voice. */

import {
  type AbcMeter,
  abcFraction,
  abcKey,
  abcMeter,
  firstTune,
  isCompound,
  usualLength,
} from '../sheets/abc-fields';
import { type AbcToken, musicTokens } from '../sheets/abc-music';
import { MODE_FIFTHS } from '../sheets/modes';
import { LONGEST_ABC } from '../sheets/read-abc';
import { meterFor } from '../sheets/sheet-bars';
import { pitchClassOf } from '../theory/pitch';
import { type Melody, melodyFrom, noteMeter, type PlacedKey } from './melody';

const WHOLE = 1920;

const SIGNS: Readonly<Record<string, number>> = { '^^': 2, '^': 1, '=': 0, _: -1, __: -2 };

type Signature = Readonly<Record<string, number>>;

/** Letters that a key alters, in semitones; signs written after the mode count too (`K:D exp _b`). */
const signatureOf = (value: string): Signature => {
  const [, letter = '', sign = '', word = ''] = /^\s*([A-G])([#b]?)\s*([A-Za-z]*)/.exec(value) ?? [];
  const mode = word === 'm' ? 'min' : word.toLowerCase().slice(0, 3);
  const home =
    letter === '' ? 0 : SHARPS_IN_ORDER.indexOf(letter) - 1 + (sign === '#' ? 7 : sign === 'b' ? -7 : 0);
  const pipes = /^\s*H[Pp]/.test(value);
  const fifths = mode === 'exp' ? 0 : pipes ? 2 : home + (MODE_FIFTHS[mode] ?? 0);
  const altered: Record<string, number> = {};
  for (let i = 0; i < Math.min(Math.abs(fifths), 14); i += 1) {
    const name = fifths > 0 ? SHARPS_IN_ORDER.charAt(i % 7) : SHARPS_IN_ORDER.charAt(6 - (i % 7));
    altered[name] = (altered[name] ?? 0) + Math.sign(fifths);
  }
  for (const [, own = '', name = ''] of value.matchAll(/(?<=\s)(\^\^?|__?|=)([a-g])/gi))
    altered[name.toUpperCase()] = SIGNS[own] ?? 0;
  return altered;
};

/** What is gathered while the tune is read. Times in whole notes. */
interface Reading {
  meter: AbcMeter | null;
  unit: number | null;
  signature: Signature;
  /** Signs of this bar: a sign holds for its pitch up to the bar line (§4.2). */
  signs: Map<string, number>;
  inBody: boolean;
  voice: string | null;
  isOtherVoice: boolean;
  at: number;
  barFrom: number;
  bars: number;
  /** True within an ending that is not the first. */
  skips: boolean;
  tied: boolean;
  title: string;
  key: string;
  readonly placed: { at: number; length: number; key: number }[];
  readonly left: Set<string>;
}

/** The MIDI key of a written pitch such as `^c'`; C is middle C, 60 (§4.1). */
const keyOf = (reading: Reading, text: string): number | null => {
  const [, sign = '', letter = '', octaves = ''] = /^([_^=]*)([A-Ga-g])([,']*)$/.exec(text) ?? [];
  const name = letter.toUpperCase();
  const step = LETTER_STEPS[name];
  if (step === undefined) return null;
  const up = [...octaves].reduce((sum, each) => sum + (each === "'" ? 1 : -1), letter === name ? 0 : 1);
  const pitch = `${name}${up}`;
  const written = SIGNS[sign];
  if (written !== undefined) reading.signs.set(pitch, written);
  return 60 + step + 12 * up + (reading.signs.get(pitch) ?? reading.signature[name] ?? 0);
};

const takeNote = (reading: Reading, token: AbcToken & { kind: 'note' }): void => {
  const { placed, at, tied } = reading;
  reading.tied = false;
  if (reading.skips) return;
  const length = Math.min(token.length, 64) * WHOLE;
  reading.at += length;
  const keys = token.pitches.flatMap((pitch) => keyOf(reading, pitch) ?? []);
  const last = placed.at(-1);
  if (tied && last !== undefined && keys.includes(last.key) && last.at + last.length === at) {
    last.length += length;
    return;
  }
  if (keys.length > 1) reading.left.add('Of notes that begin together the highest was taken.');
  if (keys.length > 0) placed.push({ at, length, key: Math.max(...keys) });
};

const barOf = ({ meter }: Reading): number =>
  WHOLE * (meter === null ? 1 : Math.min(64, meter.beats / meter.unit));

/** A first bar that is not full is an upbeat, but in free meter: it ends where the first whole bar begins. */
const takeLine = (reading: Reading, { closes, opens, double, dotted }: AbcToken & { kind: 'line' }): void => {
  if (dotted) return;
  reading.signs = new Map();
  if (closes > 0 || opens > 0) reading.left.add('What is repeated was read once.');
  if (closes > 0 || opens > 0 || double) reading.skips = false;
  const short = barOf(reading) - (reading.at - reading.barFrom);
  if (reading.at === reading.barFrom) return;
  if (reading.meter !== null && reading.bars === 0 && short > 1) {
    for (const note of reading.placed) note.at += short;
    reading.at += short;
  }
  reading.bars += 1;
  reading.barFrom = reading.at;
};

const takeField = (reading: Reading, name: string, value: string): void => {
  if (name === 'V') {
    const voice = value.trim().split(/\s+/)[0] ?? '';
    reading.voice ??= reading.placed.length > 0 ? '' : voice;
    // The head only declares voices (§7.1).
    reading.isOtherVoice = reading.inBody && voice !== reading.voice;
    if (reading.isOtherVoice) reading.left.add('Only the first voice was read.');
  }
  if (reading.isOtherVoice) return;
  if (name === 'T' && reading.title === '') reading.title = value.trim();
  if (name === 'L') reading.unit = abcFraction(value) ?? reading.unit;
  if (name === 'M') {
    if (reading.inBody) reading.left.add('The meter changes within the tune; the bars stay as they began.');
    else reading.meter = abcMeter(value);
  }
  if (name !== 'K') return;
  if (!reading.inBody) reading.key = value;
  reading.signature = signatureOf(value);
  reading.inBody = true;
};

const takeToken = (reading: Reading, token: AbcToken): void => {
  if (reading.isOtherVoice && token.kind !== 'field') return;
  if (token.kind === 'note') takeNote(reading, token);
  if (token.kind === 'tie') reading.tied = true;
  if (token.kind === 'line') takeLine(reading, token);
  if (token.kind === 'field') takeField(reading, token.name, token.value);
  if (token.kind === 'bars rest') {
    reading.at += Math.min(token.bars, 64) * barOf(reading);
    reading.barFrom = reading.at;
    reading.bars += 1;
  }
  if (token.kind === 'ending' && !/^1/.test(token.numbers)) {
    reading.skips = true;
    reading.left.add('Of several endings the first was read.');
  }
};

const readLine = (reading: Reading, line: string): void => {
  const [, name, value = ''] = /^([A-Za-z+]):(?![|:])(.*)$/.exec(line) ?? [];
  if (name !== undefined) takeField(reading, name, value);
  if (name !== undefined || !reading.inBody) return;
  const unit = reading.unit ?? usualLength(reading.meter);
  for (const token of musicTokens(line, unit, isCompound(reading.meter))) takeToken(reading, token);
};

/** Reads the melody of the first tune of an ABC file; a sentence where there is none. Never throws on any text. */
export const abcMelody = (source: string): Melody | string => {
  if (source.length > LONGEST_ABC) return 'This file is longer than any tune; nothing of it was read.';
  const { lines, of } = firstTune(source);
  const reading: Reading = {
    ...{ meter: { beats: 4, unit: 4 }, unit: null, signature: {}, signs: new Map(), inBody: false },
    ...{ voice: null, isOtherVoice: false, at: 0, barFrom: 0, bars: 0, skips: false, tied: false },
    ...{ title: '', key: '', placed: [], left: new Set<string>() },
  };
  for (const line of lines) readLine(reading, line);
  if (!reading.inBody) return 'This is no ABC tune: a line that begins with K: is missing.';
  const { meter, left } = reading;
  if (of > 1) left.add(`The file holds ${of} tunes; the first was read.`);
  const written = meterFor(meter?.beats ?? 4, meter?.unit ?? 4);
  if (meter !== null) noteMeter(left, `${meter.beats}/${meter.unit}`, written);
  const key = abcKey(reading.key);
  const head = {
    name: reading.title || 'Melody from a file',
    meter: written,
    tonic: key === null ? null : pitchClassOf(key.tonic),
  };
  const placed = reading.placed.map(
    ({ at, length, ...note }): PlacedKey => ({ ...note, at: Math.round(at), length: Math.round(length) }),
  );
  return melodyFrom(head, placed, left);
};
