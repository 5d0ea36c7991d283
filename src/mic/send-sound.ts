import { asSeconds, type Seconds } from '../core/theory/units';

/** A short tone to play along with: Hz, seconds, amplitude. */
const CLICK = { hz: 1200, seconds: 0.04, amplitude: 0.2 } as const;

/** A click. @param sampleRate samples a second. */
export const clickSound = (sampleRate: number): Float32Array =>
  Float32Array.from({ length: Math.round(CLICK.seconds * sampleRate) }, (_, i) => {
    const time = i / sampleRate;
    return CLICK.amplitude * Math.exp((-5 * time) / CLICK.seconds) * Math.sin(2 * Math.PI * CLICK.hz * time);
  });

/** Sends a sound out after each of these delays, in seconds; returns when they leave, in seconds of the audio clock. */
export const sendSound = (
  output: AudioNode,
  samples: Float32Array,
  delays: readonly number[],
): readonly Seconds[] => {
  const { context } = output;
  const buffer = context.createBuffer(1, samples.length, context.sampleRate);
  buffer.getChannelData(0).set(samples);
  const now = context.currentTime;
  return delays.map((delay) => {
    const source = context.createBufferSource();
    source.buffer = buffer;
    source.connect(output);
    source.start(now + delay);
    return asSeconds(now + delay);
  });
};
