import { useEffect } from 'react';

/** Calls `draw` once per animation frame while `running`, for what changes too often to render. */
export const useFrame = (running: boolean, draw: () => void): void => {
  useEffect(() => {
    if (!running) return;
    let frame = 0;
    const loop = (): void => {
      draw();
      frame = requestAnimationFrame(loop);
    };
    frame = requestAnimationFrame(loop);
    return () => cancelAnimationFrame(frame);
  }, [running, draw]);
};

/** True where the player asked the system for less motion: what moves by itself then stands still, or jumps. */
export const isStill = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;
