import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Room for a drawing, in CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element's inside in CSS pixels, kept up to date; nothing before it is drawn. */
export const useSize = <Element extends HTMLElement>(): readonly [RefObject<Element | null>, Size | null] => {
  const box = useRef<Element>(null);
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = element;
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [box, size];
};
