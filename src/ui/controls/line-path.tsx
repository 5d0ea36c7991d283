import { type RefObject, useEffect, useState } from 'react';
import { type Box, routeOf, type SoundBox } from './path-route';

interface Props {
  /** The drawing whose sounds the path goes through. */
  readonly drawing: RefObject<HTMLElement | null>;
  /** Sound ids in playing order. */
  readonly ids: readonly string[];
  /** Where the path leads in the next bar, or null. */
  readonly onward: string | null;
}

const NOTHING: readonly SoundBox[] = [];

const boxIn = (frame: DOMRect, element: Element): Box => {
  const { left, right, top, bottom } = element.getBoundingClientRect();
  return {
    left: left - frame.left,
    right: right - frame.left,
    top: top - frame.top,
    bottom: bottom - frame.top,
  };
};

/** On the comb a cell reaches to the middle of the gaps around it; on the Keys drawing it is as wide as its hole. */
const cellOf = (box: Box, lane: Box | null, grid: CSSStyleDeclaration): Box => {
  const row = (Number.parseFloat(grid.rowGap) || 0) / 2;
  const column = (Number.parseFloat(grid.columnGap) || 0) / 2;
  const { left, right } = lane ?? box;
  return {
    left: left - column,
    right: right + column,
    top: box.top - row,
    bottom: box.bottom + row,
  };
};

const measure = (drawing: HTMLElement, ids: readonly string[]): readonly SoundBox[] => {
  const grid = drawing.querySelector('.comb, .keys');
  if (grid === null) return NOTHING;
  const frame = drawing.getBoundingClientRect();
  const style = getComputedStyle(grid);
  return ids.flatMap((id) => {
    const pill = drawing.querySelector<HTMLElement>(`[data-sound="${CSS.escape(id)}"]`);
    if (pill === null) return [];
    const lane = drawing.querySelector(`.lane[data-column="${pill.style.gridColumnStart}"]`);
    const box = boxIn(frame, pill);
    return [{ id, ...box, cell: cellOf(box, lane && boxIn(frame, lane), style) }];
  });
};

/** The numbers of the notes at each place, so that a place played twice shows both. */
const badgesOf = (places: readonly SoundBox[]): readonly (SoundBox & { readonly text: string })[] => {
  const known = new Map<string, SoundBox & { text: string }>();
  for (const [i, place] of places.entries()) {
    const before = known.get(place.id);
    known.set(place.id, { ...place, text: before ? `${before.text} ${i + 1}` : `${i + 1}` });
  }
  return [...known.values()];
};

/**
 * The line of the bar drawn through the map, its notes ringed and numbered, and dotted on to the first note of the
 * next bar. The way itself keeps between the cells, beneath the sounds; the rings and numbers lie above.
 */
export const LinePath = ({ drawing, ids, onward }: Props) => {
  const [places, setPlaces] = useState(NOTHING);
  const wanted = [...ids, ...(onward === null ? [] : [onward])].join(' ');
  useEffect(() => {
    const element = drawing.current;
    if (!element) return;
    const update = (): void => setPlaces(measure(element, wanted === '' ? [] : wanted.split(' ')));
    update();
    const watch = new ResizeObserver(update);
    watch.observe(element);
    for (const pill of element.querySelectorAll('.pill')) watch.observe(pill);
    return () => watch.disconnect();
  }, [drawing, wanted]);
  const own = places.slice(0, ids.length);
  const next = onward === null ? [] : places.slice(Math.max(0, ids.length - 1));
  return (
    <>
      <svg className="line-path" aria-hidden="true">
        {next.length > 1 && <path className="onward" d={routeOf(next)} />}
        <path d={routeOf(own)} />
      </svg>
      <svg className="line-path marks" aria-hidden="true">
        {badgesOf(own).map(({ id, left, right, top, bottom, cell, text }) => {
          const width = 9 + text.length * 7;
          const roundness = Math.min(9, (bottom - top) / 2);
          return (
            <g key={id}>
              <rect
                className="ring"
                x={left}
                y={top}
                width={right - left}
                height={bottom - top}
                rx={roundness}
              />
              <g transform={`translate(${Math.min(right, cell.right - 4)} ${top - 1})`}>
                <rect x={-width / 2} y={-8} width={width} height={16} rx={8} />
                <text y={4.5}>{text}</text>
              </g>
            </g>
          );
        })}
      </svg>
    </>
  );
};
