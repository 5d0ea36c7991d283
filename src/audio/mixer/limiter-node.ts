import { Limiter } from 'tone/build/esm/component/dynamics/Limiter.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { connect } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { WaveShaper } from 'tone/build/esm/signal/WaveShaper.js';
import { limiterDelay } from './limiter';
import limiterUrl from './limiter-worklet.ts?worker&url';
import { outputOf } from './output-of';

/** The last stage before the loudspeaker. */
export interface LimiterStage {
  readonly input: AudioNode;
  /** Seconds it holds the sound back. */
  readonly delay: number;
}

/** Highest sample of the stage without worklets; the room above leaves for peaks between samples. */
const SAFE_PEAK = 0.8;

/** A worklet that has not loaded after so long, in ms, is done without. */
const LOAD_MS = 4000;

const compressed = (context: AudioContext, tone: BaseContext): AudioNode => {
  const input = context.createGain();
  const shaper = new WaveShaper({
    context: tone,
    mapping: (x: number) => SAFE_PEAK * Math.tanh(x / SAFE_PEAK),
    length: 4096,
  });
  const limiter = new Limiter({ context: tone, threshold: -6 });
  connect(input, limiter);
  limiter.connect(shaper);
  connect(shaper, outputOf(context));
  return input;
};

/** Begins to load the limiter's worklet; resolves to whether the context has it. */
export const loadLimiter = async (context: AudioContext): Promise<boolean> => {
  if (!context.audioWorklet) return false;
  const late = new Promise<never>((_, reject) => setTimeout(() => reject(new Error('too late')), LOAD_MS));
  try {
    await Promise.race([context.audioWorklet.addModule(limiterUrl), late]);
    return true;
  } catch {
    return false;
  }
};

/** The worklet's node, or null where it cannot be made. */
const limited = (context: AudioContext): AudioWorkletNode | null => {
  try {
    return new AudioWorkletNode(context, 'limiter', {
      channelCount: 2,
      channelCountMode: 'explicit',
      outputChannelCount: [2],
    });
  } catch {
    return null;
  }
};

/**
 * Connects a limiter to the context's output. Pages that are not served securely have no audio worklets, and a
 * worklet's file may be refused; a compressor with a soft ceiling stands in there, and for a worklet that breaks down.
 * @param hasWorklet what `loadLimiter` came to
 */
export const createLimiterStage = (
  context: AudioContext,
  tone: BaseContext,
  hasWorklet: boolean,
): LimiterStage => {
  const worklet = hasWorklet ? limited(context) : null;
  if (worklet === null) return { input: compressed(context, tone), delay: 0 };
  const input = context.createGain();
  input.connect(worklet).connect(outputOf(context));
  const standIn = (): void => {
    input.disconnect();
    input.connect(compressed(context, tone));
  };
  worklet.addEventListener('processorerror', standIn, { once: true });
  return { input, delay: limiterDelay(context.sampleRate) / context.sampleRate };
};
