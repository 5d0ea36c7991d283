import type { Program } from '../../core/arranger/program';
import type { BandSound } from '../../core/song/band-sound';
import type { WorkerRoute } from '../bank/bank';
import type { Engine } from './engine';
import type { BandEvents } from './load-band';

/** What the band stands on; replaced in tests. */
export interface BandGround {
  /** Null where the browser has no Web Audio. May throw when the device cannot be opened. */
  readonly createContext: () => AudioContext | null;
  readonly loadEngine: (context: AudioContext, events: BandEvents) => Promise<Engine>;
  /** Computes what the first play needs before there is a context; resolves when it is there. */
  readonly prepare?: (program: Program, sound: BandSound, fromBar: number) => Promise<void>;
}

declare global {
  /** Web Audio API 1.1; browsers that do not know it go on in blocks of 128. */
  interface AudioContextOptions {
    renderSizeHint?: number;
  }
}

/**
 * Samples the audio thread makes at a time: every node and worklet is then asked half as often as usual. A block of the
 * ear is as long. Nothing is heard later by it, as devices take more at a time.
 */
const RENDER_SIZE = 256;

/** The browser itself. @param route what requests for sounds go through on their way to the workers */
export const webGround = (route: WorkerRoute = (worker) => worker): BandGround => ({
  createContext: () =>
    typeof AudioContext === 'undefined'
      ? null
      : new AudioContext({ latencyHint: 'playback', renderSizeHint: RENDER_SIZE }),
  loadEngine: async (context, events) => {
    const { loadEngine } = await import('./load-band');
    return loadEngine(context, { route, ...events });
  },
  // Neither the band's part nor Tone's classes in it make a context before `loadEngine` does.
  prepare: async (program, sound, fromBar) => {
    const { prepareSounds } = await import('./load-band');
    await prepareSounds({ program, sound, fromBar, route });
  },
});

export const WEB_GROUND: BandGround = webGround();
