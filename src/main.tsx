import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { loadExportWork } from './app/export/export';
import { createSession, type Session } from './app/session/session';
import { webGround } from './audio/band/band-ground';
import { createBand } from './audio/band/create-band';
import type { WorkerRoute } from './audio/bank/bank';
import { fetchInstruments } from './audio/soundfont/instruments-file';
import { createFileSounds } from './audio/soundfont/soundfont-route';
import { createPageLink } from './link/page-link';
import { createMicrophone } from './mic/create-microphone';
import { createOffline } from './offline/offline';
import { createFullScreen } from './screen/full-screen';
import { createWakeLock } from './screen/wake-lock';
import { createKeptFile } from './storage/kept-file';
import { createKeptValues } from './storage/kept-values';
import { createFileSaver } from './storage/save-file';
import { App } from './ui/page/app';
import { showLastResort } from './ui/page/last-resort';
import { LATER_PARTS } from './ui/page/page-parts';
import { fetchStage } from './ui/page/stage-place';

const page = document.getElementById('page');
if (page === null) throw new Error('The page has no element "page" to draw into');

let sources = 0;
const nextSource = (): number => {
  sources += 1;
  return sources;
};
const ownSounds = createFileSounds({ manner: 'as it is', nextSource });
const recorded = createFileSounds({ manner: 'varied', nextSource });
/** A sound that names a file goes to the holder of that file, and on where it has none. */
const route: WorkerRoute = (worker) => ownSounds.route(recorded.route(worker));

/** Once the page and what it shows are here, and then when nothing else is to be done (not every browser tells). */
const whenIdle = (run: () => void): void => {
  const wait = (): void => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(run, { timeout: 5000 });
    else setTimeout(run, 1000);
  };
  if (document.readyState === 'complete') wait();
  else window.addEventListener('load', wait, { once: true });
};

const loadRenderer = (): Promise<typeof import('./audio/export/render-offline')> => {
  // Tone greets in the console unless asked not to.
  Object.assign(globalThis, { TONE_SILENCE_LOGGING: true });
  return import('./audio/export/render-offline');
};
const loadCompressor = (): Promise<typeof import('./audio/export/compress-audio')> =>
  import('./audio/export/compress-audio');

const AGAIN_MS = 5000;

/** Nobody asks for a sign or the paper before it is wanted, so that what failed is tried again. */
const fetchLaterParts = async (): Promise<void> => {
  try {
    await LATER_PARTS.fetch();
  } catch {
    LATER_PARTS.forgetFailure();
    setTimeout(() => void fetchLaterParts(), AGAIN_MS);
  }
};

/** Fetches everything the page was not first drawn with, so that nothing is asked for later. */
const fetchTheRest = async (session: Session): Promise<void> => {
  await fetchLaterParts();
  session.prepare();
  await Promise.allSettled([
    fetchStage(),
    loadRenderer(),
    loadExportWork(),
    loadCompressor(),
    session.commands.openBends(),
  ]);
  await session.commands.fetchRecorded();
};

const kept = createKeptValues(() => window.localStorage, window);

const open = (): Session =>
  createSession({
    band: createBand(webGround(route)),
    kept,
    newSeed: () => Math.floor(Math.random() * 1_000_000),
    later: (seconds, run) => {
      const timer = window.setTimeout(run, seconds * 1000);
      return () => window.clearTimeout(timer);
    },
    takeAway: {
      loadRenderer: async () => {
        const { renderSections } = await loadRenderer();
        return (request) => renderSections({ ...request, route });
      },
      saver: createFileSaver(),
      loadCompressor: async () => (await loadCompressor()).createAudioCompressor(),
    },
    ownSounds: { sounds: ownSounds, shelf: createKeptFile('own sounds', () => window.indexedDB) },
    recorded: { sounds: recorded, fetchFile: fetchInstruments },
    book: createPageLink({
      location: window.location,
      show: (address) => window.history.replaceState(null, '', address),
    }),
    screen: {
      // Absent in older browsers and on pages that are not secure, whatever the types say.
      wakeLock: createWakeLock({
        source: 'wakeLock' in navigator ? navigator.wakeLock : undefined,
        page: document,
      }),
      fullScreen: createFullScreen(document),
    },
    microphone: createMicrophone(),
    // A development server has no worker to register.
    ...(import.meta.env.PROD && {
      offline: createOffline({
        container: () => navigator.serviceWorker,
        secure: window.isSecureContext,
        whenIdle,
        reload: () => window.location.reload(),
      }),
    }),
  });

/** The page itself failed: its parts fail alone and say so themselves. */
const giveUp = (error: unknown, session: Session | null): void =>
  showLastResort({
    document,
    page,
    error,
    kept,
    reload: () => window.location.reload(),
    stop: session === null ? null : session.commands.stop,
  });

try {
  const session = open();
  createRoot(page, { onUncaughtError: (error) => giveUp(error, session) }).render(
    <StrictMode>
      <App session={session} />
    </StrictMode>,
  );
  whenIdle(() => void fetchTheRest(session));
} catch (error) {
  giveUp(error, null);
}
