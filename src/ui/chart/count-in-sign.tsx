import { useCallback, useRef } from 'react';
import { useSelected, useSession } from '../state/session-context';
import { useFrame } from '../state/use-frame';

/** The count before the band comes in, large; its number is written straight to the page as it is heard. */
export const CountInSign = () => {
  const { live } = useSession();
  const counting = useSelected((state) => state.status.kind === 'playing' && state.now.kind === 'count-in');
  const number = useRef<HTMLElement>(null);
  const draw = useCallback(() => {
    const heard = live.heard();
    const text = heard?.section.kind === 'count-in' ? String(heard.beat + 1) : '';
    if (number.current && number.current.textContent !== text) number.current.textContent = text;
  }, [live]);
  useFrame(counting, draw);
  if (!counting) return null;
  return (
    <section className="turn count-in" data-turn="listen" aria-label="Count-in">
      <strong>Count-in</strong>
      <b ref={number} aria-hidden="true" />
    </section>
  );
};
