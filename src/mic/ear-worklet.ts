/** On the audio thread: hands blocks of the microphone and of what the page plays on to the ear's worker. */
import type { EarBlock } from './ear-messages';

declare const currentFrame: number;
declare global {
  var renderQuantumSize: number | undefined;
}
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare const registerProcessor: (name: string, processor: new () => AudioWorkletProcessor) => void;

/** Samples in a block: a hop of the ear at 48 kHz. */
const BLOCK = 256;

/** Samples made at a time: a block of the ear is a multiple of it. Browsers where it is always 128 do not name it. */
const QUANTUM = globalThis.renderQuantumSize ?? 128;

type Channels = readonly Float32Array[];

/** Writes the mean of the channels. */
const mix = (channels: Channels, into: Float32Array, at: number): void => {
  for (const channel of channels) {
    for (let i = 0; i < channel.length; i += 1) {
      into[at + i] = (into[at + i] ?? 0) + (channel[i] ?? 0) / channels.length;
    }
  }
};

class EarProcessor extends AudioWorkletProcessor {
  private worker: MessagePort | null = null;
  private ended = false;
  private heard = new Float32Array(BLOCK);
  private sent = new Float32Array(BLOCK);
  private filled = 0;
  private at = 0;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<MessagePort | null>) => {
      // Null when nobody listens any more: then the processor can go.
      this.worker = data;
      this.ended = data === null;
    };
  }

  process([heard = [], sent = []]: readonly Channels[]): boolean {
    if (this.filled === 0) this.at = currentFrame;
    const size = heard[0]?.length ?? sent[0]?.length ?? QUANTUM;
    mix(heard, this.heard, this.filled);
    mix(sent, this.sent, this.filled);
    this.filled += size;
    if (this.filled >= BLOCK) this.hand();
    return !this.ended;
  }

  private hand(): void {
    const block: EarBlock = { at: this.at, heard: this.heard, sent: this.sent };
    this.worker?.postMessage(block, [block.heard.buffer, block.sent.buffer]);
    this.heard = new Float32Array(BLOCK);
    this.sent = new Float32Array(BLOCK);
    this.filled = 0;
  }
}

registerProcessor('ear', EarProcessor);
