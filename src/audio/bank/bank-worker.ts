/// <reference lib="webworker" />
/** Computes sounds away from the page, one request at a time. */
import { answerRequest } from './answer-request';
import type { SoundRequest } from './bank-messages';

self.onmessage = (message: MessageEvent<SoundRequest>) => {
  const reply = answerRequest(message.data);
  self.postMessage(reply, { transfer: reply.kind === 'sound' ? [reply.samples.buffer] : [] });
};
