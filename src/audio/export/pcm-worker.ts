/// <reference lib="webworker" />
/** Turns samples into the bytes of a WAV file away from the page. */
import { createPcmAnswers, type PcmOrder } from './answer-pcm';

const answer = createPcmAnswers();

self.onmessage = ({ data }: MessageEvent<PcmOrder>) => {
  const answered = answer(data);
  self.postMessage(answered, { transfer: answered.kind === 'frames' ? [answered.bytes.buffer] : [] });
};
