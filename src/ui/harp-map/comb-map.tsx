import { type CSSProperties, useRef } from 'react';
import { soundId } from '../../core/harp/tab';
import { acrossOf, combPlaces } from '../controls/map-layout';
import { SoundPill } from '../controls/sound-pill';
import type { MapProps } from './map-props';
import { useCellSize } from './use-cell-size';

interface SideProps {
  readonly arrow: string;
  readonly text: string;
  readonly style: CSSProperties;
}

const Side = ({ arrow, text, style }: SideProps) => (
  <span className="side" style={style} aria-hidden="true">
    <b>{arrow}</b> {text}
  </span>
);

/** The harp as it is held: holes across, everything blown above the comb, everything drawn below it. */
export const CombMap = (props: MapProps) => {
  const { marks, nameOf, centsOf, mirrored, lit, focused, picked, degreesOf, plain, onListen } = props;
  const comb = useRef<HTMLDivElement>(null);
  useCellSize(comb);
  const places = combPlaces(marks);
  const above = Math.max(...places.map(({ row }) => row));
  const below = -Math.min(...places.map(({ row }) => row));
  const holes = Math.max(...places.map(({ hole }) => hole));
  const lineOf = (row: number): number => (row > 0 ? above - row + 1 : above + 1 - row);
  const columnOf = (hole: number): number => acrossOf(hole, holes, mirrored) + 1;
  return (
    <div
      className="comb"
      ref={comb}
      style={{
        gridTemplateColumns: `auto repeat(${holes}, minmax(0, 1fr))`,
        gridTemplateRows: `repeat(${above}, minmax(var(--row), 1fr)) minmax(var(--hole-row), var(--hole-share)) repeat(${below}, minmax(var(--row), 1fr))`,
      }}
    >
      <Side arrow="↑" text="blow" style={{ gridRow: lineOf(1), gridColumn: 1 }} />
      {above > 1 && <Side arrow="" text="bends" style={{ gridRow: lineOf(2), gridColumn: 1 }} />}
      <Side arrow="↓" text="draw" style={{ gridRow: lineOf(-1), gridColumn: 1 }} />
      {below > 1 && <Side arrow="" text="bends" style={{ gridRow: lineOf(-2), gridColumn: 1 }} />}
      {Array.from({ length: holes }, (_, i) => (
        <span
          // biome-ignore lint/suspicious/noArrayIndexKey: holes are known by their number
          key={i}
          className="hole"
          style={{ gridRow: above + 1, gridColumn: columnOf(i + 1) }}
          aria-hidden="true"
        >
          <b>{i + 1}</b>
        </span>
      ))}
      {places.map(({ mark, hole, row }, i) => (
        <SoundPill
          key={`${hole}/${row}`}
          mark={mark}
          name={nameOf(mark)}
          cents={centsOf(mark)}
          degreesOf={degreesOf}
          plain={plain}
          lit={lit.includes(soundId(mark.sound))}
          picked={mark.sound.pitch === picked}
          tabStop={i === focused}
          style={{ gridRow: lineOf(row), gridColumn: columnOf(hole) }}
          onListen={() => onListen(mark)}
        />
      ))}
    </div>
  );
};
