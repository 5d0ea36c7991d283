/** One worker with one opened SoundFont. It answers every request, if only to say that it cannot. */
import { MOST_SOUND_FONT_BYTES } from '../../core/formats/sound-font';
import { messageOf } from '../../core/theory/thrown';
import type { SoundRequest } from '../bank/bank-messages';
import type { FontWorker } from './create-font-worker';
import type { FontAnswer, FontManner, FontRefusal, FontRendering, FontVoice } from './font-messages';

/** Why there is no rendering of a sound. */
export type NoRendering =
  | { readonly kind: 'none' }
  | { readonly kind: 'failed'; readonly reason: string }
  /** The worker is gone. */
  | { readonly kind: 'lost' };

/** A SoundFont opened in its worker, rendering sound by sound. */
export interface FontServer {
  readonly voices: readonly FontVoice[];
  render(sound: SoundRequest, done: (answer: FontRendering | NoRendering) => void): void;
  close(): void;
}

/** Seconds after which a file that is still being read, and a sound still being rendered, are given up. */
const OPEN_SECONDS = 60;
const RENDER_SECONDS = 20;

type Pending = Map<number, (answer: FontRendering | NoRendering) => void>;

const renderingOf = (answer: FontAnswer & { id: number }): FontRendering | NoRendering => {
  if (answer.kind === 'sound') return answer.sound;
  return answer.kind === 'failed' ? { kind: 'failed', reason: answer.reason } : { kind: 'none' };
};

/** Answers from an opened worker. @param onLost is called once when the worker breaks down. */
const serve = (
  worker: FontWorker,
  voices: readonly FontVoice[],
  onLost: (detail: string) => void,
): FontServer => {
  const pending: Pending = new Map();
  let next = 0;
  let open = true;
  let watch: ReturnType<typeof setTimeout> | undefined;

  const end = (): void => {
    open = false;
    clearTimeout(watch);
    worker.terminate();
    const left = [...pending.values()];
    pending.clear();
    for (const done of left) done({ kind: 'lost' });
  };
  const lose = (detail: string): void => {
    if (!open) return;
    end();
    onLost(detail);
  };
  const rewatch = (): void => {
    clearTimeout(watch);
    if (pending.size === 0) return;
    watch = setTimeout(() => lose(`no answer within ${RENDER_SECONDS} s`), RENDER_SECONDS * 1000);
  };

  worker.onerror = (event) => lose(event.message || 'the worker broke down');
  worker.onmessage = ({ data }) => {
    if (!('id' in data)) return;
    const done = pending.get(data.id);
    pending.delete(data.id);
    rewatch();
    done?.(renderingOf(data));
  };
  return {
    voices,
    render: (sound, done) => {
      if (!open) {
        done({ kind: 'lost' });
        return;
      }
      const id = next;
      next += 1;
      pending.set(id, done);
      if (pending.size === 1) rewatch();
      worker.postMessage({ kind: 'render', id, ...sound });
    },
    close: end,
  };
};

/** A worker, or that none can be had: some browsers throw at once where others tell later. */
const start = (createWorker: () => FontWorker): FontWorker | FontRefusal => {
  try {
    return createWorker();
  } catch (error) {
    return { kind: 'no player', detail: messageOf(error) };
  }
};

/**
 * Opens a file in a worker of its own. Resolves with the reason when it cannot be used; never rejects.
 * @param onLost is called when the worker breaks down later.
 */
export const openFontServer = (
  { file, manner }: { readonly file: Blob; readonly manner: FontManner },
  createWorker: () => FontWorker,
  onLost: (detail: string) => void,
): Promise<FontServer | FontRefusal> => {
  if (file.size > MOST_SOUND_FONT_BYTES) return Promise.resolve({ kind: 'too large', bytes: file.size });
  return new Promise((resolve) => {
    const worker = start(createWorker);
    if ('kind' in worker) return resolve(worker);
    const refuse = (why: FontRefusal): void => {
      clearTimeout(timer);
      worker.terminate();
      resolve(why);
    };
    const timer = setTimeout(() => refuse({ kind: 'too slow', seconds: OPEN_SECONDS }), OPEN_SECONDS * 1000);
    worker.onerror = (event) =>
      refuse({ kind: 'no player', detail: event.message || 'the worker broke down' });
    worker.onmessage = ({ data }) => {
      if (data.kind === 'refused') refuse(data.why);
      if (data.kind !== 'opened') return;
      clearTimeout(timer);
      resolve(serve(worker, data.voices, onLost));
    };
    worker.postMessage({ kind: 'open', file, manner });
  });
};
