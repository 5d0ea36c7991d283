import type { Engine } from './engine';
import type { BandEvents } from './load-band';

/** What the band stands on; replaced in tests. */
export interface BandGround {
  /** Null where the browser has no Web Audio. May throw when the device cannot be opened. */
  readonly createContext: () => AudioContext | null;
  readonly loadEngine: (context: AudioContext, events: BandEvents) => Promise<Engine>;
}

/** The browser itself. */
export const WEB_GROUND: BandGround = {
  createContext: () =>
    typeof AudioContext === 'undefined' ? null : new AudioContext({ latencyHint: 'playback' }),
  loadEngine: async (context, events) => {
    const { loadEngine } = await import('./load-band');
    return loadEngine(context, events);
  },
};
