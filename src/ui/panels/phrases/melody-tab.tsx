import { useMemo, useState } from 'react';
import type { Melody } from '../../../core/melody/melody';
import { harpsForMelody, MENDS, type Mend, readMelody } from '../../../core/melody/melody-harps';
import { Choice, optionsOf } from '../../controls/choice';
import { useSelected } from '../../state/session-context';
import { MelodyFile } from './melody-file';
import { MelodyHarpRow } from './melody-harp-row';

/** How many harps are shown at first. */
const SHOWN = 4;

/** Longest melody that is typed, in characters. */
const LONGEST = 400;

const MEND_WORDS: Readonly<Record<Mend, string>> = {
  rest: 'A rest',
  octave: 'The same note in the nearest octave',
  near: 'The nearest note there is',
};

/** A melody in note names or from a file becomes tab: the harps and positions that play it, the easiest first. */
export const MelodyTab = ({ onTab }: { readonly onTab: (tab: string) => void }) => {
  const { tuning, technique, harpKey } = useSelected((state) => state.settings);
  const meter = useSelected((state) => state.tune.chart.meter.name);
  const [text, setText] = useState('');
  const [melodies, setMelodies] = useState<readonly Melody[]>([]);
  const [chosen, setChosen] = useState(0);
  const [mend, setMend] = useState<Mend>('rest');
  const [all, setAll] = useState(false);
  const typed = useMemo(() => readMelody(text), [text]);
  const opened = text === '' ? melodies[chosen] : undefined;
  const harps = useMemo(() => {
    const tonic = opened?.tonic ?? null;
    return harpsForMelody(opened?.notes ?? typed.notes, { tuning, technique, meter, tonic, mend });
  }, [opened, typed, tuning, technique, meter, mend]);
  const shown = harps.slice(0, all ? harps.length : SHOWN);
  return (
    <details>
      <summary>From a melody: note names, or a file</summary>
      <div className="group">
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
        {typed.unread.length > 0 && (
          <p role="status">
            Not read: {typed.unread.join(' ')}. Write a letter, # or b, the octave, and a length after a
            colon.
          </p>
        )}
        <MelodyFile
          melodies={text === '' ? melodies : []}
          chosen={chosen}
          onMelodies={(found) => {
            setText('');
            setChosen(0);
            setMelodies(found);
          }}
          onChoose={setChosen}
        />
        {opened !== undefined && opened.meter !== meter && (
          <p className="hint">
            The melody is in {opened.meter}, the stand in {meter}: its bar lines stand as the stand counts.
          </p>
        )}
        {harps.some(({ missing }) => missing.length > 0) && (
          <Choice
            label="For notes that cannot be played"
            value={mend}
            options={optionsOf(MENDS, MEND_WORDS)}
            onChoose={setMend}
          />
        )}
        <ol className="rows">
          {shown.map((found) => (
            <MelodyHarpRow key={found.harpKey} found={found} inHand={harpKey} onTab={onTab} />
          ))}
        </ol>
        {harps.length > SHOWN && (
          <button type="button" className="tool" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? 'Only the easiest' : `All ${harps.length} harps and positions`}
          </button>
        )}
      </div>
    </details>
  );
};
