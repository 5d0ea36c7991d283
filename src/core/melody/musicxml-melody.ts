import { LETTER_STEPS } from '../theory/letters';
/** The notes of a MusicXML score (4.0 and before, `score-partwise`): one part, its first voice. */

import { sheetKey } from '../sheets/musicxml-key';
import { MOST_MEASURES, meterFor } from '../sheets/sheet-bars';
import { childAt, childrenOf, numberAt, textAt, type XmlNode } from '../sheets/xml-node';
import { pitchClassOf } from '../theory/pitch';
import { asPitchClass } from '../theory/units';
import { type Melody, melodyFrom, noteMeter, type PlacedKey } from './melody';

const QUARTER = 480;

/** What holds from measure to measure; times in ticks. */
interface Reading {
  divisions: number;
  /** Semitones from the written to the sounding note. */
  transpose: number;
  beats: number;
  unit: number;
  isMeterSaid: boolean;
  tonic: number | null;
  voice: string | null;
  at: number;
  measureFrom: number;
  measureEnd: number;
  /** True within an ending that is not the first. */
  skips: boolean;
  readonly placed: { at: number; length: number; key: number }[];
  readonly left: Set<string>;
}

const takeAttributes = (reading: Reading, node: XmlNode): void => {
  const divisions = numberAt(node, 'divisions') ?? 0;
  if (divisions > 0) reading.divisions = divisions;
  const beats = numberAt(node, 'time', 'beats') ?? 0;
  const unit = numberAt(node, 'time', 'beat-type') ?? 0;
  if (beats > 0 && unit > 0 && beats <= 64) {
    if (reading.isMeterSaid && (beats !== reading.beats || unit !== reading.unit))
      reading.left.add('The meter changes within the tune; the bars stay as they began.');
    else Object.assign(reading, { beats, unit, isMeterSaid: true });
  }
  const change = childAt(node, 'transpose');
  if (change !== undefined)
    reading.transpose =
      Math.round(numberAt(change, 'chromatic') ?? 0) +
      12 * Math.round(numberAt(change, 'octave-change') ?? 0);
  const key = sheetKey(childAt(node, 'key'));
  if (key !== null) reading.tonic ??= pitchClassOf(key.tonic) + reading.transpose;
};

const pitchOf = (reading: Reading, note: XmlNode): number | null => {
  const step = LETTER_STEPS[textAt(note, 'pitch', 'step')];
  const octave = numberAt(note, 'pitch', 'octave');
  if (step === undefined || octave === null) return null;
  const alter = Math.round(numberAt(note, 'pitch', 'alter') ?? 0);
  return 12 * (Math.round(octave) + 1) + step + alter + reading.transpose;
};

const isTieEnd = (note: XmlNode): boolean =>
  childrenOf(note, 'tie').some(({ attributes }) => attributes.type === 'stop');

const takeNote = (reading: Reading, note: XmlNode, length: number): void => {
  const { placed, left } = reading;
  if (childrenOf(note, 'grace').length > 0) {
    left.add('Grace notes were left out.');
    return;
  }
  const isChord = childrenOf(note, 'chord').length > 0;
  const last = placed.at(-1);
  const at = isChord ? (last?.at ?? reading.at) : reading.at;
  if (!isChord) reading.at += length;
  const voice = textAt(note, 'voice');
  const isRest = childrenOf(note, 'rest').length > 0;
  if (!isRest) reading.voice ??= voice;
  if (reading.skips || isRest) return;
  if (voice !== reading.voice) {
    left.add('Only the first voice was read.');
    return;
  }
  const key = pitchOf(reading, note);
  if (key === null) left.add('Notes without a pitch were left out.');
  else if (isTieEnd(note) && last?.key === key && Math.abs(last.at + last.length - at) < 1)
    last.length += length;
  else placed.push({ at, length, key });
};

const takeBarline = (reading: Reading, node: XmlNode): void => {
  const ending = childAt(node, 'ending')?.attributes;
  if (ending?.type === 'start' && !/^\s*1/.test(ending.number ?? '1')) {
    reading.skips = true;
    reading.left.add('Of several endings the first was read.');
  }
  if (ending?.type === 'stop' || ending?.type === 'discontinue') reading.skips = false;
  if (childAt(node, 'repeat') !== undefined) reading.left.add('What is repeated was read once.');
};

const takeNode = (reading: Reading, node: XmlNode): void => {
  const duration = Math.max(0, numberAt(node, 'duration') ?? 0);
  const length = Math.min((duration / reading.divisions) * QUARTER, 64 * QUARTER);
  if (node.name === 'attributes') takeAttributes(reading, node);
  if (node.name === 'barline') takeBarline(reading, node);
  if (node.name === 'backup') reading.at = Math.max(reading.measureFrom, reading.at - length);
  if (node.name === 'forward') reading.at += length;
  if (node.name === 'note') takeNote(reading, node, length);
  reading.measureEnd = Math.max(reading.measureEnd, reading.at);
};

/** A first measure that is not full is an upbeat: it ends where the first whole bar begins. */
const takeMeasure = (reading: Reading, node: XmlNode, isFirst: boolean): void => {
  reading.measureFrom = reading.at;
  reading.measureEnd = reading.at;
  const skipped = reading.skips;
  for (const child of node.children) takeNode(reading, child);
  const bar = (reading.beats / reading.unit) * 4 * QUARTER;
  const short = bar - (reading.measureEnd - reading.measureFrom);
  const isUpbeat = isFirst && short > 1 && reading.measureEnd > reading.measureFrom;
  if (isUpbeat) for (const note of reading.placed) note.at += short;
  // What is left out takes no time.
  const isOut = skipped || (reading.skips && !reading.placed.some(({ at }) => at >= reading.measureFrom));
  reading.at = isOut ? reading.measureFrom : reading.measureEnd + (isUpbeat ? short : 0);
};

const partName = (root: XmlNode, part: XmlNode): string => {
  const { id } = part.attributes;
  const named = childrenOf(childAt(root, 'part-list'), 'score-part').find(
    ({ attributes }) => id !== undefined && attributes.id === id,
  );
  return textAt(named, 'part-name');
};

const readPart = (root: XmlNode, part: XmlNode, title: string): Melody | string => {
  const reading: Reading = {
    ...{ divisions: 1, transpose: 0, beats: 4, unit: 4, isMeterSaid: false, tonic: null, voice: null },
    ...{ at: 0, measureFrom: 0, measureEnd: 0, skips: false, placed: [], left: new Set<string>() },
  };
  const measures = childrenOf(part, 'measure').slice(0, MOST_MEASURES);
  measures.forEach((measure, i) => {
    takeMeasure(reading, measure, i === 0);
  });
  const meter = meterFor(reading.beats, reading.unit);
  noteMeter(reading.left, `${reading.beats}/${reading.unit}`, meter);
  const placed = reading.placed.map(
    ({ at, length, key }): PlacedKey => ({ at: Math.round(at), length: Math.round(length), key }),
  );
  const tonic = reading.tonic === null ? null : asPitchClass(reading.tonic);
  const name = [title, partName(root, part)].filter(Boolean).join(', ') || 'Melody from a file';
  return melodyFrom({ name, meter, tonic }, placed, reading.left);
};

/** Most parts that are offered. */
const MOST_PARTS = 16;

/** Reads the melodies of a MusicXML score, one a part that has notes; a sentence where there is none. Never throws. */
export const musicXmlMelodies = (root: XmlNode): readonly Melody[] | string => {
  if (root.name === 'score-timewise')
    return 'This score is written measure by measure (timewise); save it part by part (partwise) and open it again.';
  if (root.name !== 'score-partwise') return 'This is no MusicXML score.';
  const title = textAt(root, 'work', 'work-title') || textAt(root, 'movement-title');
  const read = childrenOf(root, 'part')
    .slice(0, MOST_PARTS)
    .map((part) => readPart(root, part, title));
  const melodies = read.flatMap((each) => (typeof each === 'string' ? [] : [each]));
  if (melodies.length > 0) return melodies;
  return (
    read.find((each) => typeof each === 'string') ?? 'This score has no parts, so there are no notes in it.'
  );
};
