import type { TurnResult } from '../../app/phrases/phrases-state';
import { SELF_MARKS, type SelfMark } from '../../core/today/grade';
import { useSelected, useSession } from '../state/session-context';
import { SELF_MARK_SIGNS } from './self-mark-signs';
import { TurnPicture } from './turn-picture';

const MarksSoFar = ({ marks }: { readonly marks: readonly SelfMark[] }) => {
  const counted = SELF_MARKS.map(
    (mark) => `${SELF_MARK_SIGNS[mark].text} ${marks.filter((each) => each === mark).length}`,
  );
  return (
    <p className="marks-so-far">
      <span aria-hidden="true">
        {marks
          .slice(-12)
          .map((mark) => SELF_MARK_SIGNS[mark].sign)
          .join(' ')}
      </span>
      <span className="unseen">So far: {counted.join(', ')}</span>
    </p>
  );
};

/** Three buttons to mark the answer by one's own ear; each has a key. */
const SelfMarks = ({ now }: { readonly now: SelfMark | null }) => {
  const { commands } = useSession();
  return (
    <fieldset className="self-marks">
      <legend className="unseen">How was it?</legend>
      {SELF_MARKS.map((mark, i) => (
        <button
          type="button"
          key={mark}
          className="tool"
          aria-pressed={now === mark}
          aria-keyshortcuts={String(i + 1)}
          onClick={() => commands.markAnswer(mark)}
        >
          <span aria-hidden="true">{SELF_MARK_SIGNS[mark].sign}</span> {SELF_MARK_SIGNS[mark].text}{' '}
          <kbd>{i + 1}</kbd>
        </button>
      ))}
    </fieldset>
  );
};

const HearAgain = ({ last }: { readonly last: TurnResult }) => {
  const { commands } = useSession();
  const hearing = useSelected((state) => state.trades.hearing);
  return (
    <>
      <button
        type="button"
        className="tool"
        aria-pressed={hearing === 'call'}
        onClick={() => commands.hearTurn('call')}
      >
        Hear the call
      </button>
      {(last.heard ?? []).length > 0 && (
        <button
          type="button"
          className="tool"
          aria-pressed={hearing === 'answer'}
          onClick={() => commands.hearTurn('answer')}
        >
          Hear your answer
        </button>
      )}
    </>
  );
};

/** What came of the last answer, and what can be done about the next: marked, called again, louder, heard again. */
export const TradeResult = () => {
  const { commands } = useSession();
  const { last, marks } = useSelected((state) => state.trades);
  const on = useSelected((state) => state.settings.trade.on && state.warmUp === null);
  const leads = useSelected((state) => state.settings.partner.mode === 'lead');
  const echoes = useSelected((state) => state.settings.partner.mode === 'echo');
  const playing = useSelected((state) => state.status.kind === 'playing');
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  const channel = useSelected((state) => state.settings.mix.channels.lead);
  if (!on || (last === null && !playing)) return null;
  const louder = (): void =>
    commands.setChannel('lead', { muted: false, gain: Math.min(1, channel.gain + 0.1) });
  return (
    <section className="trade-result" aria-label="Your last answer">
      {last?.mark && !leads && (
        <p className="trade-said" aria-live="polite">
          <b>
            <span aria-hidden="true">{SELF_MARK_SIGNS[last.mark].sign}</span>{' '}
            {SELF_MARK_SIGNS[last.mark].text}.
          </b>{' '}
          {last.sentence}
        </p>
      )}
      {!playing && last !== null && <TurnPicture result={last} />}
      <div className="trade-tools">
        {!listening && !leads && <SelfMarks now={last?.mark ?? null} />}
        {playing ? (
          <>
            {!listening && echoes && (
              <button
                type="button"
                className="tool tap-it"
                aria-keyshortcuts="K"
                onClick={commands.tapAnswer}
              >
                Tap it <kbd>K</kbd>
              </button>
            )}
            {!leads && (
              <button type="button" className="tool" aria-keyshortcuts="A" onClick={commands.callAgain}>
                Call again <kbd>A</kbd>
              </button>
            )}
            <button type="button" className="tool" disabled={channel.gain >= 1} onClick={louder}>
              Louder
            </button>
          </>
        ) : (
          last !== null && <HearAgain last={last} />
        )}
        {marks.length > 0 && <MarksSoFar marks={marks} />}
      </div>
    </section>
  );
};
