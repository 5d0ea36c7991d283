import recorderUrl from './recorder-worklet.ts?worker&url';

interface Block {
  readonly from: number;
  readonly samples: Float32Array;
}

/** What a context has put out so far: mono, from a frame of its clock on. */
export interface Recording {
  readonly from: number;
  readonly sampleRate: number;
  readonly samples: Float32Array;
}

export interface Recorder {
  /** Puts the recorder before the context's destination. Everything connected later is recorded. */
  attach(context: AudioContext): Promise<void>;
  recording(): Recording;
}

/** A recorder for what a context sends to the loudspeaker. */
export const createRecorder = (): Recorder => {
  const blocks: Block[] = [];
  let sampleRate = 0;
  return {
    attach: async (context) => {
      sampleRate = context.sampleRate;
      const tap = context.createGain();
      tap.connect(context.destination);
      Object.defineProperty(context, 'destination', { value: tap });
      await context.audioWorklet.addModule(recorderUrl);
      const node = new AudioWorkletNode(context, 'recorder', { numberOfOutputs: 0 });
      node.port.onmessage = ({ data }: MessageEvent<Block>) => blocks.push(data);
      tap.connect(node);
    },
    recording: () => {
      const from = blocks[0]?.from ?? 0;
      const last = blocks.at(-1);
      const samples = new Float32Array(last ? last.from + last.samples.length - from : 0);
      for (const block of blocks) samples.set(block.samples, block.from - from);
      return { from, sampleRate, samples };
    },
  };
};
