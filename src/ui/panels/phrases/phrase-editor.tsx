import { useState } from 'react';
import { homeChord } from '../../../core/chart/home-chord';
import { printPhrase } from '../../../core/phrase/print-phrase';
import type { PhraseReading } from '../../../core/phrase/read-phrase';
import type { KeptPhrase } from '../../../core/phrasebook/kept-phrase';
import { checkPhrase } from '../../../core/phrasebook/phrase-check';
import { tagsOf } from '../../../core/theory/kept-tags';
import { CallNotation } from '../../chart/call-notation';
import { useSelected, useSession } from '../../state/session-context';
import { GridEditor } from './grid-editor';
import { MelodyTab } from './melody-tab';
import { type Facts, PhraseFacts } from './phrase-facts';
import { PlayInRow } from './play-in-row';
import { usePhraseDraft } from './use-phrase-draft';

interface Props {
  /** The phrase that is changed; null for a new one. */
  readonly kept: KeptPhrase | null;
  readonly onDone: () => void;
}

/** Longest text of a phrase, in characters. */
const LONGEST = 4000;

/** What could not be read, and what to know before playing. */
const Remarks = ({ reading }: { readonly reading: PhraseReading }) => {
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

const NEW: Facts = { name: '', level: 2, tags: '', words: '' };

const factsOf = ({ name, level, tags, words }: KeptPhrase): Facts => ({
  ...{ name, level, words },
  tags: tags.join(', '),
});

/** What the phrase was before, each to be had again. */
const Earlier = ({ kept, onTab }: { readonly kept: KeptPhrase; readonly onTab: (tab: string) => void }) => (
  <details>
    <summary>Earlier versions</summary>
    <div className="group">
      {kept.earlier.map((earlier) => {
        const tab = printPhrase(earlier, 'signs');
        return (
          <p key={tab}>
            <button type="button" className="tool" onClick={() => onTab(tab)}>
              {tab}
            </button>
          </p>
        );
      })}
    </div>
  </details>
);

/** Writing a phrase, as tab or on a grid: seen as holes over rhythm signs as it comes, heard, and kept. */
export const PhraseEditor = ({ kept, onDone }: Props) => {
  const { commands } = useSession();
  const meter = useSelected((state) => state.tune.chart.meter.name);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const draft = usePhraseDraft(
    kept === null ? '' : printPhrase(kept.phrase, 'signs'),
    kept?.phrase.meter ?? meter,
  );
  const [facts, setFacts] = useState(kept === null ? NEW : factsOf(kept));
  const { phrase } = draft.reading;
  const empty = phrase.notes.length === 0;
  const keep = (): void => {
    const all = { ...facts, phrase, tags: tagsOf(facts.tags) };
    if (kept === null) commands.keepPhrase(all);
    else commands.changePhrase(kept.id, { ...all, name: facts.name.trim() || kept.name });
    draft.type('');
    setFacts(NEW);
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
          value={draft.text}
          onChange={(event) => draft.type(event.target.value)}
        />
      </label>
      {!empty && <CallNotation phrase={phrase} from={null} />}
      {!empty && <Remarks reading={draft.reading} />}
      <GridEditor draft={draft} />
      <PlayInRow onPhrase={draft.draw} />
      <p className="hint">
        4 is blow, -4 draw, each ' a semitone of bend, r a rest; after a colon w, h, q, e, s with . or t.
        -4~-4'~-4 bends and comes back, -1..-4 slides, -4*-5 shakes, (1 4) sounds together, &gt; is an accent;
        pp p mp mf f ff hold until the next.
      </p>
      {kept === null && <MelodyTab onTab={draft.type} />}
      <PhraseFacts facts={facts} onChange={setFacts} />
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
      {kept !== null && kept.earlier.length > 0 && <Earlier kept={kept} onTab={draft.type} />}
    </>
  );
};
