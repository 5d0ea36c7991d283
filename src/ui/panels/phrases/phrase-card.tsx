import { memo } from 'react';
import { homeChord } from '../../../core/chart/home-chord';
import { printPhrase } from '../../../core/phrase/print-phrase';
import type { KeptPhrase } from '../../../core/phrasebook/kept-phrase';
import { checkPhrase } from '../../../core/phrasebook/phrase-check';
import { LEVEL_WORDS } from '../../../core/practice/call-levels';
import { useSelected, useSession } from '../../state/session-context';

interface Props {
  readonly kept: KeptPhrase;
  /** False for the starter set, which is copied to be changed. */
  readonly own: boolean;
  readonly onEdit: () => void;
}

/** A phrase with what can be done with it, and what to know before. */
export const PhraseCard = memo(({ kept, own, onEdit }: Props) => {
  const { commands } = useSession();
  const { tabStyle, technique, position } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.tune);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const remarks = checkPhrase(kept.phrase, { harp, technique, home: homeChord(chart) });
  return (
    <li className="group">
      <h4>{kept.name}</h4>
      <p className="phrase-tab">{printPhrase(kept.phrase, tabStyle)}</p>
      <p className="hint">
        {LEVEL_WORDS[kept.level].split(':')[0]} level
        {kept.position === position ? '' : `; written for position ${kept.position}`}
        {kept.tags.length > 0 && `; ${kept.tags.join(', ')}`}
        {kept.words !== '' && `. ${kept.words}`}
      </p>
      {remarks.length > 0 && (
        <ul className="marks">
          {remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          disabled={playing}
          onClick={() => commands.hearPhrase(kept.phrase)}
        >
          Hear <span className="unseen">{kept.name}</span>
        </button>
        <button type="button" className="tool" onClick={() => commands.callWith([kept.id])}>
          Trade it<span className="unseen">: {kept.name}</span>
        </button>
        {own && (
          <button type="button" className="tool" onClick={onEdit}>
            Change <span className="unseen">{kept.name}</span>
          </button>
        )}
        <button type="button" className="tool" onClick={() => commands.duplicatePhrase(kept.id)}>
          Duplicate <span className="unseen">{kept.name}</span>
        </button>
        <button
          type="button"
          className="tool"
          onClick={() => void commands.savePhraseMidi(kept.name, kept.phrase)}
        >
          MIDI<span className="unseen"> file of {kept.name}</span>
        </button>
        {own && (
          <button type="button" className="tool" onClick={() => commands.dropPhrase(kept.id)}>
            Delete <span className="unseen">{kept.name}</span>
          </button>
        )}
      </div>
    </li>
  );
});
