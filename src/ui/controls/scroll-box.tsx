import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';

interface Props {
  readonly className: string;
  readonly children: ReactNode;
}

/** A part of the page that scrolls where it is too long: only then the keyboard stops at it, and the arrows are its own. */
export const ScrollBox = ({ className, children }: Props) => {
  const box = useRef<HTMLDivElement>(null);
  const [long, setLong] = useState(false);
  useLayoutEffect(() => {
    if (box.current !== null) setLong(box.current.scrollHeight > box.current.clientHeight + 1);
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
