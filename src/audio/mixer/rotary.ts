import { Panner } from 'tone/build/esm/component/channel/Panner.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { Delay } from 'tone/build/esm/core/context/Delay.js';
import { Gain } from 'tone/build/esm/core/context/Gain.js';
import { connect, type ToneAudioNode } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { ROTOR, rotorWave } from './rotor';

/** The turning speaker of an organ's cabinet. */
export interface Rotary {
  readonly input: ToneAudioNode;
  /** Turns as if it had begun to at a time of the context, so that music sounds the same wherever it is entered or cut. */
  turnFrom(origin: number): void;
  dispose(): void;
}

/** An oscillator that turns as if it had begun to at `origin`, in seconds of the context. */
const turningFrom = (context: BaseContext, origin: number): OscillatorNode => {
  // The library's own clock stands still while a file is rendered.
  const now = context.rawContext.currentTime;
  const { cosine, sine } = rotorWave(now - origin);
  const turning = context.createOscillator();
  turning.setPeriodicWave(
    context.rawContext.createPeriodicWave([0, cosine], [0, sine], { disableNormalization: true }),
  );
  turning.frequency.value = ROTOR.turns;
  turning.start(now);
  return turning;
};

/**
 * A light rotary effect: while one side comes nearer (higher and louder) the other goes away. One oscillator turns
 * everything; the library's own chorus and tremolo would cost as much as the rest of the mixer together.
 */
export const createRotary = (context: BaseContext, output: ToneAudioNode, origin: number): Rotary => {
  // Two sides that overlap in the middle: half of each keeps the level.
  const input = new Gain({ context, gain: 0.5 });
  const nodes: ToneAudioNode[] = [input];
  // Browsers let an oscillator stand still while nothing but parameters of silent nodes hears it.
  const awake = new Gain({ context, gain: 0 }).connect(output);
  nodes.push(awake);
  const turned: ToneAudioNode[] = [awake];
  for (const side of [-1, 1]) {
    const delay = new Delay({ context, delayTime: ROTOR.path, maxDelay: 0.02 });
    const swell = new Gain({ context, gain: 1 });
    const pan = new Panner({ context, pan: side * ROTOR.side });
    const nearer = new Gain({ context, gain: -side * ROTOR.change });
    const louder = new Gain({ context, gain: side * ROTOR.swell });
    input.chain(delay, swell, pan, output);
    turned.push(nearer, louder);
    nearer.connect(delay.delayTime);
    louder.connect(swell.gain);
    nodes.push(delay, swell, pan, nearer, louder);
  }
  let turning: OscillatorNode | null = null;
  const rest = (): void => {
    turning?.stop();
    turning?.disconnect();
  };
  const turnFrom = (from: number): void => {
    rest();
    turning = turningFrom(context, from);
    for (const node of turned) connect(turning, node);
  };
  turnFrom(origin);
  return {
    input,
    turnFrom,
    dispose: () => {
      rest();
      for (const node of nodes) node.dispose();
    },
  };
};
