import { asSeconds } from '../core/theory/units';
import type { EarBlock } from './ear-messages';
import type { SoundBlock } from './microphone';

/** Gathers the blocks of a stream to larger ones, while it is asked to. */
export interface BlockRecorder {
  record(on: boolean): void;
  take(block: EarBlock, sampleRate: number): void;
}

/** Length of what is handed on at a time. */
const SECONDS = 1;
const FULL = 32768;

const write = (samples: Float32Array, into: Int16Array, at: number): void => {
  for (let i = 0; i < samples.length; i += 1)
    into[at + i] = Math.max(-FULL, Math.min(FULL - 1, Math.round((samples[i] ?? 0) * FULL)));
};

/** Hands on what it has gathered about once a second; what is left when it is asked to stop goes at once. */
export const createBlockRecorder = (tell: (block: SoundBlock) => void): BlockRecorder => {
  let on = false;
  let blocks: EarBlock[] = [];
  let frames = 0;
  let rate = 1;
  const hand = (): void => {
    const [first] = blocks;
    if (first === undefined) return;
    const heard = new Int16Array(frames);
    const sent = new Int16Array(frames);
    let at = 0;
    for (const block of blocks) {
      write(block.heard, heard, at);
      write(block.sent, sent, at);
      at += block.heard.length;
    }
    blocks = [];
    frames = 0;
    tell({ sampleRate: rate, at: asSeconds(first.at / rate), heard, sent });
  };
  return {
    record: (next) => {
      if (!next) hand();
      on = next;
    },
    take: (block, sampleRate) => {
      if (!on) return;
      rate = sampleRate;
      blocks.push(block);
      frames += block.heard.length;
      if (frames >= SECONDS * sampleRate) hand();
    },
  };
};
