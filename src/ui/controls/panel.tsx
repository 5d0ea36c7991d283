import { type ReactNode, useEffect, useId, useRef } from 'react';

interface Props {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/**
 * A panel over the right edge of the page (the whole page on a phone). It does not block the rest:
 * the chart goes on and can be played while a panel is open. Escape closes it, focus returns to its opener.
 */
export const Sheet = ({ title, onClose, children }: Props) => {
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    const opener = document.activeElement;
    heading.current?.focus();
    return () => {
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    };
  }, []);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && !event.defaultPrevented) onClose();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [onClose]);
  return (
    <section className="sheet" aria-labelledby={id}>
      <header>
        <h2 id={id} ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <button type="button" className="plain" onClick={onClose}>
          Close
        </button>
      </header>
      <div className="sheet-body">{children}</div>
    </section>
  );
};
