/// <reference lib="webworker" />
/** Finishes a file away from the page. */
import { createFinishAnswers } from './answer-finish';
import type { FinishOrder } from './finish-messages';

const answer = createFinishAnswers();

self.onmessage = ({ data }: MessageEvent<FinishOrder>) => {
  const finished = answer(data);
  if (finished === null) return;
  self.postMessage(finished, { transfer: [finished.left.buffer, finished.right.buffer] });
};
