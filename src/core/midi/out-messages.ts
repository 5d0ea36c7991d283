import type { PartId } from '../score/score';
import { TICKS_PER_QUARTER } from '../theory/units';
import { MIDI_PARTS } from './midi-programs';
import type { OutsideNote } from './outside-event';

/**
 * Messages for an instrument outside of the page, as the MIDI 1.0 Detailed Specification has them: channel voice and
 * channel mode messages (tables II and III), system common and system real time messages (tables V and VI).
 */
export type MidiBytes = readonly number[];

/** Timing clock, 24 a quarter note; start from the beginning, continue from the song position, stop. */
export const CLOCK: MidiBytes = [0xf8];
export const START: MidiBytes = [0xfa];
export const CONTINUE: MidiBytes = [0xfb];
export const STOP: MidiBytes = [0xfc];

/** Ticks between two pulses of the clock. */
export const PULSE_TICKS = TICKS_PER_QUARTER / 24;

/** Song positions count in sixteenths, which are six pulses. */
export const PULSES_OF_POSITION = 6;
/** Fourteen bits: 1024 bars of 4/4. */
const LAST_POSITION = 0x3fff;

/** Where to go on from, in sixteenths from the beginning; what lies beyond the last position a message can say is that. */
export const songPosition = (sixteenths: number): MidiBytes => {
  const position = Math.min(LAST_POSITION, Math.max(0, Math.round(sixteenths)));
  return [0xf2, position & 0x7f, position >> 7];
};

/** What can be sent out: the clock, and parts of the band. */
export const OUT_CHOICES = ['clock', 'bass', 'chords', 'second', 'lead', 'drums'] as const;
export type OutChoice = (typeof OUT_CHOICES)[number];

/** The choices among some words; any other word is passed over. */
export const outChoices = (words: readonly string[]): readonly OutChoice[] =>
  OUT_CHOICES.filter((each) => words.includes(each));

/** A part's channel as it is printed, from 1: the same as in the files the page saves. */
export const channelOf = (part: PartId): number =>
  (MIDI_PARTS.find((each) => each.part === part)?.channel ?? 0) + 1;

const dataByte = (value: number): number => Math.min(127, Math.max(0, Math.round(value)));

/** A note as a message. Pitches between keys are the nearest key: bends and slides stay on the page. */
export const noteMessage = ({ kind, part, pitch, velocity }: OutsideNote): MidiBytes => {
  const channel = channelOf(part) - 1;
  const key = dataByte(pitch);
  return kind === 'on' ? [0x90 + channel, key, Math.max(1, dataByte(velocity))] : [0x80 + channel, key, 64];
};

const ALL_SOUND_OFF = 120;
const ALL_NOTES_OFF = 123;

/** Silence on every channel that something was sent on: no note held, no sound left. */
export const silenceMessages = (channels: readonly number[]): readonly MidiBytes[] =>
  [...new Set(channels)].flatMap((channel) =>
    [ALL_NOTES_OFF, ALL_SOUND_OFF].map((controller) => [0xb0 + channel - 1, controller, 0]),
  );
