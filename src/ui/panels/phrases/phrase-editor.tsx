import { useState } from 'react';
import { homeChord } from '../../../core/chart/home-chord';
import { printPhrase } from '../../../core/phrase/print-phrase';
import { readPhrase } from '../../../core/phrase/read-phrase';
import { type KeptPhrase, PHRASE_LIMITS } from '../../../core/phrasebook/kept-phrase';
import { checkPhrase } from '../../../core/phrasebook/phrase-check';
import { CALL_LEVELS, LEVEL_WORDS } from '../../../core/practice/call-levels';
import { CallNotation } from '../../chart/call-notation';
import { Choice } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';
import { MelodyTab } from './melody-tab';

interface Props {
  /** The phrase that is changed; null for a new one. */
  readonly kept: KeptPhrase | null;
  readonly onDone: () => void;
}

/** Longest text of a phrase, in characters. */
const LONGEST = 600;

/** What could not be read, and what to know before playing. */
const Remarks = ({ reading }: { readonly reading: ReturnType<typeof readPhrase> }) => {
  const { technique } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.tune);
  const { phrase, problems } = reading;
  return (
    <ul className="marks" aria-live="polite">
      {problems.map(({ line, column, what, advice }) => (
        <li key={`${line} ${column} ${what}`}>
          Line {line}, column {column}: {what} {advice}
        </li>
      ))}
      {checkPhrase(phrase, { harp, technique, home: homeChord(chart) }).map((remark) => (
        <li key={remark}>{remark}</li>
      ))}
    </ul>
  );
};

/** Writing a phrase as tab: seen as holes over rhythm signs as it is typed, heard, and kept. */
export const PhraseEditor = ({ kept, onDone }: Props) => {
  const { commands } = useSession();
  const meter = useSelected((state) => state.tune.chart.meter.name);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const [text, setText] = useState(kept === null ? '' : printPhrase(kept.phrase, 'signs'));
  const [name, setName] = useState(kept?.name ?? '');
  const [level, setLevel] = useState(kept?.level ?? 2);
  const reading = readPhrase(text, kept?.phrase.meter ?? meter);
  const { phrase } = reading;
  const empty = phrase.notes.length === 0;
  const keep = (): void => {
    if (kept === null) commands.keepPhrase(name, phrase, level);
    else commands.changePhrase(kept.id, { name: name.trim() || kept.name, level, phrase });
    setText('');
    setName('');
    onDone();
  };
  return (
    <>
      <label className="field">
        <span className="label">Tab</span>
        <textarea
          className="text-box"
          rows={3}
          spellCheck={false}
          maxLength={LONGEST}
          placeholder="-2:q -3':e -3 4:h | -2:h r"
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      {!empty && <CallNotation phrase={phrase} from={null} />}
      {!empty && <Remarks reading={reading} />}
      <p className="hint">
        4 is blow, -4 draw, each ' a semitone of bend, r a rest; after a colon w, h, q, e, s with . or t.
        -4~-4'~-4 bends and comes back, -1..-4 slides, -4*-5 shakes, (1 4) sounds together, &gt; is an accent;
        pp p mp mf f ff hold until the next.
      </p>
      {kept === null && <MelodyTab onTab={setText} />}
      <div className="pair">
        <label className="field">
          <span className="label">Name</span>
          <input
            className="text-box"
            maxLength={PHRASE_LIMITS.name}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
        </label>
        <Choice
          label="Level"
          value={level}
          options={CALL_LEVELS.map((value) => ({ value, text: LEVEL_WORDS[value] }))}
          onChoose={setLevel}
        />
      </div>
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          disabled={empty || playing}
          onClick={() => commands.hearPhrase(phrase)}
        >
          Hear it
        </button>
        <button type="button" className="tool" disabled={empty} onClick={keep}>
          {kept === null ? 'Keep the phrase' : 'Keep the change'}
        </button>
        {kept !== null && (
          <button type="button" className="tool" onClick={onDone}>
            Leave it as it was
          </button>
        )}
      </div>
      {kept !== null && kept.earlier.length > 0 && (
        <details>
          <summary>Earlier versions</summary>
          {kept.earlier.map((earlier) => {
            const tab = printPhrase(earlier, 'signs');
            return (
              <p key={tab}>
                <button type="button" className="tool" onClick={() => setText(tab)}>
                  {tab}
                </button>
              </p>
            );
          })}
        </details>
      )}
    </>
  );
};
