/** A page with the band and nothing else, driven by browser tests through `window.bench`. */

import type { BandStatus } from '../../../src/audio/band/band';
import { WEB_GROUND } from '../../../src/audio/band/band-ground';
import { createBand } from '../../../src/audio/band/create-band';
import type { Engine, EngineCounts } from '../../../src/audio/band/engine';
import type { Rendered } from '../../../src/audio/export/render-offline';
import type { Playhead } from '../../../src/core/arranger/playhead';
import type { Program, Section } from '../../../src/core/arranger/program';
import type { PartId } from '../../../src/core/score/score';
import type { BandSound } from '../../../src/core/song/band-sound';
import { createMicrophone } from '../../../src/mic/create-microphone';
import type { EarChoice, HeardReport } from '../../../src/mic/microphone';
import { createMidiPorts } from '../../../src/midi/create-midi-ports';
import { webMidi } from '../../../src/midi/web-midi';
import { createKeptFile, type KeptFile } from '../../../src/storage/kept-file';
import { createKeptLog, type KeptLog } from '../../../src/storage/kept-log';
import { type BandStage, listenTo } from '../band-contract';
import { createFakeMidi } from '../fake-midi';
import { listenToMicrophone, type MicrophoneStage } from '../microphone-contract';
import { type MidiBehaviour, midiStage } from '../midi-contract';
import { createRecorder } from './recorder';
import { renderByNodes } from './render-by-nodes';

export interface RenderOrder {
  readonly program: Program;
  readonly sections: readonly Section[];
  readonly sound: BandSound;
  readonly sampleRate: number;
  readonly parts?: readonly PartId[];
  /** False when only the figures are wanted. */
  readonly keep?: boolean;
  /** Milliseconds after which the rendering is cancelled. */
  readonly abortAfter?: number;
}

export interface RenderResult extends Rendered {
  readonly milliseconds: number;
  readonly longestChunk: number;
  /** 32-bit floats, little-endian, in base64: left, then right. */
  readonly pcm: string;
}

/** A moment seen from the page: what is heard, and the audio clock's time that leaves the loudspeaker. */
export interface Moment {
  readonly heard: {
    readonly kind: Section['kind'];
    readonly bar: number;
    readonly beat: number;
    readonly ticks: number;
  } | null;
  readonly outputTime: number;
  readonly currentTime: number;
}

const toBase64 = (samples: readonly Float32Array[]): string => {
  let text = '';
  for (const part of samples) {
    const bytes = new Uint8Array(part.buffer, part.byteOffset, part.byteLength);
    for (let at = 0; at < bytes.length; at += 0x8000) {
      text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    }
  }
  return btoa(text);
};

const render = async ({ abortAfter, keep = true, ...order }: RenderOrder): Promise<RenderResult> => {
  const { renderSections } = await import('../../../src/audio/export/render-offline');
  const left: Float32Array[] = [];
  const right: Float32Array[] = [];
  let longestChunk = 0;
  const began = performance.now();
  const rendered = await renderSections({
    ...order,
    ...(abortAfter === undefined ? {} : { signal: AbortSignal.timeout(abortAfter) }),
    feel: order.program.style.feel,
    push: order.program.style.push,
    onChunk: (one, other) => {
      longestChunk = Math.max(longestChunk, one.length);
      if (!keep) return;
      left.push(one.slice());
      right.push(other.slice());
    },
  });
  const milliseconds = performance.now() - began;
  return { ...rendered, milliseconds, longestChunk, pcm: toBase64([...left, ...right]) };
};

/** Level of what is left in dB, where the file is taken from what the nodes make of the same. */
const fileAgainstNodes = async (order: RenderOrder, seconds: number): Promise<number> => {
  const nodes = await renderByNodes(order, seconds);
  const { renderSections } = await import('../../../src/audio/export/render-offline');
  let [frame, sum, left] = [0, 0, 0];
  await renderSections({
    ...order,
    feel: order.program.style.feel,
    push: order.program.style.push,
    onChunk: (...sides) => {
      sides.forEach((samples, side) => {
        for (let i = 0; i < samples.length && frame + i < seconds * order.sampleRate; i += 1) {
          const node = nodes[side]?.[frame + i] ?? 0;
          sum += node ** 2;
          left += (node - (samples[i] ?? 0)) ** 2;
        }
      });
      frame += sides[0].length;
    },
  });
  return 10 * Math.log10(left / sum);
};

const recorder = createRecorder();
let context: AudioContext | null = null;
let engine: Engine | null = null;

const band = createBand({
  createContext: () => {
    context = WEB_GROUND.createContext();
    return context;
  },
  loadEngine: async (made, events) => {
    await recorder.attach(made);
    engine = await WEB_GROUND.loadEngine(made, events);
    return engine;
  },
});

const mustContext = (): AudioContext => {
  if (context === null) throw new Error('the band has no context yet');
  return context;
};

const moment = (position: Playhead | null = band.playhead()): Moment => {
  const { contextTime = 0, performanceTime = 0 } = mustContext().getOutputTimestamp();
  return {
    heard: position && {
      kind: position.section.kind,
      bar: position.bar,
      beat: position.beat,
      ticks: position.ticks,
    },
    outputTime: contextTime + (performance.now() - performanceTime) / 1000,
    currentTime: mustContext().currentTime,
  };
};

const statuses: BandStatus['kind'][] = [];
band.onStatus(({ kind }) => statuses.push(kind));
const bars: Moment[] = [];
band.onBar((position) => bars.push(moment(position)));

/** Lets a band that has done nothing yet behave, and lets it go. */
const onStage = async (
  act: (stage: BandStage) => Promise<unknown>,
  program: Program,
  sound: BandSound,
): Promise<unknown> => {
  const fresh = createBand();
  const told = listenTo(fresh);
  const firstBar = async (): Promise<void> => {
    while (!told.some((each) => each.startsWith('bar'))) await bench.wait(10);
  };
  try {
    // A copy: letting the band go tells something more.
    return structuredClone(await act({ band: fresh, program, sound, firstBar, told }));
  } finally {
    fresh.dispose();
  }
};

/** Hands the page a stand-in for the browser’s list of devices. */
const onMidi = (act: MidiBehaviour['act']): Promise<unknown> => {
  const hardware = createFakeMidi();
  const given = { requestMIDIAccess: () => hardware.ground.request?.() };
  for (const [name, value] of Object.entries(given))
    Object.defineProperty(navigator, name, { value, configurable: true });
  Object.defineProperty(navigator.permissions, 'query', {
    value: async () => ({ state: (await hardware.ground.granted()) ? 'granted' : 'prompt' }),
    configurable: true,
  });
  const leave = (): void => void window.dispatchEvent(new Event('pagehide'));
  return act(midiStage(createMidiPorts(webMidi()), { ...hardware, leave }));
};

/** Lets a microphone that has done nothing yet behave on a context of its own, and lets both go. */
const onMicrophone = async (
  act: (stage: MicrophoneStage) => Promise<unknown>,
  choice: EarChoice,
): Promise<unknown> => {
  const own = new AudioContext();
  const output = own.createGain();
  const microphone = createMicrophone();
  const told = listenToMicrophone(microphone);
  const heard = (): Promise<HeardReport> =>
    new Promise((resolve) => {
      const leave = microphone.onHeard((report) => {
        if (report.frames.length === 0) return;
        leave();
        resolve(report);
      });
    });
  try {
    await own.resume();
    return structuredClone(await act({ microphone, ground: { context: own, output }, choice, heard, told }));
  } finally {
    microphone.dispose();
    await own.close();
  }
};

const bench = {
  band,
  onStage,
  onMicrophone,
  onMidi,
  renderer: async () => (await import('../../../src/audio/export/render-offline')).renderSections,
  /** A file kept in the browser's own database. */
  keptFile: (key: string): KeptFile => createKeptFile(key, () => window.indexedDB),
  /** The log in the browser's own database, emptied. */
  keptLog: async (): Promise<KeptLog> => {
    const kept = createKeptLog(() => window.indexedDB, new BroadcastChannel('combshed-log'));
    await kept.remove(null);
    return kept;
  },
  statuses,
  bars,
  render,
  fileAgainstNodes,
  moment,
  wait: (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds)),
  /** Resolves when the audio clock has gone on by so many seconds. */
  sounded: async (seconds: number): Promise<void> => {
    const clock = mustContext();
    for (const until = clock.currentTime + seconds; clock.currentTime < until; ) await bench.wait(10);
  },
  /** Keeps the page so busy that nothing else runs. */
  block: (milliseconds: number): void => {
    for (const until = performance.now() + milliseconds; performance.now() < until; );
  },
  counts: (): EngineCounts => {
    if (engine === null) throw new Error('the band has no engine yet');
    return engine.counts();
  },
  context: mustContext,
  level: () => recorder.level(),
  recorded: () => {
    const { samples, ...rest } = recorder.recording();
    return { ...rest, pcm: toBase64([samples]) };
  },
};

declare global {
  interface Window {
    readonly bench: typeof bench;
  }
}

Object.assign(window, { bench });
