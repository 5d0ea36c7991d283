import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { loadFeatures } from './app/session/features';
import { isWhole, openState } from './app/session/opening';
import type { Session } from './app/session/session';
import { createWaitingSession, type WaitingSession } from './app/session/waiting-session';
import { createKeptValues } from './storage/kept-values';
import { App } from './ui/page/app';
import { showLastResort } from './ui/page/last-resort';
import { fetchStage } from './ui/page/stage-place';
import { fetchEverything } from './ui/state/fetched';

const page = document.getElementById('page');
if (page === null) throw new Error('The page has no element "page" to draw into');

/** Once the page and what it shows are here, and then when nothing else is to be done (not every browser tells). */
const whenIdle = (run: () => void): void => {
  const wait = (): void => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(run, { timeout: 5000 });
    else setTimeout(run, 1000);
  };
  if (document.readyState === 'complete') wait();
  else window.addEventListener('load', wait, { once: true });
};

const kept = createKeptValues(() => window.localStorage, window);

/** Opens the page's state, which is drawn at once; what carries commands out is fetched and joined to it after that. */
const open = (): WaitingSession => {
  const store = openState(kept);
  return createWaitingSession(store, async () => {
    const [{ createSession }, { createDevices }, features] = await Promise.all([
      import('./app/session/session'),
      import('./devices'),
      loadFeatures(),
    ]);
    return createSession(store, createDevices({ kept, whenIdle }), features);
  });
};

const UNSEEN_MS = 250;

/** Once the page has been drawn; where nobody sees it, soon. */
const afterPicture = (run: () => void): void => {
  let done = false;
  const once = (): void => {
    if (!done) run();
    done = true;
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, UNSEEN_MS);
};

const AGAIN_MS = 5000;

const againUntil = async <Part,>(fetch: () => Promise<Part>): Promise<Part> => {
  for (;;) {
    try {
      return await fetch();
    } catch {
      await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    }
  }
};

/** Fetches everything the page was not first drawn with, so that nothing is asked for later. */
const fetchTheRest = async (session: Session): Promise<void> => {
  // Nobody asks for a sign or the paper before it is wanted, so that what failed is tried again.
  await againUntil(fetchEverything);
  session.prepare();
  const { loadRenderer, loadCompressor, loadPcm, loadSheets, loadTapeMachine } = await import('./devices');
  const { loadTakeDesk } = await import('./app/takes/takes');
  const { loadExportWork } = await import('./app/export/export');
  await Promise.allSettled([
    fetchStage(),
    loadRenderer(),
    loadExportWork(),
    loadCompressor(),
    loadPcm(),
    loadSheets(),
    loadTapeMachine(),
    loadTakeDesk(),
    session.commands.openBends(),
  ]);
  // For whoever measures: from here on the page does everything without a network.
  performance.mark('whole');
  await session.commands.fetchRecorded();
};

/** The page itself failed: its parts fail alone and say so themselves. */
const giveUp = (error: unknown, session: WaitingSession | null): void =>
  showLastResort({
    document,
    page,
    error,
    kept,
    reload: () => window.location.reload(),
    stop: session === null ? null : session.commands.stop,
  });

const draw = (session: WaitingSession): void =>
  createRoot(page, { onUncaughtError: (error) => giveUp(error, session) }).render(
    <StrictMode>
      <App session={session} />
    </StrictMode>,
  );

try {
  const session = open();
  const arrive = (): void =>
    void againUntil(session.arrive).then((here) => whenIdle(() => void fetchTheRest(here)));
  if (isWhole(session.store.getState())) {
    draw(session);
    afterPicture(arrive);
  } else {
    void Promise.allSettled([session.arrive(), fetchEverything()]).then(() => draw(session));
    arrive();
  }
} catch (error) {
  giveUp(error, null);
}
