/** The mixer: a channel for each part, a room they share, the master, and the gate that silences all. */
import { Panner } from 'tone/build/esm/component/channel/Panner.js';
import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import { Gain } from 'tone/build/esm/core/context/Gain.js';
import { connect, type ToneAudioNode } from 'tone/build/esm/core/context/ToneAudioNode.js';
import type { PartId } from '../../core/score/score';
import { DEFAULT_MIX } from '../../core/settings/defaults';
import type { Mix } from '../../core/settings/mix';
import type { VoiceId } from '../synthesis/voice';
import { type Channel, createChannel, fromDecibels, move } from './channel';
import { CHANNEL_STRIPS, placeOf } from './channel-strips';
import type { MasterStage } from './master-stage';
import { masterGain, partGains } from './mix-gains';
import { createRotary, type Rotary } from './rotary';

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
  /** Lets sound through from a time on, for music that begins at another (seconds of the audio clock). */
  open(at: number, origin: number): void;
  /** Silence, within 20 ms of a time. */
  close(at: number): void;
  dispose(): void;
}

/** Faders glide, so that moving one does not click. */
const RAMP = 0.02;
/** Time constant of the gate: −60 dB within 20 ms. */
const GATE = 0.003;

/** Builds the mixer on a context. */
export const createMixer = (context: BaseContext, stage: MasterStage): Mixer => new ToneMixer(context, stage);

class ToneMixer implements Mixer {
  private readonly context: BaseContext;
  private readonly nodes: ToneAudioNode[] = [];
  private readonly channels = new Map<PartId, Channel>();
  private readonly places = new Map<string, ToneAudioNode>();
  private readonly rotaries = new Map<PartId, Rotary>();
  private readonly stage: MasterStage;
  /** What is sent to the room, which is added after the band's own level: it takes the same. */
  private readonly room: Gain;
  private readonly aside: Gain;
  private readonly band: Gain;
  private readonly gate: Gain;
  private mix: Mix = DEFAULT_MIX;
  private trim = 1;
  private origin = 0;

  constructor(context: BaseContext, stage: MasterStage) {
    this.context = context;
    this.stage = stage;
    this.gate = this.gain(1);
    this.band = this.gain(1);
    this.aside = this.gain(1);
    this.room = this.gain(1);
    this.room.channelCount = 1;
    this.room.channelCountMode = 'explicit';
    this.band.connect(this.gate);
    connect(this.gate, stage.input);
    connect(this.aside, stage.input);
    connect(this.room, stage.send);
  }

  connect(source: AudioNode, part: PartId, voice: VoiceId, pitch: number): void {
    connect(source, this.placeOf(part, voice, pitch));
  }

  connectAside(source: AudioNode): void {
    connect(source, this.aside);
  }

  setMix(mix: Mix, seconds = RAMP): void {
    this.mix = mix;
    for (const part of this.channels.keys()) this.setChannel(part, seconds);
    move(this.aside.gain, masterGain(mix), seconds);
    this.setLevel(seconds);
  }

  setTrim(decibels: number, seconds = RAMP): void {
    this.trim = fromDecibels(decibels);
    this.setLevel(seconds);
  }

  open(at: number, origin: number): void {
    this.origin = origin;
    for (const rotary of this.rotaries.values()) rotary.turnFrom(origin);
    for (const gate of this.gates()) gate.setTargetAtTime(1, at, GATE);
  }

  close(at: number): void {
    for (const gate of this.gates()) {
      gate.cancelScheduledValues(at);
      gate.setTargetAtTime(0, at, GATE);
    }
  }

  dispose(): void {
    for (const each of [...this.rotaries.values(), ...this.channels.values()]) each.dispose();
    for (const node of this.nodes) node.dispose();
  }

  private keep<Node extends ToneAudioNode>(node: Node): Node {
    this.nodes.push(node);
    return node;
  }

  private gain(value: number): Gain {
    return this.keep(new Gain({ context: this.context, gain: value }));
  }

  private setLevel(seconds: number): void {
    for (const { gain } of [this.band, this.room]) move(gain, this.trim * masterGain(this.mix), seconds);
  }

  /** Of the band, and of what is left of it in the room. */
  private gates(): readonly (Gain['gain'] | AudioParam)[] {
    return [this.gate.gain, this.stage.roomGate()];
  }

  private placeOf(part: PartId, voice: VoiceId, pitch: number): ToneAudioNode {
    const place = placeOf(part, voice, pitch);
    return place === 'turning' ? this.turning(part) : this.place(part, place);
  }

  /** Made when the part first plays: most songs need half of the channels. */
  private input(part: PartId): ToneAudioNode {
    const known = this.channels.get(part);
    if (known !== undefined) return known.input;
    const channel = createChannel(this.context, CHANNEL_STRIPS[part], {
      band: this.band,
      room: this.room,
    });
    this.channels.set(part, channel);
    this.setChannel(part, 0);
    return channel.input;
  }

  private setChannel(part: PartId, seconds: number): void {
    this.channels.get(part)?.set(partGains(this.mix)[part], this.mix.channels[part].pan, seconds);
  }

  /** A place between the sides that leads into a part; 0 is the part's own input. */
  private place(part: PartId, pan: number): ToneAudioNode {
    const input = this.input(part);
    const name = `${part} ${pan}`;
    const known = pan === 0 ? input : this.places.get(name);
    if (known !== undefined) return known;
    const made = this.keep(new Panner({ context: this.context, pan })).connect(input);
    this.places.set(name, made);
    return made;
  }

  /** Made when an organ first plays a part. */
  private turning(part: PartId): ToneAudioNode {
    const rotary = this.rotaries.get(part) ?? createRotary(this.context, this.input(part), this.origin);
    this.rotaries.set(part, rotary);
    return rotary.input;
  }
}
