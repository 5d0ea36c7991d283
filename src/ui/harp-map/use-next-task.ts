import { type RefObject, useDeferredValue, useLayoutEffect } from 'react';

/**
 * A value as it is drawn, which is a task after the rest of the page has been drawn with it, and laid out in that task:
 * together they are too much for one where the processor is slow.
 *
 * @param place what is drawn with it
 */
export const useNextTask = <Value>(value: Value, place: RefObject<HTMLElement | null>): Value => {
  const drawn = useDeferredValue(value);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever something else is drawn
  useLayoutEffect(() => void place.current?.getBoundingClientRect(), [place, drawn]);
  return drawn;
};
