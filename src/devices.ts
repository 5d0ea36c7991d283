import { wallClock } from './app/log/wall-clock';
import type { Devices } from './app/session/session';
import { webGround } from './audio/band/band-ground';
import { createBand } from './audio/band/create-band';
import type { WorkerRoute } from './audio/bank/bank';
import { fetchInstruments } from './audio/soundfont/instruments-file';
import { createFileSounds } from './audio/soundfont/soundfont-route';
import { createPageLink } from './link/page-link';
import type { Teller } from './listeners/teller';
import { createMicrophone } from './mic/create-microphone';
import { createMidiPorts } from './midi/create-midi-ports';
import { webMidi } from './midi/web-midi';
import { createOffline } from './offline/offline';
import { createFullScreen } from './screen/full-screen';
import { createMediaKeys, type MediaGround, silentLoop } from './screen/media-keys';
import { createWakeLock } from './screen/wake-lock';
import { createKeptFile } from './storage/kept-file';
import { createKeptLog, type KeptLog } from './storage/kept-log';
import type { KeptValues } from './storage/kept-values';
import { createLastingStorage } from './storage/lasting';
import { createFileSaver, SAVING_GROUND } from './storage/save-file';
import { createShareSheet } from './storage/share-sheet';
import { createTabs } from './tabs/create-tabs';
import type { TapeMachine } from './tape/tape-machine';

let sources = 0;
const nextSource = (): number => {
  sources += 1;
  return sources;
};
const ownSounds = createFileSounds({ manner: 'as it is', nextSource });
const recorded = createFileSounds({ manner: 'varied', nextSource });
/** A sound that names a file goes to the holder of that file, and on where it has none. */
const route: WorkerRoute = (worker) => ownSounds.route(recorded.route(worker));

/** Fetches what renders the band to samples. */
export const loadRenderer = (): Promise<typeof import('./audio/export/render-offline')> => {
  // Tone greets in the console unless asked not to.
  Object.assign(globalThis, { TONE_SILENCE_LOGGING: true });
  return import('./audio/export/render-offline');
};

/** Fetches what compresses samples to files. */
export const loadCompressor = (): Promise<typeof import('./audio/export/compress-audio')> =>
  import('./audio/export/compress-audio');

/** Fetches what writes samples plainly. */
export const loadPcm = (): Promise<typeof import('./audio/export/pcm-file')> =>
  import('./audio/export/pcm-file');

/** Fetches what reads files of sheet music. */
export const loadSheets = (): Promise<typeof import('./sheet/read-sheet')> => import('./sheet/read-sheet');

/** Fetches what reads, hears and plays recordings. */
export const loadTapeMachine = async (): Promise<TapeMachine> =>
  (await import('./tape/tape-machine')).createTapeMachine();

/** Media sessions are absent in some browsers and on pages that are not secure, whatever the types say. */
const mediaGround = (): MediaGround => ({
  session: 'mediaSession' in navigator ? navigator.mediaSession : undefined,
  metadata: (words) => new MediaMetadata(words),
  silence: silentLoop,
});

/** Absent in older browsers, whatever the types say. */
const tellerOf = (name: string): Teller | undefined =>
  'BroadcastChannel' in window ? new BroadcastChannel(name) : undefined;

/** Other tabs are not told: what is large is read anew whenever it is asked for. */
const keptTakes = (): KeptLog => createKeptLog(() => window.indexedDB, undefined, 'combshed-takes');

interface Ground {
  readonly kept: KeptValues;
  /** Runs something once nothing else is to be done. */
  readonly whenIdle: (run: () => void) => void;
}

/** Files go to the downloads, and are ready for the sheet of the platform. */
const sharedSaver = () => {
  const share = createShareSheet(navigator);
  const download: typeof SAVING_GROUND.download = (blob, name) => {
    SAVING_GROUND.download(blob, name);
    share.note(blob, name);
  };
  return { saver: createFileSaver({ ...SAVING_GROUND, download }), share };
};

/** Everything of this machine that the page stands on. */
export const createDevices = ({ kept, whenIdle }: Ground): Devices => ({
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
    prepareSounds: async (preparation) => {
      const { prepareSounds } = await import('./audio/export/prepare-sounds');
      await prepareSounds({ ...preparation, route });
    },
    ...sharedSaver(),
    loadCompressor: async () => (await loadCompressor()).createAudioCompressor(),
    loadPcm: async () => (await loadPcm()).openPcm,
  },
  ownSounds: { sounds: ownSounds, shelf: createKeptFile('own sounds', () => window.indexedDB) },
  recorded: { sounds: recorded, fetchFile: fetchInstruments },
  phrases: {
    melodies: { read: async (bytes) => (await loadSheets()).readMelodies(bytes) },
    saver: createFileSaver(),
  },
  charts: { read: async (bytes) => (await loadSheets()).readSheet(bytes) },
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
  midi: createMidiPorts(webMidi()),
  mediaKeys: createMediaKeys(mediaGround()),
  // No player begins twice within a millisecond.
  tabs: createTabs(tellerOf('combshed-tabs'), Date.now),
  lasting: createLastingStorage(navigator.storage),
  takes: { loadMachine: loadTapeMachine, saver: createFileSaver(), kept: keptTakes() },
  log: {
    kept: createKeptLog(() => window.indexedDB, tellerOf('combshed-log')),
    saver: createFileSaver(),
    clock: wallClock,
  },
  today: wallClock,
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
