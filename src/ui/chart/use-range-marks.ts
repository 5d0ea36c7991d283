import { type PointerEvent, useEffect, useRef, useState } from 'react';
import type { BarRange } from '../../core/chart/chart';
import { useSelected, useSession } from '../state/session-context';

const ordered = (a: number, b: number): BarRange => ({ from: Math.min(a, b), to: Math.max(a, b) });

/** Whether a bar, from 0, lies in a range; both ends belong to it. */
export const holds = (range: BarRange | null, bar: number): boolean =>
  range !== null && bar >= range.from && bar <= range.to;

/** How long a finger rests on a bar until a range begins there, in ms: longer than any tap. */
const LONG_PRESS_MS = 500;

/** A finger that rests: the bar it rested on, until a second tap ends the range. */
const useLongPress = () => {
  const [first, setFirst] = useState<number | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const swallow = useRef(false);
  const release = (): void => clearTimeout(timer.current);
  useEffect(() => () => clearTimeout(timer.current), []);
  return {
    first,
    release,
    forget: () => setFirst(null),
    press: (bar: number) => {
      release();
      swallow.current = false;
      timer.current = setTimeout(() => {
        swallow.current = true;
        setFirst(bar);
      }, LONG_PRESS_MS);
    },
    /** Whether a click only ends the long press. */
    swallows: (): boolean => {
      const does = swallow.current;
      swallow.current = false;
      return does;
    },
  };
};

/**
 * The range to repeat, marked on the bars: by a drag, by a click and a shift-click, or on touch by a long press on one
 * end and a tap on the other. A plain click moves there.
 */
export const useRangeMarks = () => {
  const { commands } = useSession();
  const range = useSelected((state) => state.settings.plan.repeat);
  const clicked = useSelected((state) => state.cursor);
  const [drag, setDrag] = useState<{ readonly from: number; readonly to: number } | null>(null);
  const finger = useLongPress();
  const dragged = drag !== null && drag.from !== drag.to ? ordered(drag.from, drag.to) : null;
  return {
    marked: dragged ?? range,
    /** The bar a range begins or ends at that waits for its other end. */
    waiting: finger.first,
    begin: (event: PointerEvent, bar: number): void => {
      if (event.pointerType === 'touch') finger.press(bar);
      else if (event.button === 0 && !event.shiftKey) setDrag({ from: bar, to: bar });
    },
    enter: (bar: number): void => setDrag((now) => (now === null ? null : { ...now, to: bar })),
    end: (): void => {
      finger.release();
      if (dragged !== null) commands.repeat(dragged);
      setDrag(null);
    },
    leave: (): void => {
      finger.release();
      setDrag(null);
    },
    click: (shift: boolean, bar: number): void => {
      if (finger.swallows()) return;
      if (finger.first !== null) {
        commands.repeat(ordered(finger.first, bar));
        finger.forget();
      } else if (shift) commands.repeat(ordered(clicked, bar));
      else {
        if (range !== null && !holds(range, bar)) commands.repeat(null);
        commands.moveTo(bar);
      }
    },
  };
};
