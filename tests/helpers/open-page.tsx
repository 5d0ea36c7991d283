import { render } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { createKeptValues } from '../../src/storage/kept-values';
import { App } from '../../src/ui/page/app';
import { fetchEverything } from '../../src/ui/state/fetched';
import { createSession } from './create-session';
import { createFakeBand } from './fake-band';
import { createFakeLog } from './fake-log';
import { createFakeMicrophone } from './fake-microphone';
import { createFakeOffline } from './fake-offline';
import { createFakeOwnSounds } from './fake-own-sounds';
import { createFakeStorage } from './fake-storage';
import { createFakeTakeAway } from './fake-take-away';
import { createFakeTakes } from './fake-takes';

// As a page that has rested: what it fetches later is here.
await fetchEverything();

/** The whole page on a band that makes no sound and a storage in memory. */
export const openPage = (stored?: unknown) => {
  const storage = createFakeStorage(
    stored === undefined
      ? {}
      : { 'combshed.settings': typeof stored === 'string' ? stored : JSON.stringify(stored) },
  );
  const band = createFakeBand();
  const takeAway = createFakeTakeAway();
  const ownSounds = createFakeOwnSounds();
  const offline = createFakeOffline();
  const microphone = createFakeMicrophone();
  const takes = createFakeTakes();
  const log = createFakeLog();
  const session = createSession({
    band,
    kept: createKeptValues(() => storage, window),
    newSeed: () => 4711,
    // What follows at once does, nothing that waits.
    later: (seconds, run) => {
      if (seconds > 0) return () => {};
      const next = setTimeout(run);
      return () => clearTimeout(next);
    },
    takeAway,
    ownSounds,
    offline,
    microphone,
    takes,
    log: log.device,
    today: log.device.clock,
  });
  const page = render(<App session={session} />);
  return {
    band,
    storage,
    session,
    takeAway,
    ownSounds,
    offline,
    microphone,
    takes,
    log,
    page,
    user: userEvent.setup(),
  };
};
