import { Limiter } from 'tone/build/esm/component/dynamics/Limiter.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { connect } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { WaveShaper } from 'tone/build/esm/signal/WaveShaper.js';
import { limiterDelay } from './limiter';
import limiterUrl from './limiter-worklet.ts?worker&url';

/** The last stage before the loudspeaker. */
export interface LimiterStage {
  readonly input: AudioNode;
  /** Seconds it holds the sound back. */
  readonly delay: number;
}

/** Highest sample of the stage without worklets; the room above leaves for peaks between samples. */
const SAFE_PEAK = 0.8;

const withoutWorklet = (context: AudioContext, tone: BaseContext): LimiterStage => {
  const input = context.createGain();
  const shaper = new WaveShaper({
    context: tone,
    mapping: (x: number) => SAFE_PEAK * Math.tanh(x / SAFE_PEAK),
    length: 4096,
  });
  const limiter = new Limiter({ context: tone, threshold: -6 });
  connect(input, limiter);
  limiter.connect(shaper);
  connect(shaper, context.destination);
  return { input, delay: 0 };
};

/**
 * Connects a limiter to the context's destination. Pages that are not served securely have no audio worklets; a
 * compressor with a soft ceiling stands in there.
 */
export const createLimiterStage = async (context: AudioContext, tone: BaseContext): Promise<LimiterStage> => {
  if (!context.audioWorklet) return withoutWorklet(context, tone);
  await context.audioWorklet.addModule(limiterUrl);
  const input = new AudioWorkletNode(context, 'limiter', {
    channelCount: 2,
    channelCountMode: 'explicit',
    outputChannelCount: [2],
  });
  input.connect(context.destination);
  return { input, delay: limiterDelay(context.sampleRate) / context.sampleRate };
};
