import { positionTitle, songKey } from '../../../core/harp/positions';
import type { MelodyHarp, MissingNote } from '../../../core/melody/melody-harps';
import { printPhrase } from '../../../core/phrase/print-phrase';
import type { NoteNames } from '../../../core/theory/note-names';
import { keyName, pitchName } from '../../../core/theory/pitch';
import { asMidi, type PitchClass } from '../../../core/theory/units';
import { counted } from '../../../core/theory/wording';
import { useNames } from '../../state/use-names';

const octaveWords = (octaves: number): string =>
  octaves === 0
    ? ''
    : `, ${Math.abs(octaves) === 1 ? 'an octave' : 'two octaves'} ${octaves > 0 ? 'up' : 'down'}`;

const missingNote = ({ key, isOff, octave, near }: MissingNote, names: NoteNames): string => {
  const nameOf = (key: number): string => names.pitch(pitchName(asMidi(key)));
  const instead = [...new Set([octave, near].flatMap((each) => (each === null ? [] : [nameOf(each)])))];
  const why = isOff ? 'by what is not switched on' : 'not on this harp';
  return `${nameOf(key)} (${why}${instead.length === 0 ? '' : `; near: ${instead.join(', ')}`})`;
};

const missingWords = ({ missing }: MelodyHarp, names: NoteNames): string =>
  missing.length === 0
    ? 'Every note is there.'
    : `Cannot be played: ${missing.map((note) => missingNote(note, names)).join(', ')}.`;

const some = (count: number, one: string): readonly string[] => (count === 0 ? [] : [counted(count, one)]);

const effortWords = ({ techniques }: MelodyHarp): string =>
  [...some(techniques.bend, 'bent note'), ...some(techniques.overbend, 'overbend')].join(', ') ||
  'Natural notes only';

interface Props {
  readonly found: MelodyHarp;
  /** Key of the harp in hand: the same tab there sounds in another key. */
  readonly inHand: PitchClass;
  readonly onTab: (tab: string) => void;
}

/** A harp for a melody: its position, what it asks for, what is missing, and its tab to be taken. */
export const MelodyHarpRow = ({ found, inHand, onTab }: Props) => {
  const tab = printPhrase(found.phrase, 'signs');
  const names = useNames();
  const name = names.key(`${keyName(found.harpKey, 'major')} harp`);
  return (
    <li className="group">
      <strong>
        {name}, {positionTitle(found.position)}
        {octaveWords(found.octaves)}
      </strong>
      <p className="phrase-tab">{tab}</p>
      <p className="hint">
        {effortWords(found)}; effort {found.difficulty}. {missingWords(found, names)}
        {found.harpKey !== inHand &&
          ` On the ${names.key(keyName(inHand, 'major'))} harp in hand the same tab is in ${names.key(keyName(songKey(inHand, found.position), 'major'))}.`}
      </p>
      <button
        type="button"
        className="tool"
        disabled={found.phrase.notes.length === 0}
        onClick={() => onTab(tab)}
      >
        Take this tab<span className="unseen"> for a {name}</span>
      </button>
    </li>
  );
};
