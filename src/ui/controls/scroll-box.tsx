import { type ReactNode, useEffect, useRef, useState } from 'react';

interface Props {
  readonly className: string;
  readonly children: ReactNode;
}

/** A part of the page that scrolls where it is too long: only then the keyboard stops at it, and the arrows are its own. */
export const ScrollBox = ({ className, children }: Props) => {
  const box = useRef<HTMLDivElement>(null);
  const [long, setLong] = useState(false);
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    // Told after the browser has laid the page out: asking at once would make it do so in the middle of a change.
    const watch = new ResizeObserver(() => setLong(element.scrollHeight > element.clientHeight + 1));
    for (const part of [element, ...element.children]) watch.observe(part);
    return () => watch.disconnect();
  });
  return (
    <div
      ref={box}
      className={className}
      tabIndex={long ? 0 : undefined}
      data-own-keys={long ? '' : undefined}
    >
      {children}
    </div>
  );
};
