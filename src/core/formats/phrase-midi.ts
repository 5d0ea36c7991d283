/** A phrase as a Standard MIDI File: its notes straight, each with its tab as a lyric. */

import { METERS } from '../chart/build-chart';
import type { Harp } from '../harp/harp';
import { PROGRAMS } from '../midi/midi-programs';
import { velocityBy } from '../phrase/dynamics';
import { onHarp, type Phrase } from '../phrase/phrase';
import { noteText } from '../phrase/print-phrase';
import { TICKS_PER_QUARTER } from '../theory/units';
import { bigEndian, chunk, joinBytes, metaEvent, type TrackEvent, textBytes, trackChunk } from './midi-bytes';
import { quarterTempo } from './midi-timeline';

/** What a phrase's file says beside its notes. */
export interface PhraseFile {
  readonly name: string;
  readonly harp: Harp;
  /** Beats a minute. */
  readonly tempo: number;
}

/** What an unmarked note is struck with; a step of dynamics is 13 of these. */
export const USUAL_VELOCITY = 80;

const META = { name: 0x03, lyric: 0x05, tempo: 0x51, meter: 0x58 } as const;

const LAST_KEY = 127;

/**
 * Writes a phrase as a file of format 0, 480 ticks a quarter (Standard MIDI-File Format Spec. 1.1). Bends are whole
 * keys; slides, shakes and curves stand in the lyric, which is the note's tab. Notes the harp lacks are silent.
 */
export const phraseMidi = (phrase: Phrase, { name, harp, tempo }: PhraseFile): Uint8Array => {
  const meter = METERS[phrase.meter];
  const [beats = 4, unit = 4] = phrase.meter.split('/').map(Number);
  const setUp = (bytes: readonly number[]): TrackEvent => ({ at: 0, rank: 0, bytes });
  const perQuarter = Math.round(60_000_000 / quarterTempo(tempo, meter.beatTicks));
  const clocks = (meter.beatTicks * 24) / TICKS_PER_QUARTER;
  const events: readonly TrackEvent[] = [
    setUp(metaEvent(META.name, textBytes(name))),
    setUp(metaEvent(META.tempo, bigEndian(Math.min(perQuarter, 0xffffff), 3))),
    setUp(metaEvent(META.meter, [beats, Math.log2(unit), clocks, 8])),
    setUp([0xc0, PROGRAMS.harmonica]),
    ...onHarp(phrase, harp).notes.flatMap(({ at, length, sounds, note }): readonly TrackEvent[] => {
      const velocity = USUAL_VELOCITY + velocityBy(note.dynamic, note.accent === true);
      const tab = noteText(note, 'signs') + (note.accent === true ? '>' : '');
      // Two holes may have one pitch; a key is struck once.
      const keys = [...new Set(sounds.map(({ pitch }) => Math.min(LAST_KEY, Math.round(pitch))))];
      return [
        { at, rank: 2, bytes: metaEvent(META.lyric, textBytes(tab)) },
        ...keys.flatMap((key): readonly TrackEvent[] => [
          { at, rank: 3, bytes: [0x90, key, Math.min(LAST_KEY, velocity)] },
          { at: at + length, rank: 1, bytes: [0x80, key, 64] },
        ]),
      ];
    }),
  ];
  const head = [...bigEndian(0, 2), ...bigEndian(1, 2), ...bigEndian(TICKS_PER_QUARTER, 2)];
  return joinBytes([chunk('MThd', head), trackChunk(events, phrase.length)]);
};
