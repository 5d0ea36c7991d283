import { Fragment } from 'react';
import type { MarkedSound } from '../../core/fit/mark-sounds';
import type { Breath } from '../../core/harp/harp';
import { pitchName, prettyName, spelledPitch } from '../../core/theory/pitch';
import { isBlackKey, type Spell, spellPitch } from '../../core/theory/spelling';
import { asMidi } from '../../core/theory/units';
import { functionOf } from '../controls/degree-function';
import { pitchSpan } from '../controls/map-layout';
import { SoundPill } from '../controls/sound-pill';
import type { MapProps } from './map-props';

/** The piano stands in the first column. */
const columnOf = ({ sound }: MarkedSound): number => sound.hole + 1;

interface Stem {
  readonly key: string;
  readonly column: number;
  readonly breath: Breath;
  readonly from: number;
  readonly to: number;
  readonly over: boolean;
}

/** Lines from each natural note down to its deepest bend, and up to its overbend. */
const stemsOf = (marks: readonly MarkedSound[]): readonly Stem[] =>
  marks
    .filter(({ sound }) => sound.technique === 'natural')
    .flatMap((natural) => {
      const own = marks.filter(
        ({ sound }) =>
          sound.hole === natural.sound.hole &&
          sound.breath === natural.sound.breath &&
          sound.technique !== 'natural',
      );
      return [false, true].flatMap((over) => {
        const reached = own.filter(({ sound }) => (sound.technique === 'overbend') === over);
        if (reached.length === 0) return [];
        const ends = [natural, ...reached].map(({ sound }) => sound.pitch);
        return [
          {
            key: `${natural.sound.hole}${natural.sound.breath}${over}`,
            column: columnOf(natural),
            breath: natural.sound.breath,
            from: Math.max(...ends),
            to: Math.min(...ends),
            over,
          },
        ];
      });
    });

/** Letters on the white keys; each C carries its octave. */
const keyText = (pitch: number): string => {
  if (isBlackKey(pitch)) return '';
  const name = pitchName(asMidi(pitch));
  return pitch % 12 === 0 ? name : name.charAt(0);
};

/** A white key is called by its letter, as it is marked; a black one has none, so the music names it. */
const keyLabel = (pitch: number, spell: Spell): string =>
  prettyName(
    isBlackKey(pitch) ? spelledPitch(asMidi(pitch), spellPitch(pitch, spell)) : pitchName(asMidi(pitch)),
  );

/** True where another reed of the same hole gives the same pitch. */
const isShared = (mark: MarkedSound, marks: readonly MarkedSound[]): boolean =>
  marks.some(
    ({ sound }) =>
      sound.hole === mark.sound.hole &&
      sound.pitch === mark.sound.pitch &&
      sound.breath !== mark.sound.breath,
  );

/** The harp against a piano: every sound at its true height, bends as falls, missing notes as gaps. */
export const KeysMap = ({ marks, nameOf, spell, centsOf, focused, picked, onListen, onPitch }: MapProps) => {
  const { low, high } = pitchSpan(marks);
  const rowOf = (pitch: number): number => high - pitch + 2;
  const holes = Math.max(...marks.map(({ sound }) => sound.hole));
  const bands = new Map(
    marks.flatMap(({ sound, chordTone, inReach }) =>
      chordTone && inReach ? [[sound.pitch, functionOf(chordTone.degree)] as const] : [],
    ),
  );
  const pitches = Array.from({ length: high - low + 1 }, (_, i) => high - i);
  return (
    <div
      className="keys"
      style={{
        gridTemplateColumns: `var(--piano) repeat(${holes}, minmax(0, 1fr))`,
        gridTemplateRows: `auto repeat(${pitches.length}, minmax(var(--row), 1fr))`,
      }}
    >
      {Array.from({ length: holes }, (_, i) => (
        <Fragment
          // biome-ignore lint/suspicious/noArrayIndexKey: holes are known by their number
          key={i}
        >
          <span className="hole" style={{ gridRow: 1, gridColumn: i + 2 }} aria-hidden="true">
            {i + 1}
          </span>
          <i className="lane" style={{ gridRow: '2 / -1', gridColumn: i + 2 }} />
        </Fragment>
      ))}
      {pitches.map((pitch) => (
        <button
          key={pitch}
          type="button"
          className="key"
          tabIndex={-1}
          data-black={isBlackKey(pitch)}
          data-octave={pitch % 12 === 0}
          data-picked={pitch === picked}
          aria-label={`Piano key ${keyLabel(pitch, spell)}`}
          style={{ gridRow: rowOf(pitch), gridColumn: 1 }}
          onClick={() => onPitch(pitch)}
        >
          {keyText(pitch)}
        </button>
      ))}
      {[...bands].map(([pitch, role]) => (
        <i
          key={pitch}
          className="band"
          data-function={role}
          style={{ gridRow: rowOf(pitch), gridColumn: '2 / -1' }}
        />
      ))}
      {stemsOf(marks).map(({ key, column, breath, from, to, over }) => (
        <i
          key={key}
          className="stem"
          data-breath={breath}
          data-over={over}
          style={{ gridRow: `${rowOf(from)} / ${rowOf(to) + 1}`, gridColumn: column }}
        />
      ))}
      {marks.map((mark, i) => (
        <SoundPill
          key={mark.sound.hole + mark.sound.breath + mark.sound.technique + mark.sound.bend}
          mark={mark}
          name={nameOf(mark)}
          cents={centsOf(mark)}
          picked={mark.sound.pitch === picked}
          shared={isShared(mark, marks)}
          tabStop={i === focused}
          style={{ gridRow: rowOf(mark.sound.pitch), gridColumn: columnOf(mark) }}
          onListen={() => onListen(mark)}
        />
      ))}
    </div>
  );
};
