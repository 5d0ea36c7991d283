import { type RefObject, useLayoutEffect } from 'react';

/** Cells up to this much wider than high have no room for two signs side by side. */
const SIDE_BY_SIDE = 7 / 5;

/** Cells no larger than this, in px, have room for one line of one sign. */
const ONE_SIGN = { width: 34, height: 27 } as const;

const shapeOf = (width: number, height: number): string => {
  if (width <= ONE_SIGN.width && height <= ONE_SIGN.height) return 'small';
  return width <= SIDE_BY_SIDE * height ? 'high' : 'wide';
};

/**
 * Tells the comb's style sheet how large a cell of it is, in px, and of what shape. All are of one size, so that one is
 * measured for all: forty cells that each ask their own box (`container: size`) cost a third of every layout.
 */
export const useCellSize = (comb: RefObject<HTMLElement | null>): void => {
  useLayoutEffect(() => {
    const element = comb.current;
    const [cell, hole] = [element?.querySelector('.pill'), element?.querySelector('.hole')];
    if (!element || !cell || !hole) return;
    const watch = new ResizeObserver((boxes) => {
      for (const { target, contentRect } of boxes) {
        const { width, height } = contentRect;
        if (target === hole) element.style.setProperty('--hole', `${height}px`);
        else {
          element.style.setProperty('--wide', `${width}px`);
          element.style.setProperty('--high', `${height}px`);
          element.dataset.cells = shapeOf(width, height);
        }
      }
    });
    watch.observe(cell);
    watch.observe(hole);
    return () => watch.disconnect();
  }, [comb]);
};
