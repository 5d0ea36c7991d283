/// <reference lib="webworker" />
/** Computes sounds away from the page, one request at a time. */
import type { SoundAnswer, SoundRequest } from './bank-messages';
import { computeSound } from './compute-sound';
import { VOICES } from './voices/voices';

const answer = ({ key, sampleRate }: SoundRequest): SoundAnswer => {
  try {
    const { samples, loop, release } = computeSound(VOICES, key, sampleRate);
    return { kind: 'sound', key, samples: new Float32Array(samples), loop, release };
  } catch (error) {
    return { kind: 'failed', key, reason: String(error) };
  }
};

self.onmessage = (message: MessageEvent<SoundRequest>) => {
  const reply = answer(message.data);
  self.postMessage(reply, { transfer: reply.kind === 'sound' ? [reply.samples.buffer] : [] });
};
