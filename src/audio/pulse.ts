/** Calls back every `milliseconds`, also while the page is hidden. Returns what ends it. */
export const startPulse = (milliseconds: number, beat: () => void): (() => void) => {
  try {
    const worker = new Worker(new URL('./pulse-worker.ts', import.meta.url), { type: 'module' });
    let fallback: (() => void) | null = null;
    worker.onmessage = beat;
    worker.onerror = () => {
      fallback ??= startInterval(milliseconds, beat);
    };
    worker.postMessage(milliseconds);
    return () => {
      worker.terminate();
      fallback?.();
    };
  } catch {
    return startInterval(milliseconds, beat);
  }
};

/** The page's own timer, for browsers without module workers: it slows down in a hidden page, but it beats. */
const startInterval = (milliseconds: number, beat: () => void): (() => void) => {
  const timer = setInterval(beat, milliseconds);
  return () => clearInterval(timer);
};
