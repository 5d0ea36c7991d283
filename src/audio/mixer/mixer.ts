/** The mixer: a channel for each part, a room they share, the master, and the gate that silences all. */
import { Panner } from 'tone/build/esm/component/channel/Panner.js';
import { Filter } from 'tone/build/esm/component/filter/Filter.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { Gain } from 'tone/build/esm/core/context/Gain.js';
import { connect, type ToneAudioNode } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { WaveShaper } from 'tone/build/esm/signal/WaveShaper.js';
import { PART_IDS, type PartId } from '../../core/score/score';
import type { Mix } from '../../core/settings/mix';
import type { VoiceId } from '../synthesis/voice';
import {
  CHANNEL_STRIPS,
  CHORD_WIDTH,
  chordPosition,
  type Equaliser,
  KIT_WIDTH,
  kitPosition,
  type Rounding,
  roundedOff,
} from './channel-strips';
import { masterGain, partGains } from './mix-gains';
import { createRotary, type Rotary } from './rotary';

export interface MixerOptions {
  readonly context: BaseContext;
  readonly output: AudioNode;
  /** The room's answer to an impulse, stereo; or what is given all that is sent to the room, to be put into it later. */
  readonly room: AudioBuffer | { readonly sendTo: AudioNode };
}

/** Channel strips, room and limiter between the sounds and the loudspeaker. */
export interface Mixer {
  /** Brings a sound of a part to its place. */
  connect(source: AudioNode, part: PartId, voice: VoiceId, pitch: number): void;
  /** Brings a single sound past faders and mutes. */
  connectAside(source: AudioNode): void;
  /** Sets faders and pans, within 20 ms unless `seconds` says otherwise. */
  setMix(mix: Mix, seconds?: number): void;
  /** Sets the programme level, in dB. */
  setTrim(decibels: number, seconds?: number): void;
  /** Lets sound through from a time (seconds of the audio clock) on. */
  open(at: number): void;
  /** Silence, within 20 ms of a time. */
  close(at: number): void;
  dispose(): void;
}

/** Three places from left to right that lead into one part. */
type Places = Readonly<Record<-1 | 0 | 1, ToneAudioNode>>;

/** Faders glide, so that moving one does not click. */
const RAMP = 0.02;
/** Highest amplitude the rounding takes in: wave shapers see no farther than 1. */
const SHAPED = 4;
/** Voices whose low notes stand to the left of their high ones. */
const KEYBOARDS: ReadonlySet<VoiceId> = new Set(['piano', 'electric-piano']);
/** Time constant of the gate: −60 dB within 20 ms. */
const GATE = 0.003;

const fromDecibels = (decibels: number): number => 10 ** (decibels / 20);

const move = (param: Gain['gain'] | Panner['pan'], value: number, seconds: number): void => {
  if (seconds > 0) param.rampTo(value, seconds);
  else param.value = value;
};

/** Builds the mixer on a context. */
export const createMixer = (options: MixerOptions): Mixer => new ToneMixer(options);

class ToneMixer implements Mixer {
  private readonly context: BaseContext;
  private readonly nodes: ToneAudioNode[] = [];
  private readonly faders: Record<PartId, Gain>;
  private readonly pans: Record<PartId, Panner>;
  private readonly inputs: Record<PartId, ToneAudioNode>;
  private readonly kit: Places;
  private readonly keyboard: Places;
  private readonly convolver: ConvolverNode | null;
  private readonly rotaries = new Map<PartId, Rotary>();
  private readonly aside: Gain;
  private readonly trim: Gain;
  private readonly master: Gain;
  private readonly gate: Gain;

  constructor({ context, output, room }: MixerOptions) {
    this.context = context;
    this.gate = this.gain(1);
    this.master = this.gain(1);
    this.trim = this.gain(1);
    this.aside = this.gain(1);
    const roomInput = this.gain(1);
    roomInput.channelCount = 1;
    roomInput.channelCountMode = 'explicit';
    this.trim.chain(this.gate, this.master);
    this.convolver = 'sendTo' in room ? null : this.roomOf(room);
    if ('sendTo' in room) connect(roomInput, room.sendTo);
    if (this.convolver !== null) {
      connect(roomInput, this.convolver);
      connect(this.convolver, this.trim);
    }
    this.aside.connect(this.master);
    connect(this.master, output);
    this.faders = this.each(() => this.gain(1));
    this.pans = this.each(() => this.keep(new Panner({ context, pan: 0, channelCount: 2 })));
    this.inputs = this.each((part) => this.channel(part, roomInput));
    this.kit = this.places(this.inputs.drums, KIT_WIDTH);
    this.keyboard = this.places(this.inputs.chords, CHORD_WIDTH);
  }

  connect(source: AudioNode, part: PartId, voice: VoiceId, pitch: number): void {
    if (part === 'drums') connect(source, this.kit[kitPosition(pitch)]);
    else if (voice === 'organ') connect(source, this.turning(part));
    else if (KEYBOARDS.has(voice)) connect(source, this.keyboard[chordPosition(pitch)]);
    else connect(source, this.inputs[part]);
  }

  connectAside(source: AudioNode): void {
    connect(source, this.aside);
  }

  setMix(mix: Mix, seconds = RAMP): void {
    const gains = partGains(mix);
    for (const part of PART_IDS) {
      move(this.faders[part].gain, gains[part], seconds);
      move(this.pans[part].pan, mix.channels[part].pan, seconds);
    }
    move(this.master.gain, masterGain(mix), seconds);
  }

  setTrim(decibels: number, seconds = RAMP): void {
    move(this.trim.gain, fromDecibels(decibels), seconds);
  }

  open(at: number): void {
    this.gate.gain.setTargetAtTime(1, at, GATE);
  }

  close(at: number): void {
    this.gate.gain.cancelScheduledValues(at);
    this.gate.gain.setTargetAtTime(0, at, GATE);
  }

  dispose(): void {
    for (const rotary of this.rotaries.values()) rotary.dispose();
    this.convolver?.disconnect();
    for (const node of this.nodes) node.dispose();
  }

  private keep<Node extends ToneAudioNode>(node: Node): Node {
    this.nodes.push(node);
    return node;
  }

  private gain(value: number): Gain {
    return this.keep(new Gain({ context: this.context, gain: value }));
  }

  private each<Value>(make: (part: PartId) => Value): Record<PartId, Value> {
    return {
      drums: make('drums'),
      bass: make('bass'),
      chords: make('chords'),
      second: make('second'),
      lead: make('lead'),
      click: make('click'),
    };
  }

  private channel(part: PartId, room: ToneAudioNode): ToneAudioNode {
    const { level, send, equaliser, rounding } = CHANNEL_STRIPS[part];
    const input = this.gain(fromDecibels(level) * (rounding === null ? 1 : 1 / SHAPED));
    const shaping = [
      ...(rounding === null ? [] : [this.rounding(rounding)]),
      ...(equaliser === null ? [] : [this.equaliser(equaliser)]),
    ];
    input.chain(...shaping, this.pans[part], this.faders[part], this.trim);
    if (send !== null) this.faders[part].chain(this.gain(fromDecibels(send)), room);
    return input;
  }

  private rounding(rounding: Rounding): WaveShaper {
    const mapping = (x: number) => roundedOff(x * SHAPED, rounding);
    return this.keep(new WaveShaper({ context: this.context, mapping, length: 8193 }));
  }

  private equaliser({ type, frequency, gain, q }: Equaliser): Filter {
    const { context } = this;
    return this.keep(new Filter({ context, type, frequency, gain, Q: q, rolloff: -12 }));
  }

  /** Made when an organ first plays a part. */
  private turning(part: PartId): ToneAudioNode {
    const rotary = this.rotaries.get(part) ?? createRotary(this.context, this.inputs[part]);
    this.rotaries.set(part, rotary);
    return rotary.input;
  }

  private places(middle: ToneAudioNode, width: number): Places {
    const at = (pan: number) => this.keep(new Panner({ context: this.context, pan })).connect(middle);
    return { [-1]: at(-width), 0: middle, 1: at(width) };
  }

  /** The library's own sets the buffer first, which the browser then scales to a loudness of its choice (−16 dB here). */
  private roomOf(room: AudioBuffer): ConvolverNode {
    const convolver = this.context.createConvolver();
    convolver.normalize = false;
    convolver.buffer = room;
    return convolver;
  }
}
