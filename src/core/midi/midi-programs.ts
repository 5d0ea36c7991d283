import { PART_NAMES } from '../score/part-names';
import type { PartId } from '../score/score';
import type { BassVoice, ChordVoice } from '../score/voices';

/**
 * Programs as sent, 0–127; the General MIDI 1 sound set prints them one higher (acoustic bass 33, drawbar organ 17,
 * harmonica 23).
 */
export const PROGRAMS: Readonly<Record<BassVoice | ChordVoice | 'harmonica', number>> = {
  piano: 0,
  'electric-piano': 4,
  organ: 16,
  harmonica: 22,
  guitar: 26,
  'upright-bass': 32,
  'fingered-bass': 33,
};

/**
 * The brush set as sent; General MIDI 2 prints it 41 (from memory). Players that know one set only ignore it: brushes' keys
 * are percussion there too.
 */
export const BRUSH_SET = 40;

/** General MIDI 1: percussion is on channel 10, which is sent as 9. */
const PERCUSSION_CHANNEL = 9;

/** How a part is written: its track, in this order, and its channel as sent, 0–15. */
export interface MidiPart {
  readonly part: PartId;
  readonly name: string;
  readonly channel: number;
}

export const MIDI_PARTS: readonly MidiPart[] = [
  { part: 'bass', name: PART_NAMES.bass, channel: 0 },
  { part: 'chords', name: PART_NAMES.chords, channel: 1 },
  { part: 'second', name: PART_NAMES.second, channel: 3 },
  { part: 'lead', name: 'Harmonica', channel: 2 },
  { part: 'drums', name: PART_NAMES.drums, channel: PERCUSSION_CHANNEL },
  { part: 'click', name: PART_NAMES.click, channel: PERCUSSION_CHANNEL },
];
