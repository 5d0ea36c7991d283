import { type RefObject, useEffect, useState } from 'react';
import type { MarkedSound } from '../../core/fit/mark-sounds';
import { isNarrow, partsFor } from '../controls/keys-layout';

/** How the piano of the Keys drawing is laid, and whether its holes are narrow. */
interface KeysParts {
  readonly parts: number;
  readonly narrow: boolean;
}

/** In how many parts the piano of the Keys drawing fits the room it is given, measured anew with every new size. */
export const useKeysParts = (
  room: RefObject<HTMLElement | null>,
  marks: readonly MarkedSound[],
): KeysParts => {
  const [{ parts, narrow }, setParts] = useState<KeysParts>({ parts: 1, narrow: false });
  useEffect(() => {
    const element = room.current;
    if (!element) return;
    const update = (): void => {
      const { clientWidth: width, clientHeight: height } = element;
      const fitting = partsFor(marks, { width, height });
      setParts({ parts: fitting, narrow: isNarrow(marks, fitting, width) });
    };
    update();
    const watch = new ResizeObserver(update);
    watch.observe(element);
    return () => watch.disconnect();
  }, [room, marks]);
  return { parts, narrow };
};
