import { useMemo } from 'react';
import { gripsFor } from '../../core/fit/grips';
import type { MarkedSound } from '../../core/fit/mark-sounds';
import type { ChordTone } from '../../core/theory/chord';
import { keyName } from '../../core/theory/pitch';
import { DegreeChip } from '../controls/degree-chip';
import { Tap } from '../controls/tap';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';
import { ScaleLine } from './scale-line';
import type { FoundLookUp } from './use-map-view';

/** Groups of holes named. */
const SHOWN = 3;

interface Props {
  readonly found: FoundLookUp;
  readonly marks: readonly MarkedSound[];
  readonly onLeave: () => void;
}

const ToneLine = ({ tone, marks }: { readonly tone: ChordTone; readonly marks: readonly MarkedSound[] }) => {
  const ways = marks.filter(({ chordTone }) => chordTone?.degree === tone.degree);
  const near = ways.filter(({ inReach }) => inReach);
  const plain = useSelected((state) => state.settings.plainWords);
  const names = useNames();
  return (
    <li>
      {!plain && <DegreeChip degree={tone.degree} />}
      {names.note(tone.name)}:{' '}
      {near.length === 0 && <span>{ways.length === 0 ? 'not on this harp' : 'out of reach'}</span>}
      <span className="taps">
        {near.map(({ sound }) => (
          <Tap key={`${sound.hole}${sound.breath}${sound.technique}${sound.bend}`} sound={sound} />
        ))}
      </span>
    </li>
  );
};

const Together = ({ found }: { readonly found: FoundLookUp }) => {
  const harp = useSelected((state) => state.now.tune.harp);
  const technique = useSelected((state) => state.settings.technique);
  const chord = found.kind === 'chord' ? found.chord : null;
  const names = useNames();
  const grips = useMemo(
    () => (chord === null ? [] : gripsFor({ chord, harp, technique }).fitting.slice(0, SHOWN)),
    [chord, harp, technique],
  );
  if (chord === null) return null;
  return (
    <p>
      <span className="label">Together:</span>{' '}
      {grips.length === 0
        ? 'no two of its tones at once.'
        : names.text(`${grips.map(({ label, name }) => `${label} (${name})`).join('; ')}.`)}
    </p>
  );
};

/** In words what the harp in hand has of a chord or scale looked up: its tones, holes together, a scale that fits. */
export const LookedUp = ({ found, marks, onLeave }: Props) => {
  const names = useNames();
  const harp = useSelected((state) => state.now.tune.harp);
  const technique = useSelected((state) => state.settings.technique);
  return (
    <section className="looked-up" aria-label="Looked up" aria-live="polite">
      <header>
        <h3>
          {names.text(found.title)} on the {names.key(keyName(harp.key, 'major'))} harp
        </h3>
        {found.kind === 'chord' && found.rest !== '' && (
          <span className="label">“{found.rest}” was left out</span>
        )}
        <button type="button" className="tool" onClick={onLeave}>
          Back to the song
        </button>
      </header>
      <ul>
        {found.tones.map((tone) => (
          <ToneLine key={tone.degree} tone={tone} marks={marks} />
        ))}
      </ul>
      <Together found={found} />
      {found.scale === null ? (
        <p>No scale of ours holds all its tones.</p>
      ) : (
        <ScaleLine scale={found.scale} harp={harp} technique={technique} blues={false} />
      )}
    </section>
  );
};
