import type { Page } from 'playwright-core';
import type { Harp } from '../../src/core/harp/harp';
import { askedNotes } from '../../src/core/judging/asked-notes';
import { readPhrase } from '../../src/core/phrase/read-phrase';
import { harpSamples } from './harp-recording';
import { wavText } from './wav-text';

const SAMPLE_RATE = 48_000;

/** RMS of the harp, re full scale: the band comes back in some 6 dB below it. */
export const HARP_DB = -14.5;

const rms = (samples: Float32Array): number => {
  const sounding = samples.filter((value) => Math.abs(value) > 0.001);
  return Math.sqrt(sounding.reduce((sum, value) => sum + value * value, 0) / Math.max(1, sounding.length));
};

/** What is played, and how. */
interface Played {
  readonly tab: string;
  readonly harp: Harp;
  readonly tempo: number;
  /** Another key for a note, or null to leave it out. */
  readonly change?: (midi: number, index: number) => number | null;
}

/** A phrase as a WAV file in base64. */
export const playedFile = ({ tab, harp, tempo, change = (midi) => midi }: Played): string => {
  const { phrase } = readPhrase(tab, '4/4');
  const asked = askedNotes(phrase, { harp, swing: 2, secondsPerTick: 60 / tempo / 480 });
  const notes = asked.flatMap(({ at, length, pitches }, i) => {
    const midi = change(Math.round(pitches[0] ?? 0), i);
    return midi === null ? [] : [{ midi, from: at, to: at + 0.9 * length }];
  });
  const samples = harpSamples(notes, 4);
  return wavText(samples, 10 ** (HARP_DB / 20) / rms(samples), SAMPLE_RATE);
};

/** Who plays in a room, and when. */
export interface Room {
  /** WAV files, one a turn, in base64. */
  readonly files: readonly string[];
  readonly tempo: number;
}

/**
 * A room before the page's scripts run: what the page plays comes back in through the microphone, and with it a player
 * who plays a file in each of their turns, in time with what is heard. Both take the way that the page believes in.
 */
export const inRoom = async (page: Page, room: Room): Promise<void> => {
  await page.addInitScript(({ files, tempo }: Room) => {
    const WAY_IN = 0.01;
    const connect = AudioNode.prototype.connect as (...args: unknown[]) => unknown;
    let air: GainNode | null = null;
    let first = 0;
    AudioNode.prototype.connect = function (this: AudioNode, ...args: unknown[]) {
      if (args[0] instanceof AudioDestinationNode && this.context instanceof AudioContext) {
        air ??= this.context.createGain();
        connect.call(this, air);
      }
      return connect.apply(this, args);
    } as typeof AudioNode.prototype.connect;
    const start = AudioBufferSourceNode.prototype.start;
    const play = async (context: AudioContext, into: AudioNode): Promise<void> => {
      const beat = 60 / tempo;
      for (const [turn, file] of files.entries()) {
        const bytes = Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0));
        const source = context.createBufferSource();
        source.buffer = await context.decodeAudioData(bytes.buffer);
        connect.call(source, into);
        // A bar is counted in; then two bars of call and two of answer in turn.
        start.call(source, first + beat * (4 + 8 + 16 * turn));
      }
    };
    AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, when = 0, ...rest) {
      if (first === 0 && when > 0 && this.context instanceof AudioContext) {
        first = when;
      }
      return start.call(this, when, ...rest);
    };
    navigator.mediaDevices.getUserMedia = async () => {
      if (air === null || !(air.context instanceof AudioContext)) throw new DOMException('', 'NotFoundError');
      const { context } = air;
      const ear = context.createMediaStreamDestination();
      const way = context.createDelay(1);
      connect.call(air, way);
      connect.call(way, ear);
      for (const track of ear.stream.getTracks()) {
        const settings = track.getSettings.bind(track);
        track.getSettings = () => ({ ...settings(), latency: WAY_IN });
      }
      const meter = context.createAnalyser();
      connect.call(air, meter);
      const heard = new Float32Array(meter.fftSize);
      const leak = { squares: 0, count: 0 };
      Object.assign(window, { leak });
      const wait = (): void => {
        // The page learns how late its output is once it plays, and so does the room.
        way.delayTime.value = WAY_IN + (context.outputLatency || 0.02);
        if (first > 0 && context.currentTime > first + 1) void play(context, way).then(listen);
        else setTimeout(wait, 20);
      };
      const listen = (): void => {
        meter.getFloatTimeDomainData(heard);
        for (const value of heard) leak.squares += value * value;
        leak.count += heard.length;
        setTimeout(listen, 30);
      };
      wait();
      return ear.stream;
    };
  }, room);
};
