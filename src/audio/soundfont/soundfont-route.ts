/** Sounds from a file: one SoundFont at a time, played in place of computed voices where a sound asks for it. */
import { createListeners } from '../../listeners/listeners';
import type { BankWorker, WorkerRoute } from '../bank/bank';
import type { SoundAnswer, SoundRequest } from '../bank/bank-messages';
import { createFontWorker, type FontWorker } from './create-font-worker';
import type { FontManner, FontRefusal, FontRendering, FontVoice } from './font-messages';
import { type FontServer, type NoRendering, openFontServer } from './font-server';

/** How the opening of a file ended. */
export type Opening =
  | { readonly kind: 'opened'; readonly source: number; readonly voices: readonly FontVoice[] }
  | { readonly kind: 'refused'; readonly why: FontRefusal };

/** What was asked of the files of this visit. */
export interface FileSoundCounts {
  readonly rendered: number;
  /** Sounds the file does not have, played by the computed voice. */
  readonly absent: number;
  /** Sounds the file has but that could not be rendered, played by the computed voice. */
  readonly failed: number;
}

/** A holder of sounds from a file. */
export interface FileSounds {
  /** Opens a file in place of the one in use, which stays in use when the new one is refused. Never rejects. */
  open(file: Blob): Promise<Opening>;
  /** Lets the file go. */
  close(): void;
  /** Calls back when the file in use can be played no longer. Returns the unsubscriber. */
  onLost(listener: (detail: string) => void): () => void;
  counts(): FileSoundCounts;
  /** Takes requests for the file's sounds out of the way of a bank's worker; what it does not have goes on to it. */
  readonly route: WorkerRoute;
}

type FontAnswer = FontRendering | NoRendering;

const answered = (data: SoundAnswer): MessageEvent<SoundAnswer> => new MessageEvent('message', { data });

/** The way from a bank to its worker that leads past the server of a file, where a sound asks for that file. */
const routePast =
  (serverOf: (source: number) => FontServer | null, note: (answer: FontAnswer) => void): WorkerRoute =>
  (inner) => {
    let ended = false;
    const ask = (request: SoundRequest, server: FontServer): void =>
      server.render(request, (answer) => {
        if (ended) return;
        note(answer);
        if ('kind' in answer) inner.postMessage(request);
        else outer.onmessage?.(answered({ kind: 'sound', key: request.key, ...answer }));
      });
    const outer: BankWorker = {
      onmessage: null,
      onerror: null,
      postMessage: (request) => {
        const { source } = request.key;
        const server = source === undefined ? null : serverOf(source);
        if (server !== null) ask(request, server);
        else inner.postMessage(request);
      },
      terminate: () => {
        ended = true;
        inner.terminate();
      },
    };
    inner.onmessage = (message) => outer.onmessage?.(message);
    inner.onerror = (event) => outer.onerror?.(event);
    return outer;
  };

/** How a holder plays its files, and how they are told apart. */
export interface FileSoundOptions {
  readonly manner: FontManner;
  /** Numbers the files that are opened, those of other holders included. */
  readonly nextSource: () => number;
  readonly createWorker?: () => FontWorker;
}

/** Creates a holder of sounds from a file, empty; nothing is loaded before a file is opened. */
export const createFileSounds = ({
  manner,
  nextSource,
  createWorker = createFontWorker,
}: FileSoundOptions): FileSounds => {
  const losses = createListeners<string>();
  let current: { readonly source: number; readonly server: FontServer } | null = null;
  let openings = 0;
  let counts: FileSoundCounts = { rendered: 0, absent: 0, failed: 0 };

  const count = (what: keyof FileSoundCounts): void => {
    counts = { ...counts, [what]: counts[what] + 1 };
  };
  const note = (answer: FontAnswer): void => {
    if (!('kind' in answer)) count('rendered');
    else if (answer.kind === 'none') count('absent');
    else count('failed');
  };
  const close = (): void => {
    current?.server.close();
    current = null;
  };

  const open = async (file: Blob): Promise<Opening> => {
    openings += 1;
    const opening = openings;
    const source = nextSource();
    const server = await openFontServer({ file, manner }, createWorker, (detail) => {
      if (current?.source !== source) return;
      current = null;
      losses.tell(detail);
    });
    if (!('render' in server)) return { kind: 'refused', why: server };
    if (opening !== openings) {
      server.close();
      return { kind: 'refused', why: { kind: 'overtaken' } };
    }
    close();
    current = { source, server };
    return { kind: 'opened', source, voices: server.voices };
  };

  return {
    open,
    close: () => {
      openings += 1;
      close();
    },
    onLost: losses.add,
    counts: () => counts,
    route: routePast((source) => (current?.source === source ? current.server : null), note),
  };
};
