/** Calls back every `milliseconds`, also while the page is hidden. Returns what ends it. */
export const startPulse = (milliseconds: number, beat: () => void): (() => void) => {
  // The page's own timer slows down in a hidden page, but it beats: until the worker does, and where it never will.
  let endInterval = startInterval(milliseconds, beat);
  try {
    const worker = new Worker(new URL('./pulse-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = () => {
      endInterval();
      beat();
    };
    worker.onerror = () => {
      endInterval();
      endInterval = startInterval(milliseconds, beat);
    };
    worker.postMessage(milliseconds);
    return () => {
      worker.terminate();
      endInterval();
    };
  } catch {
    return () => endInterval();
  }
};

const startInterval = (milliseconds: number, beat: () => void): (() => void) => {
  const timer = setInterval(beat, milliseconds);
  return () => clearInterval(timer);
};
