/**
 * Our own band, mixed to mono in Node: the same scores, voices and mixer levels as on the page, without its room,
 * equalisers, glides and limiter, which a browser has to render.
 */

import { createSoundMaker } from '../../../src/audio/bank/compute-sound';
import { gainInLayer, nameOfKey, soundKeyFor } from '../../../src/audio/bank/sound-key';
import { CHANNEL_STRIPS, voiceGain } from '../../../src/audio/mixer/channel-strips';
import type { VoiceSound } from '../../../src/audio/synthesis/voice';
import { isHeld, notesBetween, type ScheduledNote } from '../../../src/audio/transport/scheduled-note';
import { placeSection } from '../../../src/audio/transport/timeline';
import { VOICES } from '../../../src/audio/voices/voices';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { FEEL_IDS } from '../../../src/core/feels/feels';
import type { ChordVoice } from '../../../src/core/score/voices';
import { DEFAULT_MIX } from '../../../src/core/settings/defaults';
import type { BandSound } from '../../../src/core/song/band-sound';
import { createRandom, pick, seedFrom } from '../../../src/core/theory/random';
import { asCents, asHz } from '../../../src/core/theory/units';
import { testChart, testProgram } from '../test-charts';
import { amplitude } from './chance';

interface Mixed {
  readonly out: Float32Array;
  readonly sampleRate: number;
}

/** Adds a note as the player plays it: struck sounds ring out, held ones go round their loop and fade when let go. */
const addNote = ({ out, sampleRate }: Mixed, note: ScheduledNote, sound: VoiceSound, gain: number): void => {
  const { samples, loop, release } = sound;
  const from = Math.round(note.at * sampleRate);
  const held = isHeld(note.event.part) ? Math.round((note.until - note.at) * sampleRate) : Infinity;
  const fade = Math.exp(-5 / Math.max(1, release * sampleRate));
  let level = gain;
  for (let i = 0, at = 0; from + i < out.length; i += 1, at += 1) {
    if (loop !== null && at >= loop.to) at = loop.from;
    if (at >= samples.length || level < gain * 1e-3) return;
    if (i > held) level *= fade;
    if (from + i >= 0) out[from + i] += level * samples[at];
  }
};

/** So many seconds of a song of ours in a key (a pitch class), its form, feel and instruments by chance. */
export const renderBand = ({
  seed,
  key,
  seconds,
  sampleRate,
  reference,
}: {
  readonly seed: number;
  readonly key: number;
  readonly seconds: number;
  readonly sampleRate: number;
  readonly reference: number;
}): Float32Array => {
  const random = createRandom(seedFrom(seed, 'band'));
  const feel = pick(random, FEEL_IDS);
  const chords = pick<ChordVoice>(random, ['piano', 'electric-piano', 'organ', 'guitar']);
  const style = { seed, chords, leaveRoom: random() < 0.5 };
  const program = testProgram(feel, { style });
  const chart = testChart(pick(random, FORM_IDS), key, program.chart.meter.name);
  const section = sectionAt({ ...program, chart }, 0);
  if (section === null) throw new RangeError('The program has no chorus');
  const sound: BandSound = {
    mix: DEFAULT_MIX,
    temperament: { reference: asHz(reference), offsets: Array.from({ length: 12 }, () => asCents(0)) },
    bass: program.style.bass,
    chords,
    kit: program.style.kit,
  };
  const mixed = { out: new Float32Array(Math.round(seconds * sampleRate)), sampleRate };
  const bank = new Map<string, VoiceSound>();
  for (const note of notesBetween(placeSection(section, 0), 0, seconds, {})) {
    const soundKey = soundKeyFor({ ...note.event, stroke: note.stroke }, sound);
    const name = nameOfKey(soundKey);
    const made = bank.get(name) ?? createSoundMaker(VOICES)(soundKey, sampleRate);
    bank.set(name, made);
    const level = amplitude(CHANNEL_STRIPS[note.event.part].level) * voiceGain(soundKey.voice);
    addNote(mixed, note, made, level * gainInLayer(note.event.velocity, soundKey.layer, soundKey.voice));
  }
  return mixed.out;
};
