import type { MarkedSound } from '../../core/fit/mark-sounds';
import { spelledPitch } from '../../core/theory/pitch';
import { type Spell, spellPitch } from '../../core/theory/spelling';
import { hzOf } from '../../core/theory/temperament';
import { asMidi } from '../../core/theory/units';
import { Tap } from '../controls/tap';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';

interface Props {
  /** The pitch picked, as a MIDI number. */
  readonly pitch: number;
  readonly spell: Spell;
  readonly marks: readonly MarkedSound[];
}

/** Every way to get the pitch that was picked, those in reach first. */
export const PickedLine = ({ pitch, spell, marks }: Props) => {
  const names = useNames();
  const reference = useSelected((state) => state.settings.reference);
  const ways = marks.filter(({ sound }) => sound.pitch === pitch);
  const near = ways.filter(({ inReach }) => inReach);
  const far = ways.filter(({ inReach }) => !inReach);
  return (
    <p className="scale-line" aria-live="polite">
      <span className="label">
        {names.pitch(spelledPitch(asMidi(pitch), spellPitch(pitch, spell)))},{' '}
        {hzOf(asMidi(pitch), { reference }).toFixed(1)} Hz:
      </span>
      {ways.length === 0 && <span>this harp does not have it.</span>}
      <span className="taps">
        {near.map(({ sound }) => (
          <Tap key={`${sound.hole}${sound.breath}${sound.technique}`} sound={sound} />
        ))}
      </span>
      {far.length > 0 && (
        <>
          <span className="label">out of reach:</span>
          <span className="taps far">
            {far.map(({ sound }) => (
              <Tap key={`${sound.hole}${sound.breath}${sound.technique}`} sound={sound} />
            ))}
          </span>
        </>
      )}
    </p>
  );
};
