import recorderUrl from './recorder-worklet.ts?worker&url';

interface Block {
  readonly from: number;
  readonly samples: Float32Array;
  /** What the scope's clock said: right or too early. */
  readonly clock: number;
}

/** What a context has put out so far: mono, from a frame of its clock on. */
export interface Recording {
  readonly from: number;
  readonly sampleRate: number;
  readonly samples: Float32Array;
  /** Frames the recorder was not called for: above 0, the recording says nothing. */
  readonly skipped: number;
}

export interface Recorder {
  /** Puts the recorder before the context's destination. Everything connected later is recorded. */
  attach(context: AudioContext): Promise<void>;
  recording(): Recording;
  /** Peak of the last moment, for contexts that cannot be recorded. */
  level(): number;
}

/** A recorder for what a context sends to the loudspeaker. */
export const createRecorder = (): Recorder => {
  const blocks: Block[] = [];
  let sampleRate = 0;
  let analyser: AnalyserNode | null = null;
  const meter = (context: AudioContext): AnalyserNode => {
    analyser = new AnalyserNode(context, { fftSize: 16_384 });
    return analyser;
  };
  return {
    attach: async (context) => {
      sampleRate = context.sampleRate;
      const { destination } = context;
      const tap = context.createGain();
      Object.defineProperty(context, 'destination', { value: tap });
      tap.connect(meter(context));
      if (!context.audioWorklet) {
        tap.connect(destination);
        return;
      }
      await context.audioWorklet.addModule(recorderUrl);
      const node = new AudioWorkletNode(context, 'recorder', { outputChannelCount: [2] });
      node.port.onmessage = ({ data }: MessageEvent<Block>) => blocks.push(data);
      tap.connect(node).connect(destination);
    },
    level: () => {
      const samples = new Float32Array(analyser?.fftSize ?? 0);
      analyser?.getFloatTimeDomainData(samples);
      return samples.reduce((peak, value) => Math.max(peak, Math.abs(value)), 0);
    },
    recording: () => {
      const last = blocks.at(-1);
      const samples = new Float32Array(last ? last.from + last.samples.length : 0);
      for (const block of blocks) samples.set(block.samples, block.from);
      const ahead = (some: readonly Block[]) => Math.max(0, ...some.map(({ from, clock }) => clock - from));
      const from = ahead(blocks.slice(0, 8));
      return { from, sampleRate, samples, skipped: ahead(blocks) - from };
    },
  };
};
