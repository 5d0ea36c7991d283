/**
 * Keeps the screen from going dark, by the Screen Wake Lock API (W3C). The system takes the lock back whenever the page
 * is hidden, so it is asked for again as soon as the page is seen; the system may also refuse it, to save the battery.
 */
import { createListeners } from '../listeners/listeners';

/** How the screen is kept: `missing` where the browser cannot, `refused` where the system does not allow it now. */
export type Waking = 'off' | 'held' | 'refused' | 'missing';

/** Keeps the screen from going dark. */
export interface WakeLock {
  /** Whether the screen is to stay awake from now on. */
  want(awake: boolean): void;
  /** Calls back whenever it is kept otherwise than before. Returns the unsubscriber. */
  onChange(listener: (waking: Waking) => void): () => void;
  dispose(): void;
}

/** A lock as the browser hands it out. */
interface Sentinel {
  readonly released: boolean;
  release(): Promise<void>;
  addEventListener(type: 'release', listener: () => void): void;
}

interface Needs {
  /** Where locks come from; undefined where the browser has none, and on pages that are not secure. */
  readonly source: { request(type: 'screen'): Promise<Sentinel> } | undefined;
  readonly page: Pick<Document, 'visibilityState' | 'addEventListener' | 'removeEventListener'>;
}

/** Lets go of a lock, if there is one; one that is gone already has nothing to let go of. */
const release = (lock: Sentinel | null): void => {
  void lock?.release().catch(() => undefined);
};

/** A lock on the screen that is held for as long as it is wanted and the page is seen. */
export const createWakeLock = ({ source, page }: Needs): WakeLock => {
  const changes = createListeners<Waking>();
  let wanted = false;
  let asking = false;
  let lock: Sentinel | null = null;
  let waking: Waking = 'off';

  const say = (now: Waking): void => {
    if (now === waking) return;
    waking = now;
    changes.tell(now);
  };
  const letGo = (): void => {
    const held = lock;
    lock = null;
    release(held);
    say('off');
  };
  const take = (taken: Sentinel): void => {
    if (!wanted) {
      release(taken);
      return;
    }
    lock = taken;
    taken.addEventListener('release', () => {
      if (lock !== taken) return;
      lock = null;
      say('off');
      void ask();
    });
    say('held');
  };
  const ask = async (): Promise<void> => {
    if (!wanted || asking || lock !== null || page.visibilityState !== 'visible') return;
    if (source === undefined) {
      say('missing');
      return;
    }
    asking = true;
    try {
      take(await source.request('screen'));
    } catch {
      // What is refused because the page was hidden meanwhile is asked for again when it is back.
      if (wanted && page.visibilityState === 'visible') say('refused');
    } finally {
      asking = false;
    }
  };
  page.addEventListener('visibilitychange', ask);
  return {
    want: (awake) => {
      if (awake === wanted) return;
      wanted = awake;
      if (awake) void ask();
      else letGo();
    },
    onChange: changes.add,
    dispose: () => {
      page.removeEventListener('visibilitychange', ask);
      wanted = false;
      letGo();
    },
  };
};
