import { Panner } from 'tone/build/esm/component/channel/Panner.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { Delay } from 'tone/build/esm/core/context/Delay.js';
import { Gain } from 'tone/build/esm/core/context/Gain.js';
import { connect, type ToneAudioNode } from 'tone/build/esm/core/context/ToneAudioNode.js';

/** The turning speaker of an organ's cabinet. */
export interface Rotary {
  readonly input: ToneAudioNode;
  dispose(): void;
}

/** The slow speed of the trade's cabinets, in turns a second (common practice, no source). */
const TURNS = 0.8;
/** Path of the sound, and how far it grows and shrinks on a turn, in seconds: 3 cents of vibrato. */
const PATH = 0.003;
const PATH_CHANGE = 0.00035;
/** How much louder and softer each side gets, of 1. */
const SWELL = 0.2;
const SIDE = 0.6;

/**
 * A light rotary effect: while one side comes nearer (higher and louder) the other goes away. One oscillator turns
 * everything; the library's own chorus and tremolo would cost as much as the rest of the mixer together.
 */
export const createRotary = (context: BaseContext, output: ToneAudioNode): Rotary => {
  // Two sides that overlap in the middle: half of each keeps the level.
  const input = new Gain({ context, gain: 0.5 });
  const turning = context.createOscillator();
  turning.frequency.value = TURNS;
  const nodes: ToneAudioNode[] = [input];
  for (const side of [-1, 1]) {
    const delay = new Delay({ context, delayTime: PATH, maxDelay: 0.02 });
    const swell = new Gain({ context, gain: 1 });
    const pan = new Panner({ context, pan: side * SIDE });
    const nearer = new Gain({ context, gain: -side * PATH_CHANGE });
    const louder = new Gain({ context, gain: side * SWELL });
    input.chain(delay, swell, pan, output);
    connect(turning, nearer);
    connect(turning, louder);
    nearer.connect(delay.delayTime);
    louder.connect(swell.gain);
    nodes.push(delay, swell, pan, nearer, louder);
  }
  turning.start();
  return {
    input,
    dispose: () => {
      turning.stop();
      turning.disconnect();
      for (const node of nodes) node.dispose();
    },
  };
};
