import { messageOf } from '../../core/theory/thrown';
import type { BandStatus } from './band';
import type { BandGround } from './band-ground';

/**
 * How long a context may take to start before the browser is taken to wait for a gesture. Some take 0.9 s (measured);
 * one that takes longer still is looked at again when it starts.
 */
const START_MS = 1200;

/**
 * Asks a context to run, at once and within the gesture; resolves when it does, is refused, or takes long. `onRunning`
 * is called whenever it runs at last.
 */
export const startContext = async (context: AudioContext, onRunning: () => void): Promise<void> => {
  if (context.state === 'running') return;
  const late = new Promise<void>((resolve) => setTimeout(resolve, START_MS));
  await Promise.race([context.resume().then(onRunning, () => undefined), late]);
};

/** A new context, or the status of a band that gets none. */
export const contextFrom = ({
  createContext,
}: BandGround): AudioContext | (BandStatus & { kind: 'failed' }) => {
  try {
    return (
      createContext() ?? { kind: 'failed', why: 'no web audio', detail: 'This browser has no Web Audio' }
    );
  } catch (error) {
    return { kind: 'failed', why: 'device', detail: messageOf(error) };
  }
};
