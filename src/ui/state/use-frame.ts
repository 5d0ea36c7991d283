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
