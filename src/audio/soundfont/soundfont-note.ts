/** Plays single notes of a SoundFont's presets on the library's synthesizer. */
import { type BasicPreset, type BasicSoundBank, SpessaSynthProcessor } from 'spessasynth_core';
import { elementAt } from '../../core/theory/element-at';
import { hzOf } from '../../core/theory/temperament';
import type { VoiceNote } from '../synthesis/voice';
import { BEGINNING_SECONDS, type FontNote, goesOn, HELD_SECONDS, RELEASED_AT } from './font-sound';

/** Plays single notes of a SoundFont into samples. */
export interface NotePlayer {
  /** Plays a tone, tuned to the note's hertz; only its beginning where the note says how long it is held, if it goes on. */
  tone(preset: BasicPreset, note: VoiceNote): FontNote;
  /** Strikes a key of a drum set. */
  hit(preset: BasicPreset, note: VoiceNote): FontNote;
}

/** Frames the library renders at a time, its own default. */
const BLOCK = 128;
/** Seconds listened to after a note was let go. */
const TAIL_SECONDS = 2;
/** Channels as sent, 0–15: General MIDI 1 has its drums on channel 10. */
const TONES = 0;
const DRUMS = 9;

const centsOf = ({ hz, midi }: VoiceNote): number => 1200 * Math.log2(hz / hzOf(midi));

/** Creates a player of single notes of a file's presets at a sample rate. */
export const createNotePlayer = (bank: BasicSoundBank, sampleRate: number): NotePlayer => {
  const synthesizer = new SpessaSynthProcessor(sampleRate, {
    effectsEnabled: false,
    eventsEnabled: false,
    maxBufferSize: BLOCK,
  });
  // Volume and the other controllers of the channels rest at nothing until there is a bank.
  synthesizer.soundBankManager.addSoundBank(bank, 'own');

  /** @param last the block before which the note is let go. */
  const run = (channel: number, note: VoiceNote, seconds: number, last: number | null): Float32Array => {
    const blocks = Math.ceil((seconds * sampleRate) / BLOCK);
    const left = new Float32Array(blocks * BLOCK);
    const right = new Float32Array(blocks * BLOCK);
    synthesizer.noteOn(channel, note.midi, Math.round(note.velocity));
    let block = 0;
    // The synthesizer counts its voices when it renders: there are none before the first block.
    while (block === 0 || (block < blocks && synthesizer.voiceCount > 0)) {
      if (block === last) synthesizer.noteOff(channel, note.midi);
      synthesizer.process(left, right, block * BLOCK, BLOCK);
      block += 1;
    }
    synthesizer.stopAllChannels(true);
    const both = left.subarray(0, block * BLOCK);
    for (let i = 0; i < both.length; i += 1) both[i] = (both[i] ?? 0) + (right[i] ?? 0);
    return both;
  };

  const prepare = (channel: number, preset: BasicPreset, cents: number): void => {
    const used = elementAt(synthesizer.midiChannels, channel);
    used.preset = preset;
    used.setSystemParameter('fineTune', cents);
  };

  return {
    tone: (preset, note) => {
      prepare(TONES, preset, centsOf(note));
      const last = Math.round((RELEASED_AT * sampleRate) / BLOCK);
      const samples = run(TONES, note, RELEASED_AT + TAIL_SECONDS, last);
      const released = { samples, at: last * BLOCK };
      const beginning = note.held === undefined ? null : run(TONES, note, BEGINNING_SECONDS, null);
      if (beginning !== null && goesOn(beginning, sampleRate))
        return { held: beginning, released, begun: true };
      return { held: run(TONES, note, HELD_SECONDS, null), released, begun: false };
    },
    hit: (preset, note) => {
      prepare(DRUMS, preset, 0);
      return { held: run(DRUMS, note, HELD_SECONDS, null), released: null, begun: false };
    },
  };
};
