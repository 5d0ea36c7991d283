/// <reference lib="webworker" />
/** Listens away from the page. */
import { createBlockRecorder } from './block-recorder';
import type { EarAnswer, EarBlock, EarRequest } from './ear-messages';
import { createEarServer, type EarServer } from './ear-server';
import { hearThrough } from './hear-through';
import type { EarChoice } from './microphone';
import { createUnbrokenBlocks } from './unbroken-blocks';

let server: EarServer | null = null;
let choice: EarChoice | null = null;

const tell = (answer: EarAnswer, transfer: Transferable[] = []): void => self.postMessage(answer, transfer);

const recorder = createBlockRecorder((block) =>
  tell({ kind: 'sound', block }, [block.heard.buffer, block.sent.buffer]),
);

self.onmessage = ({ data }: MessageEvent<EarRequest>) => {
  if (data.kind === 'choice') {
    choice = data.choice;
    server?.choose(choice);
    return;
  }
  if (data.kind === 'measure') {
    server?.measure(data.seconds, (roundTrip) => tell({ kind: 'measured', roundTrip }));
    return;
  }
  if (data.kind === 'record') {
    recorder.record(data.on);
    return;
  }
  if (data.kind === 'teach') {
    server?.teach(data.sound, data.from, data.to);
    return;
  }
  if (data.kind === 'recording') {
    hearThrough(data, (share, notes) => tell({ kind: 'recording', share, notes }));
    return;
  }
  const listening = createEarServer(
    data.sampleRate,
    (report) => tell({ kind: 'heard', report }),
    (learnt) => tell({ kind: 'learnt', learnt }),
  );
  server = listening;
  if (choice !== null) server.choose(choice);
  const take = createUnbrokenBlocks((block) => {
    listening.take(block);
    recorder.take(block, data.sampleRate);
  });
  data.port.onmessage = (block: MessageEvent<EarBlock>) => take(block.data);
};
