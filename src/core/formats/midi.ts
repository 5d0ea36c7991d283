import type { Section } from '../arranger/program';
import type { BarKey } from '../chart/chart';
import { keyAt } from '../chart/key-at';
import { BRUSH_SET, MIDI_PARTS, type MidiPart, PROGRAMS } from '../midi/midi-programs';
import type { PartId } from '../score/score';
import type { BassVoice, ChordVoice, Kit, SecondVoice } from '../score/voices';
import { TICKS_PER_QUARTER } from '../theory/units';
import { keyFifths } from './key-fifths';
import { bendEvents, bendRange, rangeEvents } from './midi-bend';
import {
  type Bytes,
  bigEndian,
  chunk,
  joinBytes,
  metaEvent,
  type TrackEvent,
  textBytes,
  trackChunk,
} from './midi-bytes';
import {
  lengthOf,
  notesOfPart,
  type PlacedNote,
  type PlacedSection,
  placeSections,
  quarterTempo,
} from './midi-timeline';

/** What is saved as a MIDI file. */
export interface MidiSong {
  readonly title: string;
  /** In playing order; each begins where the one before ends. */
  readonly sections: readonly Section[];
  /** Without a kit, sticks. */
  readonly voices: {
    readonly bass: BassVoice;
    readonly chords: ChordVoice;
    readonly kit?: Kit;
    readonly second?: SecondVoice;
  };
  /** Parts to write; all that sound when left out. */
  readonly parts?: readonly PartId[];
  /** Milliseconds a part plays behind (+) or ahead of (−) the beat, as the style has them. */
  readonly push?: Readonly<Partial<Record<PartId, number>>>;
}

const META = { trackName: 0x03, marker: 0x06, tempo: 0x51, meter: 0x58, key: 0x59 } as const;
/** Order within a tick: set-up, then note ends, then bends (`BEND_RANK`), then note starts. */
const SETUP_RANK = 0;
const NOTE_END_RANK = 1;
const NOTE_START_RANK = 3;
const RELEASE_VELOCITY = 64;

const nameEvent = (name: string): TrackEvent => ({
  at: 0,
  rank: SETUP_RANK,
  bytes: metaEvent(META.trackName, textBytes(name)),
});

const tempoBytes = (bpm: number, beatTicks: number): Bytes =>
  metaEvent(META.tempo, bigEndian(Math.round(60_000_000 / quarterTempo(bpm, beatTicks)), 3));

/** Numerator, power of two of the denominator, MIDI clocks (24 a quarter) a beat, 32nds a quarter. */
const meterBytes = ({ chart }: Section): Bytes => {
  const [beats = 4, unit = 4] = chart.meter.name.split('/').map(Number);
  const clocks = (chart.meter.beatTicks * 24) / TICKS_PER_QUARTER;
  return metaEvent(META.meter, [beats, Math.log2(unit), clocks, 8]);
};

const keyBytes = ({ tonic, mode }: BarKey): Bytes => {
  const fifths = keyFifths(tonic, mode);
  return metaEvent(META.key, [fifths < 0 ? fifths + 256 : fifths, mode === 'minor' ? 1 : 0]);
};

const sectionName = ({ kind, chorus }: Section): string => {
  if (kind === 'chorus') return `Chorus ${chorus + 1}`;
  return { 'count-in': 'Count-in', intro: 'Intro', ending: 'Ending' }[kind];
};

/** Section and chord names; a count-in has no chords of its own. */
const markerEvents = ({ section, at }: PlacedSection): readonly TrackEvent[] => {
  const marker = (tick: number, text: string): TrackEvent => ({
    at: tick,
    rank: SETUP_RANK + 1,
    bytes: metaEvent(META.marker, textBytes(text)),
  });
  const spans = section.kind === 'count-in' ? [] : section.chart.bars.flatMap((bar) => bar.chords);
  return [
    marker(at, sectionName(section)),
    ...spans
      .filter(({ chord }, index) => chord.symbol !== spans[index - 1]?.chord.symbol)
      .map((span) => marker(at + span.at, span.chord.symbol)),
  ];
};

/** Leaves out what repeats the event before it. */
const changesOnly = (events: readonly TrackEvent[]): readonly TrackEvent[] =>
  events.filter(({ bytes }, index) => bytes.join() !== events[index - 1]?.bytes.join());

/** The first track: title, tempo, meter, key and markers. */
const conductorTrack = (title: string, placed: readonly PlacedSection[]): Uint8Array => {
  const setUp = (bytesOf: (section: Section) => Bytes): readonly TrackEvent[] =>
    changesOnly(placed.map(({ section, at }) => ({ at, rank: SETUP_RANK, bytes: bytesOf(section) })));
  const tempos = placed.flatMap(({ section, at }) =>
    section.tempo.map((step) => ({
      at: at + step.at,
      rank: SETUP_RANK,
      bytes: tempoBytes(step.bpm, section.chart.meter.beatTicks),
    })),
  );
  const keys = placed.flatMap(({ section: { chart }, at }) =>
    chart.bars.map((bar, index) => ({
      at: at + bar.at,
      rank: SETUP_RANK,
      bytes: keyBytes(keyAt(chart, index)),
    })),
  );
  const events = [
    nameEvent(title),
    ...changesOnly(tempos),
    ...setUp(meterBytes),
    ...changesOnly(keys),
    ...placed.flatMap(markerEvents),
  ];
  return trackChunk(events, lengthOf(placed));
};

const dataByte = (value: number, name: string): number => {
  const rounded = Math.round(value);
  if (!(rounded >= 0 && rounded <= 127)) throw new RangeError(`${name} must be from 0 to 127, got ${value}`);
  return rounded;
};

const noteEvents = ({ from, to, event }: PlacedNote, channel: number): readonly TrackEvent[] => {
  const key = dataByte(event.pitch, 'A key');
  const velocity = Math.max(1, dataByte(event.velocity, 'A velocity'));
  return [
    { at: from, rank: NOTE_START_RANK, bytes: [0x90 + channel, key, velocity] },
    { at: to, rank: NOTE_END_RANK, bytes: [0x80 + channel, key, RELEASE_VELOCITY] },
  ];
};

/** The program a part is played with; of percussion only brushes need one. */
const programOf = (
  part: PartId,
  { bass, chords, kit, second = 'organ' }: MidiSong['voices'],
): number | null => {
  if (part === 'drums') return kit === 'brushes' ? BRUSH_SET : null;
  if (part === 'bass') return PROGRAMS[bass];
  if (part === 'chords') return PROGRAMS[chords];
  if (part === 'second') return PROGRAMS[second];
  return part === 'lead' ? PROGRAMS.harmonica : null;
};

const partTrack = (
  { name, channel }: MidiPart,
  program: number | null,
  notes: readonly PlacedNote[],
  end: number,
): Uint8Array => {
  const range = bendRange(notes);
  const setUp: readonly Bytes[] = [
    ...(program === null ? [] : [[0xc0 + channel, program]]),
    ...(range === 0 ? [] : rangeEvents(channel, range)),
  ];
  const events = [
    nameEvent(name),
    ...setUp.map((bytes) => ({ at: 0, rank: SETUP_RANK, bytes })),
    ...notes.flatMap((note) => noteEvents(note, channel)),
    ...(range === 0 ? [] : bendEvents(notes, channel, range)),
  ];
  return trackChunk(events, end);
};

/**
 * A Standard MIDI File of format 1, 480 ticks a quarter (Standard MIDI-File Format Spec. 1.1): a track with title,
 * tempo, meter, key, section and chord-name markers, then one track for each part that sounds. Swing is in the
 * ticks, as the format has no other place for it; fractional pitches are rounded to their key.
 * Throws RangeError on a pitch or velocity outside 0–127 and on a tempo slower than the format can hold.
 */
export const writeMidi = (song: MidiSong): Uint8Array => {
  const placed = placeSections(song.sections);
  const end = lengthOf(placed);
  const parts = MIDI_PARTS.filter(({ part }) => song.parts?.includes(part) ?? true)
    .map((midiPart) => ({
      midiPart,
      notes: notesOfPart(placed, midiPart.part, song.push?.[midiPart.part] ?? 0),
    }))
    .filter(({ notes }) => notes.length > 0);
  const tracks = [
    conductorTrack(song.title, placed),
    ...parts.map(({ midiPart, notes }) =>
      partTrack(midiPart, programOf(midiPart.part, song.voices), notes, end),
    ),
  ];
  const header = chunk('MThd', [
    ...bigEndian(1, 2),
    ...bigEndian(tracks.length, 2),
    ...bigEndian(TICKS_PER_QUARTER, 2),
  ]);
  return joinBytes([header, ...tracks]);
};
