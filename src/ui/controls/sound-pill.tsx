import type { CSSProperties } from 'react';
import type { MarkedSound } from '../../core/fit/mark-sounds';
import { isSafe } from '../../core/fit/plain-words';
import { soundId, spokenTab } from '../../core/harp/tab';
import type { NoteName } from '../../core/theory/chord';
import { degreeText } from '../../core/theory/note-names';
import { spelledPitch } from '../../core/theory/pitch';
import { signedCents } from '../../core/theory/temperament';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';
import { functionOf, plainFunction } from './degree-function';

interface Props {
  readonly mark: MarkedSound;
  /** Spelling of the sound's pitch. */
  readonly name: NoteName;
  /** Whether tabbing stops here: one sound of the map does, the arrow keys reach the rest. */
  readonly tabStop: boolean;
  readonly style?: CSSProperties;
  /** Expected cents to show in place of the name, or null. */
  readonly cents: number | null;
  /** What the degree is of. */
  readonly degreesOf: 'chord' | 'scale';
  /** Whether it is safe or leans, in place of its degree. */
  readonly plain: boolean;
  /** Whether it is the sound lit now. */
  readonly lit: boolean;
  /** Whether this is a way to get the pitch that was picked. */
  readonly picked: boolean;
  /** Whether the other reed of the hole gives the same pitch, so that both share the hole's width. */
  readonly shared?: boolean;
  readonly onListen: () => void;
}

/** Whether a sound leans on to somewhere: a tone of the chord that is not for resting, or a blue note of the key. */
const leans = ({ chordTone, blueTone }: MarkedSound): boolean =>
  chordTone === null ? blueTone !== null : !isSafe(chordTone.degree);

const plainText = (mark: MarkedSound): string => {
  const { chordTone, scaleTone, inReach } = mark;
  const role = leans(mark) ? ', leans well' : chordTone ? ', safe' : scaleTone ? ', in the scale' : '';
  return `${role}${inReach ? '' : ', out of reach'}`;
};

const roleText = ({ chordTone, scaleTone, blueTone, inReach }: MarkedSound, degreesOf: string): string => {
  const role = chordTone
    ? `, ${chordTone.degree === 'R' ? 'root' : degreeText(chordTone.degree)} of the ${degreesOf}`
    : scaleTone
      ? ', in the scale'
      : '';
  return `${role}${blueTone === null ? '' : ', blue note of the key'}${inReach ? '' : ', out of reach'}`;
};

/** One sound of the harp: its breath as an arrow, its degree where it is a chord tone, its note. Press to hear it. */
export const SoundPill = (props: Props) => {
  const {
    mark,
    name,
    tabStop,
    style,
    cents,
    degreesOf,
    plain,
    lit,
    picked,
    shared = false,
    onListen,
  } = props;
  const { sound, chordTone, scaleTone, inReach } = mark;
  const id = soundId(sound);
  const names = useNames();
  const standing = useSelected((state) => state.bends.standings?.get(id));
  const role = chordTone ? 'chord' : scaleTone ? 'scale' : 'plain';
  return (
    <button
      type="button"
      className="pill"
      style={style}
      tabIndex={tabStop ? 0 : -1}
      data-sound={id}
      data-role={role}
      data-function={chordTone ? (plain ? plainFunction : functionOf)(chordTone.degree) : undefined}
      data-breath={sound.breath}
      data-technique={sound.technique}
      data-reach={inReach}
      data-picked={picked}
      data-lit={lit}
      data-blue={plain ? leans(mark) : mark.blueTone !== null}
      data-plain={plain}
      data-shared={shared}
      data-cents={cents !== null}
      data-standing={standing}
      aria-label={`${spokenTab(sound)}: ${names.note(name)}${plain ? plainText(mark) : roleText(mark, degreesOf)}${standing === undefined ? '' : `, ${standing} by your results`}`}
      title={names.pitch(spelledPitch(sound.pitch, name))}
      onClick={onListen}
    >
      <span className="inside">
        <span className="breath">{sound.breath === 'blow' ? '↑' : '↓'}</span>
        {sound.technique !== 'natural' && (
          <span className="strokes">{sound.technique === 'overbend' ? '○' : '/'.repeat(sound.bend)}</span>
        )}
        {chordTone && !plain && <b>{degreeText(chordTone.degree)}</b>}
        <span className="note">{cents === null ? names.note(name) : signedCents(cents)}</span>
      </span>
    </button>
  );
};
