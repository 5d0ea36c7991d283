import { useCallback, useRef } from 'react';
import { useSelected, useSession } from '../state/session-context';
import { useFrame } from '../state/use-frame';

/** Whether the band counts in now. */
export const useCounting = (): boolean =>
  useSelected((state) => state.status.kind === 'playing' && state.now.kind === 'count-in');

/** The number that is counted, written straight to the page as it is heard. */
export const CountNumber = () => {
  const { live } = useSession();
  const number = useRef<HTMLElement>(null);
  const draw = useCallback(() => {
    const playhead = live.playhead();
    const text = playhead?.section.kind === 'count-in' ? String(playhead.beat + 1) : '';
    if (number.current && number.current.textContent !== text) number.current.textContent = text;
  }, [live]);
  useFrame(true, draw);
  return <b className="count-number" ref={number} aria-hidden="true" />;
};

/** The count before the band comes in, large. */
export const CountInSign = () =>
  useCounting() ? (
    <section className="turn count-in" data-turn="listen" aria-label="Count-in">
      <strong>Count-in</strong>
      <CountNumber />
    </section>
  ) : null;
