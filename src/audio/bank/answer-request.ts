import { VOICES } from '../voices/voices';
import type { SoundAnswer, SoundRequest } from './bank-messages';
import { createSoundMaker } from './compute-sound';

const makeSound = createSoundMaker(VOICES);

/** Computes what a bank asked for; never throws. It takes up to a tenth of a second: run it away from the page if possible. */
export const answerRequest = ({ key, sampleRate, held }: SoundRequest): SoundAnswer => {
  try {
    const { samples, loop, release } = makeSound(key, sampleRate, held);
    return { kind: 'sound', key, samples: new Float32Array(samples), loop, release };
  } catch (error) {
    return { kind: 'failed', key, reason: String(error) };
  }
};
