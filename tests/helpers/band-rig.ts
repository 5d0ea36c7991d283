import { vi } from 'vitest';
import type { BandStatus } from '../../src/audio/band/band';
import { createBand } from '../../src/audio/band/create-band';
import type { Engine } from '../../src/audio/band/engine';
import type { BandEvents } from '../../src/audio/band/load-band';
import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import { plainProgram } from './plain-sections';

/** An audio context whose state is moved by hand. */
export class FakeContext extends EventTarget {
  state: AudioContextState = 'suspended';
  willing = true;
  readonly destination = {};
  readonly createGain = () => ({ connect: () => {} });
  readonly resume = vi.fn(async () => {
    if (this.willing) this.become('running');
  });
  readonly suspend = vi.fn(async () => this.become('suspended'));
  readonly close = vi.fn(async () => this.become('closed'));
  become(state: AudioContextState): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

const fakeEngine = () => {
  let playing = false;
  let paused = false;
  const engine = {
    play: vi.fn(async () => {
      playing = true;
      return true;
    }),
    prepare: vi.fn(),
    sounding: vi.fn((): boolean => playing),
    stop: vi.fn(() => {
      playing = false;
      paused = false;
    }),
    pause: vi.fn(() => {
      paused = playing;
      playing = false;
      return paused;
    }),
    goOn: vi.fn(async () => {
      playing = true;
      paused = false;
      return true;
    }),
    paused: () => paused,
    change: vi.fn(),
    seek: vi.fn(),
    setSound: vi.fn(),
    audition: vi.fn(async () => {}),
    playhead: vi.fn(() => null),
    playheadAt: vi.fn(() => null),
    upcoming: vi.fn(() => null),
    playing: () => playing,
    resync: vi.fn(),
    counts: vi.fn(),
    dispose: vi.fn(() => {
      playing = false;
    }),
  };
  return engine satisfies Engine;
};

/** What `play` of the rig plays. */
export const program = plainProgram(12, 120);

/** A band on fake contexts, taken in turn, with fake engines. */
export const bandRig = ({ contexts = [new FakeContext()], load = async (): Promise<void> => {} } = {}) => {
  const engines: ReturnType<typeof fakeEngine>[] = [];
  const events: BandEvents[] = [];
  const createContext = vi.fn(() => (contexts.shift() ?? null) as AudioContext | null);
  const band = createBand({
    createContext,
    loadEngine: async (_, given) => {
      await load();
      const engine = fakeEngine();
      engines.push(engine);
      events.push(given);
      return engine;
    },
  });
  const statuses: BandStatus['kind'][] = [];
  band.onStatus(({ kind }) => statuses.push(kind));
  return {
    band,
    engines,
    events,
    statuses,
    createContext,
    play: (fromBar = 0) => band.play(program, RESTING_SOUND, fromBar),
  };
};
