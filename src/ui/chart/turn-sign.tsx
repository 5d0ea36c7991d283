import { printPhrase } from '../../core/practice/print-phrase';
import { TURN_WORDS } from '../../core/practice/trading';
import { usePractice } from '../state/practice-context';
import { useSelected } from '../state/session-context';

/** Who plays now, readable from across a room; it changes at bar lines only. */
export const TurnSign = () => {
  const { trading } = usePractice();
  const bar = useSelected((state) => state.now.formBar);
  const tabStyle = useSelected((state) => state.settings.tabStyle);
  if (trading === null) return null;
  const turn = bar === null ? 'listen' : (trading.turns[bar] ?? 'answer');
  const call = trading.calls.findLast((each) => bar !== null && each.bar <= bar) ?? trading.calls[0];
  return (
    <section className="turn" data-turn={turn} aria-label="Call and answer" aria-live="polite">
      <strong>{TURN_WORDS[turn]}</strong>
      {call && <p aria-hidden="true">{printPhrase(call.phrase, tabStyle)}</p>}
    </section>
  );
};
