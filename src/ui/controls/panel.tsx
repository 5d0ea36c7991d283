import { type ReactNode, startTransition, useContext, useEffect, useId, useRef, useState } from 'react';
import { PanelPagesContext, PanelRoomContext } from '../state/panel-context';
import { useBack } from '../state/use-back';

const Pages = ({ title }: { readonly title: string }) => {
  const neighbours = useContext(PanelPagesContext);
  if (neighbours === null || neighbours.pages.length < 2) return null;
  return (
    <nav className="panel-pages" aria-label={`Beside ${title}`}>
      {neighbours.pages.map(({ id, text }) => (
        <button
          key={id}
          type="button"
          className="plain"
          aria-current={neighbours.open === id ? 'page' : undefined}
          onClick={() => neighbours.onOpen(id)}
        >
          {text}
        </button>
      ))}
    </nav>
  );
};

interface Props {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/**
 * A panel beside the stand, which makes room for it where the window is wide; on a phone it covers the stand but for
 * the transport. It does not block the rest: the chart goes on and can be played while the mixer is open. Escape and
 * going back close it, focus returns to its opener.
 */
export const Panel = ({ title, onClose, children }: Props) => {
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  const room = useContext(PanelRoomContext);
  const [filled, setFilled] = useState(false);
  // What is in it comes in a task of its own: making room for it on the stand is work enough for one.
  useEffect(() => {
    if (room) startTransition(() => setFilled(true));
  }, [room]);
  useEffect(() => {
    const opener = document.activeElement;
    heading.current?.focus();
    return () => {
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    };
  }, []);
  useBack(onClose);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && !event.defaultPrevented) onClose();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [onClose]);
  return (
    <section className="panel" aria-labelledby={id}>
      <header>
        <h2 id={id} ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <Pages title={title} />
        <button type="button" className="plain" onClick={onClose}>
          Close
        </button>
      </header>
      <div className="panel-body">{filled && children}</div>
    </section>
  );
};
