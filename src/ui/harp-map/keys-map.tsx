import { Fragment, useMemo } from 'react';
import type { MarkedSound } from '../../core/fit/mark-sounds';
import { soundId } from '../../core/harp/tab';
import { functionOf, plainFunction } from '../controls/degree-function';
import { type KeysLayout, type KeysPart, keysLayout } from '../controls/keys-layout';
import { SoundPill } from '../controls/sound-pill';
import type { MapProps } from './map-props';
import { PianoKeys } from './piano-keys';

interface Props extends MapProps {
  /** In how many parts side by side the piano is laid. */
  readonly parts: number;
  /** Whether its holes have little width. */
  readonly narrow: boolean;
}

/** True where another reed of the same hole gives the same pitch. */
const isShared = (mark: MarkedSound, marks: readonly MarkedSound[]): boolean =>
  marks.some(
    ({ sound }) =>
      sound.hole === mark.sound.hole &&
      sound.pitch === mark.sound.pitch &&
      sound.breath !== mark.sound.breath,
  );

/** The function of every pitch in reach that the chord has, for the bands across the drawing. */
const bandsOf = (marks: readonly MarkedSound[], plain: boolean) =>
  new Map(
    marks.flatMap(({ sound, chordTone, inReach }) =>
      chordTone && inReach
        ? [[sound.pitch, plain ? plainFunction(chordTone.degree) : functionOf(chordTone.degree)] as const]
        : [],
    ),
  );

/** The first row holds the hole numbers. */
const lineIn =
  ({ rowOf }: KeysLayout) =>
  (pitch: number): number =>
    rowOf(pitch) + 1;

const HoleNumbers = ({ part, top }: { readonly part: KeysPart; readonly top: number }) => (
  <>
    <i className="corner" style={{ gridRow: 1, gridColumn: part.piano }} />
    {part.holes.map(({ hole, column }) => (
      <Fragment key={hole}>
        <span className="hole" style={{ gridRow: 1, gridColumn: column }} aria-hidden="true">
          {hole}
        </span>
        <i
          className="lane"
          data-hole={hole}
          data-column={column}
          style={{ gridRow: `${top} / -1`, gridColumn: column }}
        />
      </Fragment>
    ))}
  </>
);

/**
 * The harp against a piano: every sound at its true height, bends as falls, missing notes as gaps. Where the whole
 * piano is too tall for the room it stands in parts side by side.
 */
export const KeysMap = (props: Props) => {
  const { marks, nameOf, spell, centsOf, mirrored, lit, focused, picked, degreesOf, plain } = props;
  const { onListen, onPitch } = props;
  const layout = useMemo(() => keysLayout(marks, props.parts, mirrored), [marks, props.parts, mirrored]);
  const lineOf = lineIn(layout);
  const bands: ReadonlyMap<number, string> = bandsOf(marks, plain);
  return (
    <div
      className="keys"
      data-parts={layout.parts.length}
      data-narrow={props.narrow}
      style={{
        gridTemplateColumns: layout.columns,
        gridTemplateRows: `auto repeat(${layout.rows}, minmax(var(--row), 1fr))`,
      }}
    >
      {layout.parts.map((part) => (
        <Fragment key={part.piano}>
          <HoleNumbers part={part} top={lineOf(part.pitches[0] ?? 0)} />
          <PianoKeys part={part} spell={spell} picked={picked} lineOf={lineOf} onPitch={onPitch} />
          {part.pitches.map((pitch) => (
            <i
              key={pitch}
              className="band"
              data-function={bands.get(pitch)}
              style={{
                gridRow: lineOf(pitch),
                gridColumn: `${part.piano + 1} / ${part.piano + 1 + part.holes.length}`,
              }}
            />
          ))}
        </Fragment>
      ))}
      {layout.stems.map(({ breath, over, column, row, endRow }) => (
        <i
          key={`${column}${breath}${over}`}
          className="stem"
          data-breath={breath}
          data-over={over}
          style={{ gridRow: `${row + 1} / ${endRow + 2}`, gridColumn: column }}
        />
      ))}
      {marks.map((mark, i) => (
        <SoundPill
          key={soundId(mark.sound)}
          mark={mark}
          name={nameOf(mark)}
          cents={centsOf(mark)}
          degreesOf={degreesOf}
          plain={plain}
          lit={lit.includes(soundId(mark.sound))}
          picked={mark.sound.pitch === picked}
          shared={isShared(mark, marks)}
          tabStop={i === focused}
          style={{
            gridRow: lineOf(mark.sound.pitch),
            gridColumn: layout.columnOf(mark.sound.hole, mark.sound.pitch),
          }}
          onListen={() => onListen(mark)}
        />
      ))}
    </div>
  );
};
