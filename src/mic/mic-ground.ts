import type { EarAnswer, EarRequest } from './ear-messages';
import workletUrl from './ear-worklet.ts?worker&url';

/** The part of a worker that the microphone uses. */
export interface EarWorker {
  postMessage(request: EarRequest, transfer?: Transferable[]): void;
  terminate(): void;
  onmessage: ((message: MessageEvent<EarAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** A microphone's sound on its way to the ear. */
export interface EarLine {
  /** Where the blocks come out. */
  readonly port: MessagePort;
  /** The part on the audio thread broke down. */
  onBroken(run: () => void): void;
  close(): void;
}

/** What the microphone stands on; replaced in tests. */
export interface MicrophoneGround {
  /** Absent where a page gets no microphone. */
  readonly devices: Pick<
    MediaDevices,
    'getUserMedia' | 'enumerateDevices' | 'addEventListener' | 'removeEventListener'
  > | null;
  /** Whether the player has forbidden the microphone by now; false where the browser does not say. */
  readonly forbidden: () => Promise<boolean>;
  readonly createWorker: () => EarWorker;
  /** Runs at every click and key, in which a browser lets sound go on that it held up; returns what ends that. */
  readonly onGesture: (run: () => void) => () => void;
  /** Leads a stream and what the page plays to the ear. Rejects where the browser cannot. */
  readonly connect: (stream: MediaStream, context: AudioContext, output: AudioNode) => Promise<EarLine>;
}

const loaded = new WeakMap<BaseAudioContext, Promise<void>>();

const load = (context: AudioContext): Promise<void> => {
  const known = loaded.get(context);
  if (known !== undefined) return known;
  const loading = context.audioWorklet.addModule(workletUrl);
  loaded.set(context, loading);
  // What could not be fetched is asked for again.
  loading.catch(() => loaded.delete(context));
  return loading;
};

const connect: MicrophoneGround['connect'] = async (stream, context, output) => {
  await load(context);
  const node = new AudioWorkletNode(context, 'ear', { numberOfInputs: 2, numberOfOutputs: 0 });
  const source = context.createMediaStreamSource(stream);
  source.connect(node, 0, 0);
  output.connect(node, 0, 1);
  const { port1, port2 } = new MessageChannel();
  node.port.postMessage(port1, [port1]);
  return {
    port: port2,
    onBroken: (run) => node.addEventListener('processorerror', run, { once: true }),
    close: () => {
      node.port.postMessage(null);
      source.disconnect();
      output.disconnect(node);
    },
  };
};

const forbidden = async (): Promise<boolean> => {
  try {
    const { state } = await navigator.permissions.query({ name: 'microphone' });
    return state === 'denied';
  } catch {
    return false;
  }
};

const onGesture: MicrophoneGround['onGesture'] = (run) => {
  const gestures = ['click', 'keydown'] as const;
  for (const gesture of gestures) document.addEventListener(gesture, run, true);
  return () => {
    for (const gesture of gestures) document.removeEventListener(gesture, run, true);
  };
};

/** The browser itself. */
export const WEB_MICROPHONE: MicrophoneGround = {
  // Absent on pages that are not served securely, whatever the types say.
  devices: typeof navigator !== 'undefined' && 'mediaDevices' in navigator ? navigator.mediaDevices : null,
  forbidden,
  createWorker: () => new Worker(new URL('./ear-worker.ts', import.meta.url), { type: 'module' }),
  onGesture,
  connect,
};
