import { useSyncExternalStore } from 'react';
import { messageOf } from '../../core/theory/thrown';

/** A part of the program could not be fetched: nothing is wrong with it, so asking again may help. */
export class FetchingTrouble extends Error {
  constructor(cause: unknown) {
    super(messageOf(cause), { cause });
    this.name = 'FetchingTrouble';
  }
}

/** A part of the program that is fetched apart from what the page is first drawn with. */
export interface Fetched<Part> {
  /** Fetches it unless it is here or on its way. Rejects with FetchingTrouble. */
  fetch(): Promise<Part>;
  /** The part, for a component that shows it: it waits, or fails with FetchingTrouble. */
  read(): Part;
  /** The part, or null as long as it is not here. */
  here(): Part | null;
  /** Tells when it is here; returns what ends that. */
  onHere(listener: () => void): () => void;
  /** After a failure: the next that asks fetches anew. */
  forgetFailure(): void;
}

const everything: Pick<Fetched<unknown>, 'fetch' | 'forgetFailure'>[] = [];

/** Fetches every part there is, what failed before anew. Rejects with FetchingTrouble where one cannot be had. */
export const fetchEverything = (): Promise<unknown> =>
  Promise.all(
    everything.map((part) => {
      part.forgetFailure();
      return part.fetch();
    }),
  );

/** The part, for a component that does without it until it is here: null until then. */
export const useHere = <Part>({ onHere, here }: Fetched<Part>): Part | null =>
  useSyncExternalStore(onHere, here);

/** @param load fetches the part; asked again only after a failure. */
export const createFetched = <Part>(load: () => Promise<Part>): Fetched<Part> => {
  let asked: Promise<Part> | null = null;
  let trouble: FetchingTrouble | null = null;
  let here: { readonly part: Part } | null = null;
  const listeners = new Set<() => void>();

  const fetch = (): Promise<Part> => {
    asked ??= load().then(
      (part) => {
        here = { part };
        for (const listener of listeners) listener();
        return part;
      },
      (error: unknown) => {
        trouble = new FetchingTrouble(error);
        throw trouble;
      },
    );
    return asked;
  };
  const part: Fetched<Part> = {
    fetch,
    // What is here is drawn at once: waiting for a settled promise would take paper away from a printer. React waits for
    // a promise that is thrown; `use` it wants asked again by whoever waited, here or not.
    read: () => {
      if (here !== null) return here.part;
      throw trouble ?? fetch();
    },
    here: () => here?.part ?? null,
    onHere: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    forgetFailure: () => {
      if (trouble !== null) asked = null;
      trouble = null;
    },
  };
  everything.push(part);
  return part;
};
