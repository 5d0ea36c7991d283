import { useMemo, useState } from 'react';
import { positionTitle } from '../../../core/harp/positions';
import { printPhrase } from '../../../core/phrase/print-phrase';
import { harpsForMelody, type MelodyHarp, readMelody } from '../../../core/phrasebook/melody-harps';
import { keyName, pitchName } from '../../../core/theory/pitch';
import { asMidi } from '../../../core/theory/units';
import { useSelected } from '../../state/session-context';

/** How many harps are shown. */
const SHOWN = 5;

/** Longest melody that is typed, in characters. */
const LONGEST = 400;

const octaveWords = (octaves: number): string =>
  octaves === 0
    ? ''
    : `, ${Math.abs(octaves) === 1 ? 'an octave' : 'two octaves'} ${octaves > 0 ? 'up' : 'down'}`;

const missingWords = ({ missing }: MelodyHarp): string =>
  missing.length === 0
    ? 'Every note is there.'
    : `Not to be had: ${missing.map((key) => pitchName(asMidi(key))).join(', ')}.`;

/** A melody in note names becomes tab: the harps that play it best, the easiest first. */
export const MelodyTab = ({ onTab }: { readonly onTab: (tab: string) => void }) => {
  const { tuning, technique } = useSelected((state) => state.settings);
  const meter = useSelected((state) => state.tune.chart.meter.name);
  const [text, setText] = useState('');
  const melody = useMemo(() => readMelody(text), [text]);
  const harps = useMemo(
    () => harpsForMelody(melody.notes, { tuning, technique, meter }).slice(0, SHOWN),
    [melody, tuning, technique, meter],
  );
  return (
    <details>
      <summary>From a melody in note names</summary>
      <label className="field">
        <span className="label">Melody</span>
        <input
          className="text-box"
          maxLength={LONGEST}
          spellCheck={false}
          placeholder="G4:q A4:e B4 D5:h"
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      {melody.unread.length > 0 && (
        <p role="status">
          Not read: {melody.unread.join(' ')}. Write a letter, # or b, the octave, and a length after a colon.
        </p>
      )}
      <ol className="rows">
        {harps.map((harp) => {
          const tab = printPhrase(harp.phrase, 'signs');
          return (
            <li key={harp.harpKey} className="group">
              <strong>
                {keyName(harp.harpKey, 'major')} harp, {positionTitle(harp.position)}
                {octaveWords(harp.octaves)}
              </strong>
              <p className="phrase-tab">{tab}</p>
              <p className="hint">{missingWords(harp)}</p>
              <button
                type="button"
                className="tool"
                disabled={harp.phrase.notes.length === 0}
                onClick={() => onTab(tab)}
              >
                Take this tab<span className="unseen"> for a {keyName(harp.harpKey, 'major')} harp</span>
              </button>
            </li>
          );
        })}
      </ol>
    </details>
  );
};
