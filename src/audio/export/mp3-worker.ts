/// <reference lib="webworker" />
/**
 * Encodes MP3 away from the page. The encoder is WebAssembly, which the page's policy forbids: the file of this worker
 * is served under one of its own (`.dev/serve.mjs`).
 */
import { createEncoder } from 'wasm-media-encoders/esnext';
import encoderAddress from 'wasm-media-encoders/wasm/mp3?url';
import { createMp3Answers } from './answer-mp3';
import type { Mp3Order } from './mp3-messages';

const answer = createMp3Answers(() => createEncoder('audio/mpeg', encoderAddress));

self.onmessage = async ({ data }: MessageEvent<Mp3Order>) => {
  const answered = await answer(data);
  self.postMessage(answered, { transfer: answered.kind === 'frames' ? [answered.bytes.buffer] : [] });
};
