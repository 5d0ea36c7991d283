import { combPlaces } from '../controls/map-layout';
import { SoundPill } from '../controls/sound-pill';
import type { MapProps } from './map-props';

/** The harp as it is held: holes across, blow sounds above the comb, draw sounds below. */
export const CombMap = ({ marks, nameOf, centsOf, focused, picked, onListen }: MapProps) => {
  const places = combPlaces(marks);
  const above = Math.max(...places.map(({ row }) => row));
  const below = -Math.min(...places.map(({ row }) => row));
  const holes = Math.max(...places.map(({ hole }) => hole));
  const lineOf = (row: number): number => (row > 0 ? above - row + 1 : above + 1 - row);
  return (
    <div
      className="comb"
      style={{
        gridTemplateColumns: `auto repeat(${holes}, minmax(0, 1fr))`,
        gridTemplateRows: `repeat(${above}, minmax(var(--row), 1fr)) auto repeat(${below}, minmax(var(--row), 1fr))`,
      }}
    >
      <span className="side" style={{ gridRow: `${lineOf(1)}`, gridColumn: 1 }} aria-hidden="true">
        <b>↑</b> blow
      </span>
      <span className="side" style={{ gridRow: `${lineOf(-1)}`, gridColumn: 1 }} aria-hidden="true">
        <b>↓</b> draw
      </span>
      {Array.from({ length: holes }, (_, i) => (
        <span
          // biome-ignore lint/suspicious/noArrayIndexKey: holes are known by their number
          key={i}
          className="hole"
          style={{ gridRow: above + 1, gridColumn: i + 2 }}
          aria-hidden="true"
        >
          {i + 1}
        </span>
      ))}
      {places.map(({ mark, hole, row }, i) => (
        <SoundPill
          key={`${hole}/${row}`}
          mark={mark}
          name={nameOf(mark)}
          cents={centsOf(mark)}
          picked={mark.sound.pitch === picked}
          tabStop={i === focused}
          style={{ gridRow: lineOf(row), gridColumn: hole + 1 }}
          onListen={() => onListen(mark)}
        />
      ))}
    </div>
  );
};
