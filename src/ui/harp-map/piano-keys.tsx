import type { NoteNames } from '../../core/theory/note-names';
import { pitchName, spelledPitch } from '../../core/theory/pitch';
import { isBlackKey, type Spell, spellPitch } from '../../core/theory/spelling';
import { asMidi } from '../../core/theory/units';
import type { KeysPart } from '../controls/keys-layout';
import { useNames } from '../state/use-names';

interface Props {
  readonly part: KeysPart;
  readonly spell: Spell;
  readonly picked: number | null;
  readonly lineOf: (pitch: number) => number;
  readonly onPitch: (pitch: number) => void;
}

/** A white key is called by its letter, a black one as the music calls it; each C carries its octave. */
const keyText = (pitch: number, spell: Spell, names: NoteNames): string => {
  if (isBlackKey(pitch)) return names.note(spellPitch(pitch, spell));
  const name = pitchName(asMidi(pitch));
  return pitch % 12 === 0 ? names.pitch(name) : names.note(name.charAt(0));
};

const keyLabel = (pitch: number, spell: Spell, names: NoteNames): string =>
  names.pitch(
    isBlackKey(pitch) ? spelledPitch(asMidi(pitch), spellPitch(pitch, spell)) : pitchName(asMidi(pitch)),
  );

/** The piano up the side of a part of the Keys drawing. */
export const PianoKeys = ({ part, spell, picked, lineOf, onPitch }: Props) => {
  const names = useNames();
  return part.pitches.map((pitch) => (
    <button
      key={pitch}
      type="button"
      className="key"
      tabIndex={-1}
      data-black={isBlackKey(pitch)}
      data-octave={pitch % 12 === 0}
      data-picked={pitch === picked}
      aria-label={`Piano key ${keyLabel(pitch, spell, names)}`}
      style={{ gridRow: lineOf(pitch), gridColumn: part.piano }}
      onClick={() => onPitch(pitch)}
    >
      <span>{keyText(pitch, spell, names)}</span>
    </button>
  ));
};
