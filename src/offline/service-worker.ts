/** The service worker: the browser's events on one side, the keeper on the other. */
import type { Build } from './built-files';
import { createKeeper } from './keeper';
import { TAKE_OVER } from './take-over';

interface LastingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface AskingEvent extends LastingEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** As much of a service worker's global scope as is used; the compiler's own types of it exclude those of pages. */
interface WorkerScope {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LastingEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: AskingEvent) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
}

declare const self: WorkerScope;
/** Written in by the build (`.dev/service-worker.mjs`). */
declare const BUILD: Build;

const keeper = createKeeper({
  build: BUILD,
  scope: self.registration.scope,
  caches,
  fetch: (request) => fetch(request),
});

self.addEventListener('install', (event) => event.waitUntil(keeper.install()));
// The first version takes over the page that brought it, so that this visit needs no network any more either.
self.addEventListener('activate', (event) => event.waitUntil(keeper.tidy().then(() => self.clients.claim())));
self.addEventListener('fetch', (event) => {
  const answer = keeper.answer(event.request);
  if (answer !== null) event.respondWith(answer);
});
self.addEventListener('message', ({ data }) => {
  if (data === TAKE_OVER) void self.skipWaiting();
});
