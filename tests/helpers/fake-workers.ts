/** Service workers of a page, moved by hand: the part of the standard's interfaces that `createOffline` uses. */

export interface FakeWorker extends EventTarget {
  state: ServiceWorkerState;
  readonly told: unknown[];
  /** Goes to a state, as the browser would have it. */
  become(state: ServiceWorkerState): void;
}

export interface FakeRegistration extends EventTarget {
  installing: FakeWorker | null;
  waiting: FakeWorker | null;
  active: FakeWorker | null;
  /** The server has a version that is being fetched now. */
  find(): FakeWorker;
}

export interface FakeContainer extends EventTarget {
  controller: FakeWorker | null;
  readonly registration: FakeRegistration;
  /** What registering throws while set. */
  refuse: Error | null;
  readonly asked: unknown[][];
  register(...args: unknown[]): Promise<FakeRegistration>;
}

const createWorker = (state: ServiceWorkerState): FakeWorker => {
  const told: unknown[] = [];
  const worker: FakeWorker = Object.assign(new EventTarget(), {
    state,
    told,
    postMessage: (message: unknown) => told.push(message),
    become: (next: ServiceWorkerState) => {
      worker.state = next;
      worker.dispatchEvent(new Event('statechange'));
    },
  });
  return worker;
};

/** The workers of a page that was visited before (`kept`) or never. */
export const createFakeContainer = ({ kept }: { readonly kept: boolean }): FakeContainer => {
  const active = kept ? createWorker('activated') : null;
  const registration: FakeRegistration = Object.assign(new EventTarget(), {
    installing: null,
    waiting: null,
    active,
    find: () => {
      const worker = createWorker('installing');
      registration.installing = worker;
      registration.dispatchEvent(new Event('updatefound'));
      return worker;
    },
  });
  const asked: unknown[][] = [];
  const container: FakeContainer = Object.assign(new EventTarget(), {
    controller: active,
    registration,
    refuse: null,
    asked,
    register: async (...args: unknown[]) => {
      asked.push(args);
      if (container.refuse) throw container.refuse;
      return registration;
    },
  });
  return container;
};
