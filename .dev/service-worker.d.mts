import type { Build } from '../src/offline/built-files';

/** Every file of a built folder with its digest, and a version that differs when any of them does. */
export const listBuild: (folder: string) => Build;
/** Writes the service worker for what is in the folder, in place of one that is there already. */
export const addServiceWorker: (folder: string) => Promise<void>;
