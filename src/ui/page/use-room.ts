import { type RefObject, useLayoutEffect } from 'react';
import type { PanelId } from './entries';

/** What takes its new room after the page has, in this order. */
const AFTER = ['.fit, .form > .chart', '.reading > .map'];

/** Holds elements at the size they have; returns what lets them go. */
const held = (elements: readonly HTMLElement[]): (() => void) => {
  const boxes = elements.map((element) => element.getBoundingClientRect());
  for (const [i, { style }] of elements.entries()) {
    style.width = `${boxes[i]?.width}px`;
    style.height = `${boxes[i]?.height}px`;
  }
  return () => {
    for (const { style } of elements) style.width = style.height = '';
  };
};

/**
 * Moves the page over for a panel, and lays it out there: the page, then chart and cards, then the map in a task each,
 * because all at once they are what opening a panel costs.
 */
export const useRoom = (whole: RefObject<HTMLElement | null>, room: PanelId | null): void => {
  useLayoutEffect(() => {
    const element = whole.current;
    if (element === null || (element.dataset.panel ?? null) === room) return;
    const waiting = AFTER.map((parts) => held([...element.querySelectorAll<HTMLElement>(parts)]));
    if (room === null) delete element.dataset.panel;
    else element.dataset.panel = room;
    element.getBoundingClientRect();
    let next = setTimeout(function letGo() {
      waiting.shift()?.();
      element.getBoundingClientRect();
      if (waiting.length > 0) next = setTimeout(letGo);
    });
    return () => {
      clearTimeout(next);
      for (const letGo of waiting) letGo();
    };
  }, [whole, room]);
};
