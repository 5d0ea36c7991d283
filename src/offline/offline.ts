/** How the program stands with the browser's keeping it for use without a network; no timers of its own. */
import { createListeners } from '../listeners/listeners';
import { TAKE_OVER } from './take-over';

/**
 * `fetching`: on its way. `kept`: it is all here. `insecure`: the address is not one browsers allow it for. `refused`:
 * this browser does not allow it. `failed`: not everything could be fetched.
 */
export type Keeping = 'fetching' | 'kept' | 'insecure' | 'refused' | 'failed';

/** Whether the page can be opened without its server. */
export interface OfflineStatus {
  readonly keeping: Keeping;
  /** Whether a newer version lies ready. */
  readonly newer: boolean;
}

/** The page’s side of what keeps the program. */
export interface Offline {
  status(): OfflineStatus;
  onStatus(listener: (status: OfflineStatus) => void): () => void;
  /** Loads the page anew in the newer version. Does nothing while there is none. */
  takeNewer(): void;
}

/** What of the browser keeping the program needs; tests hand in their own. */
export interface OfflineGround {
  /** `undefined` where the browser has no service workers for this page; may throw where it forbids them. */
  readonly container: () => ServiceWorkerContainer | undefined;
  /** Whether the address is one that browsers trust (Secure Contexts, W3C). */
  readonly secure: boolean;
  /** Runs something when the page is up and has nothing to do. */
  readonly whenIdle: (run: () => void) => void;
  readonly reload: () => void;
}

/** File of the worker, beside the page; `.dev/service-worker.mjs` writes it. */
const WORKER = './service-worker.js';

/** Tells the state a worker is in, and every later one. */
const follow = (worker: ServiceWorker, tell: (state: ServiceWorkerState) => void): void => {
  worker.addEventListener('statechange', () => tell(worker.state));
  tell(worker.state);
};

/** Browsers answer a script they could not fetch with a TypeError, and what they do not allow with others. */
const reasonOf = (error: unknown): Keeping => (error instanceof TypeError ? 'failed' : 'refused');

const containerOf = ({ container }: OfflineGround): ServiceWorkerContainer | undefined => {
  try {
    return container();
  } catch {
    return undefined;
  }
};

/** Has the browser keep the program, and tells how that goes and when a newer version lies ready. */
export const createOffline = (ground: OfflineGround): Offline => {
  const { secure, whenIdle, reload } = ground;
  const container = containerOf(ground);
  const statuses = createListeners<OfflineStatus>();
  let status: OfflineStatus = { keeping: 'fetching', newer: false };
  let registration: ServiceWorkerRegistration | null = null;
  let wanted = false;

  const set = (change: Partial<OfflineStatus>): void => {
    const next = { ...status, ...change };
    if (next.keeping === status.keeping && next.newer === status.newer) return;
    status = next;
    statuses.tell(status);
  };

  const watch = (worker: ServiceWorker | null, own: ServiceWorkerRegistration): void => {
    if (worker === null) return;
    follow(worker, (state) => {
      if (state === 'redundant') set({ keeping: own.active === null ? 'failed' : 'kept' });
      else if (state === 'installed') set({ newer: own.active !== null });
      else if (state === 'activated') set({ keeping: 'kept' });
    });
  };

  const register = async (from: ServiceWorkerContainer): Promise<void> => {
    try {
      // The script itself is always asked of the server: a kept one would never notice a newer version.
      const own = await from.register(WORKER, { updateViaCache: 'none' });
      registration = own;
      own.addEventListener('updatefound', () => watch(own.installing, own));
      if (own.active !== null) set({ keeping: 'kept' });
      for (const worker of [own.installing, own.waiting, own.active]) watch(worker, own);
    } catch (error) {
      set({ keeping: from.controller === null ? reasonOf(error) : 'kept' });
    }
  };

  if (container === undefined) set({ keeping: secure ? 'refused' : 'insecure' });
  else {
    let controlled = container.controller !== null;
    container.addEventListener('controllerchange', () => {
      if (wanted) reload();
      // Another window went over to the newer version: this one still runs the one before.
      else if (controlled) set({ newer: true });
      controlled = true;
    });
    whenIdle(() => void register(container));
  }

  return {
    status: () => status,
    onStatus: statuses.add,
    takeNewer: () => {
      if (!status.newer || wanted) return;
      wanted = true;
      const waiting = registration?.waiting ?? null;
      if (waiting === null) reload();
      else waiting.postMessage(TAKE_OVER);
    },
  };
};
