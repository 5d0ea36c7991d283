/** What a worker that encodes gave back: bytes, handed over and not copied, or why there are none. */
export type Encoded =
  | { readonly kind: 'frames'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'failed'; readonly reason: string };

/** The part of a worker that encoding uses. */
export interface EncodingWorker<Order> {
  postMessage(order: Order, options?: { readonly transfer: Transferable[] }): void;
  onmessage: ((message: MessageEvent<Encoded>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

interface Waiting {
  readonly resolve: (bytes: Uint8Array) => void;
  readonly reject: (reason: Error) => void;
}

/** Orders for a worker, each answered in its turn. */
export interface EncodingLine<Order> {
  /**
   * Rejects when the worker has broken down, or the line was closed.
   * @param transfer what of the order is handed over instead of copied
   */
  ask(order: Order, transfer?: Transferable[]): Promise<Uint8Array>;
  close(): void;
}

/**
 * Opens a line to a worker; all that wait are rejected when it breaks down. Throws the browser's reason where no worker
 * can be had.
 */
export const openEncodingLine = <Order>(createWorker: () => EncodingWorker<Order>): EncodingLine<Order> => {
  const waiting: Waiting[] = [];
  const worker = createWorker();
  let broken: Error | null = null;
  const breakDown = (reason: string): void => {
    broken = new Error(reason);
    worker.terminate();
    for (const each of waiting.splice(0)) each.reject(broken);
  };
  worker.onerror = ({ message }) => breakDown(message || 'the encoder could not be started');
  worker.onmessage = ({ data }) => {
    if (data.kind === 'failed') breakDown(data.reason);
    else waiting.shift()?.resolve(data.bytes);
  };
  return {
    ask: (order, transfer = []) =>
      new Promise((resolve, reject) => {
        if (broken !== null) return reject(broken);
        waiting.push({ resolve, reject });
        worker.postMessage(order, { transfer });
      }),
    close: () => breakDown('the file was closed'),
  };
};
