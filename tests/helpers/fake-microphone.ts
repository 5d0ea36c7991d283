import { soundId } from '../../src/core/harp/tab';
import type { RoundTrip } from '../../src/core/hearing/round-trip';
import { asSeconds } from '../../src/core/theory/units';
import type {
  EarChoice,
  HeardReport,
  LearntReeds,
  MicDevice,
  MicInput,
  Microphone,
  MicStatus,
  MicTrouble,
  SoundBlock,
} from '../../src/mic/microphone';

/** A microphone that hears nothing by itself: it remembers what it was asked and is moved by hand. */
export interface FakeMicrophone extends Microphone {
  readonly asked: string[];
  readonly choices: EarChoice[];
  /** Lets something be heard. */
  hear(report?: Partial<HeardReport>): HeardReport;
  report(status: MicStatus): void;
  /** Tells that something was learnt of reeds. */
  learn(learnt: LearntReeds): void;
  /** Hands sound on, as it does while it is recorded. */
  sound(block: SoundBlock): void;
  /** What opening comes to from now on; null lets it succeed. */
  refuse(why: MicTrouble | null): void;
  /** What measuring the way comes to from now on. */
  lead(way: RoundTrip | null): void;
  /** Plugs microphones in and out. */
  plug(devices: readonly MicDevice[]): void;
}

const BUILT_IN: MicDevice = { id: 'built-in', name: 'Built-in microphone' };
const FRAME = { frequency: 0, clarity: 0, level: -80 } as const;

/** @param processing what is done to the sound although it was asked not to be. */
export const createFakeMicrophone = (processing: MicInput['processing'] = []): FakeMicrophone => {
  let status: MicStatus = { kind: 'off' };
  let devices: readonly MicDevice[] = [BUILT_IN];
  let refusal: MicTrouble | null = null;
  let way: RoundTrip | null = null;
  let time = 0;
  let fresh = true;
  const asked: string[] = [];
  const choices: EarChoice[] = [];
  const statusListeners = new Set<(status: MicStatus) => void>();
  const heardListeners = new Set<(report: HeardReport) => void>();
  const deviceListeners = new Set<() => void>();
  const soundListeners = new Set<(block: SoundBlock) => void>();
  const learntListeners = new Set<(learnt: LearntReeds) => void>();
  let recording = false;
  const report = (next: MicStatus): void => {
    if (JSON.stringify(next) === JSON.stringify(status)) return;
    status = next;
    for (const listener of [...statusListeners]) listener(next);
  };
  const close = (): void => {
    asked.push('close');
    report({ kind: 'off' });
  };
  return {
    asked,
    choices,
    hear: (given = {}) => {
      const begun = fresh ? asSeconds(time) : null;
      fresh = false;
      time += 0.03;
      const frames = [{ ...FRAME, known: asSeconds(time), centre: asSeconds(time) }];
      const heard = { frames, notes: [], begun, level: null, way: null, ...given };
      for (const listener of [...heardListeners]) listener(heard);
      return heard;
    },
    report,
    sound: (block) => {
      if (recording && status.kind === 'listening')
        for (const listener of [...soundListeners]) listener(block);
    },
    learn: (learnt) => {
      for (const listener of [...learntListeners]) listener(learnt);
    },
    teach: (sound, from, to) => {
      asked.push(`teach ${soundId(sound)} ${from} ${to}`);
    },
    onLearnt: (listener) => {
      learntListeners.add(listener);
      return () => learntListeners.delete(listener);
    },
    record: (on) => {
      recording = on;
    },
    onSound: (listener) => {
      soundListeners.add(listener);
      return () => soundListeners.delete(listener);
    },
    refuse: (why) => {
      refusal = why;
    },
    lead: (next) => {
      way = next;
    },
    plug: (next) => {
      devices = next;
      for (const listener of [...deviceListeners]) listener();
    },
    status: () => status,
    open: async (device, _, choice) => {
      asked.push(`open ${device ?? 'any'}`);
      choices.push(choice);
      fresh = true;
      report({ kind: 'asking' });
      await Promise.resolve();
      if (status.kind !== 'asking') return status;
      const found = device === null ? devices[0] : devices.find(({ id }) => id === device);
      const why = refusal ?? (found === undefined ? (device === null ? 'missing' : 'unplugged') : null);
      if (why !== null || found === undefined) report({ kind: 'trouble', why: why ?? 'failed', detail: '' });
      else report({ kind: 'listening', input: { ...found, processing, latency: null } });
      return status;
    },
    close,
    listenFor: (choice) => {
      choices.push(choice);
      fresh = true;
    },
    measureWay: async () => {
      asked.push('measure');
      return status.kind === 'listening' ? way : null;
    },
    click: (delays) => {
      asked.push('click');
      return status.kind === 'listening' ? delays.map((delay) => asSeconds(time + delay)) : [];
    },
    now: () => (status.kind === 'listening' ? asSeconds(time) : null),
    devices: async () => devices,
    onStatus: (listener) => {
      statusListeners.add(listener);
      return () => statusListeners.delete(listener);
    },
    onDevices: (listener) => {
      deviceListeners.add(listener);
      return () => deviceListeners.delete(listener);
    },
    onHeard: (listener) => {
      heardListeners.add(listener);
      return () => heardListeners.delete(listener);
    },
    dispose: close,
  };
};
