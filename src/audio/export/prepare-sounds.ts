/** Renders what a file will be made from while the player still chooses, so that its first seconds need not wait. */
import { pause } from '../band/engine-times';
import { keysOf } from '../band/note-sound';
import type { BankWorker } from '../bank/bank';
import type { SoundRequest } from '../bank/bank-messages';
import type { SoundKey } from '../bank/sound-key';
import { allNotes } from '../transport/scheduled-note';
import { heldAtMost } from './held-at-most';
import { type RenderRequest, timelineOf } from './render-offline';

/** The file that is going to be asked for. */
export type SoundPreparation = Pick<RenderRequest, 'sections' | 'sound' | 'sampleRate' | 'signal' | 'route'>;

/** Nothing is computed: a computed voice is soon done when it is needed. */
const nobody = (): BankWorker => {
  const worker: BankWorker = {
    onmessage: null,
    onerror: null,
    postMessage: ({ key }) => {
      const data = { kind: 'failed', key, reason: 'not computed ahead' } as const;
      queueMicrotask(() => worker.onmessage?.(new MessageEvent('message', { data })));
    },
    terminate: () => undefined,
  };
  return worker;
};

/** A stroke that is to be rendered, and how long it is held at most, in seconds. */
interface WantedKey {
  readonly key: SoundKey;
  readonly held: number;
}

/**
 * One stroke of each key of recorded instruments, in the order in which they are first played, looked for in one
 * section after another with a turn for the page in between.
 */
const recordedKeys = async ({ sections, sound, signal }: SoundPreparation): Promise<readonly WantedKey[]> => {
  const wanted = new Map<string, WantedKey>();
  for (const placement of timelineOf(sections)) {
    const heldHere = heldAtMost([placement], sound);
    for (const key of keysOf(allNotes(placement), sound)) {
      if (key.source === undefined || key.source !== sound.recorded?.source) continue;
      const name = `${key.voice}/${key.midi}/${key.source}`;
      const known = wanted.get(name);
      wanted.set(name, { key: known?.key ?? key, held: Math.max(known?.held ?? 0, heldHere(key)) });
    }
    await pause(0);
    if (signal?.aborted) break;
  }
  return [...wanted.values()];
};

/**
 * Has the recordings of a file's keys rendered where they are kept for it, one after another, so that whatever else
 * needs them never waits for more than one. Resolves when they are there or the signal is aborted; never rejects.
 */
export const prepareSounds = async (preparation: SoundPreparation): Promise<void> => {
  const { sampleRate, signal, route = (worker) => worker } = preparation;
  const keys = await recordedKeys(preparation);
  const worker = route(nobody());
  const answered = (request: SoundRequest): Promise<void> =>
    new Promise((resolve) => {
      worker.onmessage = () => resolve();
      worker.postMessage(request);
    });
  for (const { key, held } of keys) {
    if (signal?.aborted) break;
    await answered({ key, sampleRate, held });
  }
  worker.terminate();
};
