/** Renders what a file will be made from while the player still chooses, so that its first seconds need not wait. */
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

/** One stroke of each key of recorded instruments, in the order in which they are first played. */
const recordedKeys = ({ sections, sound }: SoundPreparation): readonly SoundKey[] => {
  const notes = timelineOf(sections).flatMap(allNotes);
  const keys = keysOf(notes, sound).filter(
    ({ source }) => source !== undefined && source === sound.recorded?.source,
  );
  return [...new Map(keys.map((key) => [`${key.voice}/${key.midi}/${key.source}`, key])).values()];
};

/**
 * Has the recordings of a file's keys rendered where they are kept for it, one after another, so that whatever else
 * needs them never waits for more than one. Resolves when they are there or the signal is aborted; never rejects.
 */
export const prepareSounds = async (preparation: SoundPreparation): Promise<void> => {
  const { sections, sound, sampleRate, signal, route = (worker) => worker } = preparation;
  const worker = route(nobody());
  const held = heldAtMost(timelineOf(sections), sound);
  const answered = (request: SoundRequest): Promise<void> =>
    new Promise((resolve) => {
      worker.onmessage = () => resolve();
      worker.postMessage(request);
    });
  for (const key of recordedKeys(preparation)) {
    if (signal?.aborted) break;
    await answered({ key, sampleRate, held: held(key) });
  }
  worker.terminate();
};
