/// <reference lib="webworker" />
/** Finishes a file away from the page. */
import { createFinishAnswers } from './answer-finish';
import type { FinishOrder } from './finish-messages';

const answer = createFinishAnswers();

self.onmessage = ({ data }: MessageEvent<FinishOrder>) => {
  const finished = answer(data);
  if (finished === undefined) return;
  self.postMessage(finished, { transfer: finished ? [finished.left.buffer, finished.right.buffer] : [] });
};
