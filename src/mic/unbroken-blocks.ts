import type { EarBlock } from './ear-messages';

/**
 * A clock that is ahead by less is misread: the two threads of the sound may read it half a block early, or the same
 * frame several times in a row. Samples.
 */
const LOST = 256;

/**
 * Hands blocks on in one unbroken row, each stamped with the frame that follows the one before. Chromium leaves out
 * 1024 samples now and then, most often while the microphone is connected: whoever counts samples from there would take
 * every later note for 21 to 23 ms earlier than it is, in a calibration and not in the next song, or the other way
 * round. Silence stands for them.
 */
export const createUnbrokenBlocks = (take: (block: EarBlock) => void): ((block: EarBlock) => void) => {
  let next: number | null = null;
  return ({ at, heard, sent }) => {
    next ??= at;
    if (at - next >= LOST) {
      take({ at: next, heard: new Float32Array(at - next), sent: new Float32Array(at - next) });
      next = at;
    }
    take({ at: next, heard, sent });
    next += heard.length;
  };
};
