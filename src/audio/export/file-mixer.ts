/** Mixes the notes of a file in samples, stretch by stretch, as the mixer of the page does with nodes. */

import type { PartId } from '../../core/score/score';
import type { Mix } from '../../core/settings/mix';
import { cutEnvelope, endsBy, makesWay } from '../band/note-envelope';
import { addNote, beginNote, cutNote, type MixNote, type MixSound, type Ringing } from './note-samples';
import { PartMix } from './part-mix';
import type { MixSums } from './side-sums';

export interface FileMixerOptions {
  readonly sampleRate: number;
  readonly mix: Mix;
  /** Gain of the whole band. */
  readonly gain: number;
}

/** Mixes notes in their order. */
export interface FileMixer {
  /** Takes a sound, to be named by its number. */
  know(id: number, sound: MixSound): void;
  forget(id: number): void;
  /** Notes to come, none before what is mixed already, in the order they begin. A note whose sound is not known is left out. */
  add(notes: readonly MixNote[]): void;
  /** The next frames; what is sent is good until those after them are asked for. */
  mix(frames: number): MixSums;
  /** Frames until everything that was added has rung out. */
  framesLeft(): number;
}

/** Few enough that what is added up stays near at hand. */
const BLOCK = 4096;

/** Starts a file. */
export const createFileMixer = (options: FileMixerOptions): FileMixer => new SampleMixer(options);

class SampleMixer implements FileMixer {
  private readonly options: FileMixerOptions;
  private readonly sounds = new Map<number, MixSound>();
  private readonly parts = new Map<PartId, PartMix>();
  private readonly scratch = new Float32Array(BLOCK);
  /** Stays here, unlike the sides, which are handed on. */
  private send = new Float32Array(0);
  private waiting: Ringing[] = [];
  private ringing: Ringing[] = [];
  private frame = 0;

  constructor(options: FileMixerOptions) {
    this.options = options;
  }

  know(id: number, sound: MixSound): void {
    this.sounds.set(id, sound);
  }

  forget(id: number): void {
    this.sounds.delete(id);
  }

  add(notes: readonly MixNote[]): void {
    for (const note of notes) {
      const sound = this.sounds.get(note.sound);
      if (sound !== undefined) this.waiting.push(beginNote(note, sound, this.options.sampleRate));
    }
  }

  mix(frames: number): MixSums {
    if (this.send.length !== frames) this.send = new Float32Array(frames);
    else this.send.fill(0);
    const { send } = this;
    const sums: MixSums = { left: new Float32Array(frames), right: new Float32Array(frames), send };
    for (let at = 0; at < frames; at += BLOCK) this.mixBlock(sums, at, Math.min(BLOCK, frames - at));
    return sums;
  }

  framesLeft(): number {
    const ends = [...this.waiting, ...this.ringing].map(({ end }) => end - this.frame);
    return ends.reduce((latest, end) => Math.max(latest, end), 0);
  }

  private mixBlock(sums: MixSums, at: number, count: number): void {
    const { frame, scratch } = this;
    const { sampleRate } = this.options;
    this.begin(frame + count);
    for (const each of this.ringing) {
      const { part, voice, pitch } = each.note;
      const place = this.partOf(part).place(voice, pitch);
      addNote(place.subarray(0, count), each, frame, { scratch, sampleRate });
    }
    for (const part of this.parts.values()) part.addTo(sums, at, count, frame);
    this.frame += count;
    this.ringing = this.ringing.filter(({ end }) => end > this.frame);
  }

  /** Begins what starts before a frame, each note ending what it ends. */
  private begin(before: number): void {
    const { sampleRate } = this.options;
    const due = this.waiting.findIndex(({ start }) => start >= before);
    const starting = this.waiting.splice(0, due === -1 ? this.waiting.length : due);
    for (const next of starting) {
      const { at } = next.note.envelope;
      for (const each of this.ringing) {
        const { note, cut } = each;
        const envelope = cut === null ? note.envelope : cutEnvelope(note.envelope, cut);
        if (makesWay({ ...note, envelope }, next.note, at) && !endsBy(envelope, at))
          cutNote(each, at, sampleRate);
      }
      this.ringing.push(next);
    }
  }

  private partOf(part: PartId): PartMix {
    const known = this.parts.get(part);
    if (known !== undefined) return known;
    const made = new PartMix({ part, ...this.options, block: BLOCK });
    this.parts.set(part, made);
    return made;
  }
}
