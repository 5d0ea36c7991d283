import { tab, tabGroup } from '../../core/harp/tab';
import { phraseWords } from '../../core/phrase/phrase-words';
import { TURN_WORDS } from '../../core/practice/trade-modes';
import { useSelected } from '../state/session-context';
import { useCallNote } from '../state/use-call-note';
import { useTradingTurn } from '../state/use-turn';
import { CallNotation } from './call-notation';
import { TurnRing } from './turn-ring';

/** The one note to play now, large. */
const NoteNow = () => {
  const sounds = useCallNote();
  const style = useSelected((state) => state.settings.tabStyle);
  const [only] = sounds;
  const text = only === undefined ? '' : sounds.length === 1 ? tab(only, style) : tabGroup(sounds, style);
  return (
    <b className="asked" aria-hidden="true">
      {text}
    </b>
  );
};

/** Who plays now, readable from across a room; it changes at bar lines only. */
export const TurnSign = () => {
  const turn = useTradingTurn();
  const playing = useSelected((state) => state.status.kind === 'playing' && state.now.formBar !== null);
  // Announced with everything else then, and not twice.
  const announced = useSelected((state) => state.settings.announcements !== 'off');
  if (turn === null) return null;
  const { kind, span, call } = turn;
  return (
    <section
      className="turn trading"
      data-turn={kind}
      aria-label="Call and answer"
      aria-live={announced ? 'off' : 'polite'}
    >
      {playing && <TurnRing span={span} />}
      <strong>{TURN_WORDS[kind]}</strong>
      {playing && <NoteNow />}
      {call && (
        <>
          <CallNotation phrase={call.phrase} from={playing ? span.from : null} />
          {/* To be read when wanted: spoken by itself it would cover the band. */}
          <p className="unseen" aria-live="off">
            {phraseWords(call.phrase)}
          </p>
        </>
      )}
    </section>
  );
};
