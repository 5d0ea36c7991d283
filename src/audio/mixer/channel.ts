/** One part's way through the mixer, of as few nodes as do it: each costs on the audio thread, silent ones too. */
import { Panner } from 'tone/build/esm/component/channel/Panner.js';
import { BiquadFilter } from 'tone/build/esm/component/filter/BiquadFilter.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { Gain } from 'tone/build/esm/core/context/Gain.js';
import type { ToneAudioNode } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { WaveShaper } from 'tone/build/esm/signal/WaveShaper.js';
import { type ChannelStrip, roundedOff } from './channel-strips';

/** Where a channel leads. */
export interface ChannelEnds {
  readonly band: ToneAudioNode;
  readonly room: ToneAudioNode;
}

/** A part between its sounds and the band's sum. */
export interface Channel {
  readonly input: ToneAudioNode;
  /** Sets fader and pan; they glide there for so many seconds, or jump where that is 0. */
  set(gain: number, pan: number, seconds: number): void;
  dispose(): void;
}

/** Highest amplitude the rounding takes in: wave shapers see no farther than 1. */
const SHAPED = 4;

/** Amplitude ratio of so many dB. */
export const fromDecibels = (decibels: number): number => 10 ** (decibels / 20);

/** Moves a parameter within some seconds; at once where that is 0. */
export const move = (param: Gain['gain'] | Panner['pan'], value: number, seconds: number): void => {
  if (seconds > 0) param.rampTo(value, seconds);
  else param.value = value;
};

/** What a strip does to the sound before it is panned, in its order. */
const shapersOf = (context: BaseContext, { level, equaliser, rounding }: ChannelStrip): ToneAudioNode[] => [
  ...(rounding === null
    ? []
    : [
        new Gain({ context, gain: fromDecibels(level) / SHAPED }),
        new WaveShaper({ context, mapping: (x: number) => roundedOff(x * SHAPED, rounding), length: 8193 }),
      ]),
  // The library's own filter drives each setting by a source that always runs.
  ...(equaliser === null
    ? []
    : [
        new BiquadFilter({
          context,
          type: 'peaking',
          frequency: equaliser.frequency,
          gain: equaliser.gain,
          Q: equaliser.q,
        }),
      ]),
];

/** Builds the channel of a strip. What stands in the middle has no panner until it is moved. */
export const createChannel = (context: BaseContext, strip: ChannelStrip, ends: ChannelEnds): Channel => {
  const fader = new Gain({ context, gain: 1 });
  const shapers = shapersOf(context, strip);
  // What is rounded off is brought to its level before; the rest by its fader.
  const level = strip.rounding === null ? fromDecibels(strip.level) : 1;
  const nodes: ToneAudioNode[] = [...shapers, fader];
  const before = shapers.at(-1);
  const createPanner = (): Panner => {
    const made = new Panner({ context, pan: 0, channelCount: 2 });
    before?.disconnect(fader);
    before?.connect(made);
    made.connect(fader);
    nodes.push(made);
    return made;
  };
  // Sounds that lead straight into it could not be led elsewhere later.
  let pan = before === undefined ? createPanner() : null;
  const [input = fader] = pan === null ? shapers : [pan];
  shapers.forEach((shaper, i) => {
    shaper.connect(shapers[i + 1] ?? fader);
  });
  fader.connect(ends.band);
  if (strip.send !== null) {
    const send = new Gain({ context, gain: fromDecibels(strip.send) });
    fader.chain(send, ends.room);
    nodes.push(send);
  }
  return {
    input,
    set: (gain, place, seconds) => {
      move(fader.gain, gain * level, seconds);
      if (place !== 0) pan ??= createPanner();
      if (pan !== null) move(pan.pan, place, seconds);
    },
    dispose: () => {
      for (const node of nodes) node.dispose();
    },
  };
};
