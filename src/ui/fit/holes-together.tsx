import { useMemo } from 'react';
import { type Grip, gripsFor } from '../../core/fit/grips';
import type { NoteNames } from '../../core/theory/note-names';
import { capital } from '../../core/theory/wording';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';
import { usePlayingChord } from '../state/use-playing-chord';
import { useTonic } from '../state/use-tonic';

/** Groups shown at once, listed in all, and groups that miss by a note listed after them. */
const SHOWN = 3;
const LISTED = 16;
const NEAR = 3;

const gripText = ({ label, name }: Grip, names: NoteNames): string =>
  names.text(`${capital(`${label}: ${name}`)}.`);
const nearText = (grip: Grip, names: NoteNames): string => {
  const odd = grip.foreign.map(({ name, hole }) => `${name} in hole ${hole}`).join(' and ');
  return names.text(`${capital(grip.label)}: ${grip.name}, but ${odd} is not in the chord.`);
};

/** Which holes go together over the chord: those a mouth can take at once, best first, and those that almost fit. */
export const HolesTogether = () => {
  const chord = usePlayingChord();
  const names = useNames();
  const harp = useSelected((state) => state.now.tune.harp);
  const tonic = useTonic();
  const technique = useSelected((state) => state.settings.technique);
  const warming = useSelected((state) => state.warmUp !== null);
  const { fitting, near } = useMemo(
    () => gripsFor({ chord, harp, technique, tonic }),
    [chord, harp, technique, tonic],
  );
  const first = fitting.slice(0, SHOWN);
  const more = fitting.slice(SHOWN, LISTED);
  const almost = near.slice(0, NEAR);
  if (warming) return null;
  return (
    <section className="together card" aria-label="Chords and octaves on the harp">
      <h2 className="together-title">Chords and octaves on the harp over {names.chord(chord)}</h2>
      {first.length === 0 && <p>None gives two of its tones at once.</p>}
      <ul>
        {first.map((grip) => (
          <li key={grip.label}>{gripText(grip, names)}</li>
        ))}
      </ul>
      {more.length + almost.length > 0 && (
        <details>
          <summary>More, and those that almost fit</summary>
          <ul>
            {more.map((grip) => (
              <li key={grip.label}>{gripText(grip, names)}</li>
            ))}
            {almost.map((grip) => (
              <li key={`${grip.label} almost`}>{nearText(grip, names)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};
