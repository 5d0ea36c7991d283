import type { FitChord, FitSound } from '../../core/fit/fit';
import { byRegister, plainSounds } from '../../core/fit/plain-words';
import { REGISTERS } from '../../core/harp/reach';
import { Tap } from '../controls/tap';
import { useNames } from '../state/use-names';
import { REGISTER_NAMES } from './fit-table';

const Row = ({ title, sounds }: { readonly title: string; readonly sounds: readonly FitSound[] }) => {
  const cells = byRegister(sounds);
  return (
    <tr>
      <th scope="row">{title}</th>
      {REGISTERS.map((register) => (
        <td key={register}>
          <span className="taps">
            {cells[register].map((sound) => (
              <Tap key={sound.id} sound={sound} meaning={sound} />
            ))}
          </span>
        </td>
      ))}
    </tr>
  );
};

interface Props {
  readonly fit: FitChord;
  readonly captioned: boolean;
  /** When the chord is heard. */
  readonly when: 'now' | 'next';
}

/** What is safe over a chord and what leans, octave by octave, without degrees. */
export const PlainTable = ({ fit, captioned, when }: Props) => {
  const { safe, leans } = plainSounds(fit);
  const names = useNames();
  return (
    <table className="tones plain-words">
      <caption className={captioned ? undefined : 'unseen'}>{names.chord(fit.chord)}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">What it does</span>
          </th>
          {REGISTERS.map((register) => (
            <th key={register} scope="col">
              {REGISTER_NAMES[register]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <Row title={`Safe ${when}`} sounds={safe} />
        {leans.length > 0 && <Row title="Leans well" sounds={leans} />}
      </tbody>
    </table>
  );
};
