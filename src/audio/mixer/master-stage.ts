import { Limiter } from 'tone/build/esm/component/dynamics/Limiter.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { connect } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { WaveShaper } from 'tone/build/esm/signal/WaveShaper.js';
import { limiterDelay } from './limiter';
import workletUrl from './master-worklet.ts?worker&url';
import { outputOf } from './output-of';
import { roomAt } from './room-at';

/** The last stage before the loudspeaker: the room, and a limiter for all. */
export interface MasterStage {
  /** Takes the band. */
  readonly input: AudioNode;
  /** Takes what is sent to the room, in mono. */
  readonly send: AudioNode;
  /** How much of the room is heard, 0–1. */
  roomGate(): AudioParam;
  /** Seconds it holds the sound back. */
  readonly delay: number;
}

/** Highest sample of the stage without worklets; the room above leaves for peaks between samples. */
const SAFE_PEAK = 0.8;

/** A worklet that has not loaded after so long, in ms, is done without. */
const LOAD_MS = 4000;

/** Begins to load the stage's worklet; resolves to whether the context has it. */
export const loadMaster = async (context: BaseAudioContext): Promise<boolean> => {
  if (!context.audioWorklet) return false;
  const late = new Promise<never>((_, reject) => setTimeout(() => reject(new Error('too late')), LOAD_MS));
  try {
    await Promise.race([context.audioWorklet.addModule(workletUrl), late]);
    return true;
  } catch {
    return false;
  }
};

/** The worklet's node, or null where it cannot be made. */
const workletNode = (context: BaseAudioContext): AudioWorkletNode | null => {
  try {
    return new AudioWorkletNode(context, 'master', {
      numberOfInputs: 2,
      channelCount: 2,
      channelCountMode: 'clamped-max',
      outputChannelCount: [2],
      processorOptions: roomAt(context.sampleRate).atHalfRate,
    });
  } catch {
    return null;
  }
};

const compressed = (context: BaseAudioContext, tone: BaseContext): AudioNode => {
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

/** The browser's own convolver; `normalize` must be off before it gets its buffer, or it is scaled by −16 dB. */
const convolved = (context: BaseAudioContext): ConvolverNode => {
  const { left, right } = roomAt(context.sampleRate).heard;
  const buffer = context.createBuffer(2, left.length, context.sampleRate);
  buffer.getChannelData(0).set(left);
  buffer.getChannelData(1).set(right);
  const convolver = context.createConvolver();
  convolver.normalize = false;
  convolver.buffer = buffer;
  return convolver;
};

class WebMaster implements MasterStage {
  readonly input: GainNode;
  readonly send: GainNode;
  readonly delay: number;
  private readonly context: BaseAudioContext;
  private readonly tone: BaseContext;
  private gate: AudioParam;

  constructor(context: BaseAudioContext, tone: BaseContext, hasWorklet: boolean) {
    this.context = context;
    this.tone = tone;
    this.input = context.createGain();
    this.send = context.createGain();
    this.send.channelCount = 1;
    this.send.channelCountMode = 'explicit';
    const worklet = hasWorklet ? workletNode(context) : null;
    const gate = worklet?.parameters.get('room');
    this.delay = gate === undefined ? 0 : limiterDelay(context.sampleRate) / context.sampleRate;
    if (worklet === null || gate === undefined) {
      this.gate = this.standIn();
      return;
    }
    this.gate = gate;
    this.input.connect(worklet, 0, 0);
    this.send.connect(worklet, 0, 1);
    worklet.connect(outputOf(context));
    worklet.addEventListener('processorerror', () => this.breakDown(), { once: true });
  }

  roomGate(): AudioParam {
    return this.gate;
  }

  private breakDown(): void {
    this.input.disconnect();
    this.send.disconnect();
    this.gate = this.standIn();
  }

  /** Nodes of the browser; how much of the room is heard. */
  private standIn(): AudioParam {
    const { context } = this;
    const limiter = compressed(context, this.tone);
    const gate = context.createGain();
    this.input.connect(limiter);
    this.send.connect(convolved(context)).connect(gate).connect(limiter);
    return gate.gain;
  }
}

/**
 * Connects room and limiter to the context's output. Pages that are not served securely have no audio worklets, and a
 * worklet's file may be refused; the browser's convolver and a compressor with a soft ceiling stand in there, and for a
 * worklet that breaks down.
 * @param hasWorklet what `loadMaster` came to
 */
export const createMasterStage = (
  context: BaseAudioContext,
  tone: BaseContext,
  hasWorklet: boolean,
): MasterStage => new WebMaster(context, tone, hasWorklet);
