/**
 * Media keys, headsets and the lock screen, by the Media Session standard (W3C). Browsers give a session to pages that
 * play a media element, not to Web Audio alone: Chromium wants one that lasts more than five seconds. So a silent loop
 * runs while the band does. It is sound of level 0, beside the band's own way out, and never begins before Play.
 */

/** What a key or the lock screen can ask for. */
const MEDIA_ACTIONS = ['play', 'pause', 'stop', 'previoustrack', 'nexttrack'] as const;
export type MediaAction = (typeof MEDIA_ACTIONS)[number];

/** How the band is, as the lock screen shows it. */
export type MediaState = 'none' | 'playing' | 'paused';

/** Media keys and the lock screen. No method throws. */
export interface MediaKeys {
  /** Shows what is on the stand, and whether it plays; with `none` the page lets the keys go. */
  show(state: MediaState, words: { readonly title: string; readonly by: string }): void;
  /** Called with what a key asks for. Returns the unsubscriber. */
  onAction(listener: (action: MediaAction) => void): () => void;
  dispose(): void;
}

/** A silence that goes round and round. */
export interface SilentLoop {
  play(): Promise<void>;
  pause(): void;
  /**
   * Ends it for good and lets its way to the loudspeaker go: one that is only paused holds it open for another ten seconds
   * in Chromium, at 0.6 % of a core.
   */
  end(): void;
}

/** What of the browser is needed. */
export interface MediaGround {
  /** Undefined in browsers without one. */
  readonly session: Pick<MediaSession, 'metadata' | 'playbackState' | 'setActionHandler'> | undefined;
  readonly metadata: (words: { readonly title: string; readonly artist: string }) => MediaMetadata;
  readonly silence: () => SilentLoop;
}

/** Seconds of silence in the loop, above Chromium's bound for what counts as media; at a rate that keeps it small. */
const SILENCE = { seconds: 10, rate: 8000 } as const;

/** A WAV file of silence: 16 bits, mono. */
export const silentWav = (): Uint8Array<ArrayBuffer> => {
  const length = 2 * SILENCE.seconds * SILENCE.rate;
  const bytes = new Uint8Array(44 + length);
  const view = new DataView(bytes.buffer);
  const word = (at: number, text: string): void => {
    for (const [i, letter] of [...text].entries()) view.setUint8(at + i, letter.charCodeAt(0));
  };
  word(0, 'RIFF');
  view.setUint32(4, 36 + length, true);
  word(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, SILENCE.rate, true);
  view.setUint32(28, 2 * SILENCE.rate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  word(36, 'data');
  view.setUint32(40, length, true);
  return bytes;
};

/** A media element that loops the silence. */
export const silentLoop = (): SilentLoop => {
  const address = URL.createObjectURL(new Blob([silentWav()], { type: 'audio/wav' }));
  const element = new Audio(address);
  element.loop = true;
  return {
    play: () => element.play(),
    pause: () => element.pause(),
    end: () => {
      element.pause();
      element.removeAttribute('src');
      element.load();
      URL.revokeObjectURL(address);
    },
  };
};

/** Media keys of the browser; where it has no media session, keys that never ask for anything. */
export const createMediaKeys = ({ session, metadata, silence }: MediaGround): MediaKeys => {
  const listeners = new Set<(action: MediaAction) => void>();
  let loop: SilentLoop | null = null;
  let shown = '';
  const take = (on: boolean): void => {
    for (const action of MEDIA_ACTIONS) {
      try {
        const tell = (): void => {
          for (const listener of listeners) listener(action);
        };
        session?.setActionHandler(action, on ? tell : null);
      } catch {
        // A browser that does not know an action throws, and does without it.
      }
    }
  };
  const run = (state: MediaState): void => {
    if (state === 'playing') {
      loop ??= silence();
      // Refused where there was no gesture: the band then plays without its keys.
      void loop.play().catch(() => undefined);
    } else if (state === 'paused') {
      loop?.pause();
    } else {
      loop?.end();
      loop = null;
    }
  };
  return {
    show: (state, { title, by }) => {
      const now = JSON.stringify([state, title, by]);
      if (session === undefined || now === shown) return;
      if (state === 'none' && shown === '') return;
      const before = session.playbackState;
      shown = now;
      session.metadata = state === 'none' ? null : metadata({ title, artist: by });
      session.playbackState = state;
      if (before !== state) run(state);
      if ((before === 'none') !== (state === 'none')) take(state !== 'none');
    },
    onAction: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    dispose: () => {
      loop?.end();
      take(false);
      if (session !== undefined) session.playbackState = 'none';
    },
  };
};
