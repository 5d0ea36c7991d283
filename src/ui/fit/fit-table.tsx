import type { FitChord } from '../../core/fit/fit';
import { toneSounds } from '../../core/fit/tone-sounds';
import { REGISTERS, type Register } from '../../core/harp/reach';
import type { ChordTone } from '../../core/theory/chord';
import { tonesWithBass } from '../../core/theory/chords';
import { DegreeChip } from '../controls/degree-chip';
import { Tap } from '../controls/tap';
import { useNames } from '../state/use-names';

/** What the octaves of the harp are called. */
export const REGISTER_NAMES: Readonly<Record<Register, string>> = {
  low: 'Low',
  middle: 'Middle',
  high: 'High',
};

const Cell = ({
  fit,
  tone,
  register,
}: {
  readonly fit: FitChord;
  readonly tone: ChordTone;
  readonly register: Register;
}) => {
  const sounds = toneSounds(fit, tone, register);
  if (sounds.length === 0)
    return (
      <span className="none" role="img" aria-label="none in reach">
        –
      </span>
    );
  return (
    <span className="taps">
      {sounds.map((sound) => (
        <Tap key={sound.id} sound={sound} />
      ))}
    </span>
  );
};

/** Every chord tone with the sounds in reach that give it, octave by octave. */
export const FitTable = ({ fit, captioned }: { readonly fit: FitChord; readonly captioned: boolean }) => {
  const names = useNames();
  return (
    <table className="tones" data-names={names.system}>
      <caption className={captioned ? undefined : 'unseen'}>{names.chord(fit.chord)}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">Tone</span>
          </th>
          {REGISTERS.map((register) => (
            <th key={register} scope="col">
              {REGISTER_NAMES[register]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {tonesWithBass(fit.chord).map((tone) => (
          <tr key={tone.degree}>
            <th scope="row">
              <DegreeChip degree={tone.degree} />
              {names.note(tone.name)}
            </th>
            {REGISTERS.map((register) => (
              <td key={register}>
                <Cell fit={fit} tone={tone} register={register} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
};
