/** The limiter on the audio thread. */
import { createLimiter, type Limiter } from './limiter';

declare const sampleRate: number;
declare abstract class AudioWorkletProcessor {}
declare const registerProcessor: (name: string, processor: new () => AudioWorkletProcessor) => void;

/** Highest level between samples: 0.2 dB under the promised −1 dBTP, for what the estimate may miss. */
const CEILING = -1.2;

class LimiterProcessor extends AudioWorkletProcessor {
  private readonly limiter: Limiter = createLimiter({ sampleRate, ceiling: CEILING });

  process([input = []]: readonly Float32Array[][], [output = []]: readonly Float32Array[][]): boolean {
    const [left, right] = output;
    if (left === undefined || right === undefined) return true;
    const [first, second = first] = input;
    left.fill(0);
    right.fill(0);
    if (first !== undefined) left.set(first);
    if (second !== undefined) right.set(second);
    this.limiter.process(left, right);
    return true;
  }
}

registerProcessor('limiter', LimiterProcessor);
