/// <reference lib="webworker" />
/** Listens away from the page. */
import type { EarAnswer, EarBlock, EarRequest } from './ear-messages';
import { createEarServer, type EarServer } from './ear-server';
import type { EarChoice } from './microphone';

let server: EarServer | null = null;
let choice: EarChoice | null = null;

const tell = (answer: EarAnswer): void => self.postMessage(answer);

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
  const listening = createEarServer(data.sampleRate, (report) => tell({ kind: 'heard', report }));
  server = listening;
  if (choice !== null) server.choose(choice);
  data.port.onmessage = (block: MessageEvent<EarBlock>) => listening.take(block.data);
};
