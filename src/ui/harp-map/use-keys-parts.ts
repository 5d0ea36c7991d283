import { type RefObject, useEffect, useState } from 'react';
import type { MarkedSound } from '../../core/fit/mark-sounds';
import { partsFor } from '../controls/keys-layout';

/** In how many parts the piano of the Keys drawing fits the room it is given, measured anew with every new size. */
export const useKeysParts = (room: RefObject<HTMLElement | null>, marks: readonly MarkedSound[]): number => {
  const [parts, setParts] = useState(1);
  useEffect(() => {
    const element = room.current;
    if (!element) return;
    const update = (): void =>
      setParts(partsFor(marks, { width: element.clientWidth, height: element.clientHeight }));
    update();
    const watch = new ResizeObserver(update);
    watch.observe(element);
    return () => watch.disconnect();
  }, [room, marks]);
  return parts;
};
