import { type RefObject, useEffect, useState } from 'react';
import { type Gaps, type Place, routeOf } from './path-route';

interface Props {
  /** The drawing whose sounds the path goes through. */
  readonly drawing: RefObject<HTMLElement | null>;
  /** Sound ids in playing order. */
  readonly ids: readonly string[];
  /** Where the path leads in the next bar, or null. */
  readonly onward: string | null;
}

interface Measured {
  readonly places: readonly Place[];
  readonly gaps: Gaps | null;
}

const NOTHING: Measured = { places: [], gaps: null };

const measure = (drawing: HTMLElement, ids: readonly string[]): Measured => {
  const frame = drawing.getBoundingClientRect();
  const places = ids.flatMap((id) => {
    const pill = drawing.querySelector(`[data-sound="${CSS.escape(id)}"]`);
    if (!pill) return [];
    const { left, right, top, bottom } = pill.getBoundingClientRect();
    return [
      {
        id,
        left: left - frame.left,
        right: right - frame.left,
        top: top - frame.top,
        bottom: bottom - frame.top,
      },
    ];
  });
  const comb = drawing.querySelector('.comb');
  if (!comb) return { places, gaps: null };
  const { rowGap, columnGap } = getComputedStyle(comb);
  return {
    places,
    gaps: { row: Number.parseFloat(rowGap) || 0, column: Number.parseFloat(columnGap) || 0 },
  };
};

/** The numbers of the notes at each place, so that a place played twice shows both. */
const badgesOf = (places: readonly Place[]): readonly (Place & { readonly text: string })[] => {
  const known = new Map<string, Place & { text: string }>();
  for (const [i, place] of places.entries()) {
    const before = known.get(place.id);
    known.set(place.id, { ...place, text: before ? `${before.text} ${i + 1}` : `${i + 1}` });
  }
  return [...known.values()];
};

/**
 * The line of the bar drawn through the map, its notes ringed and numbered, and dotted on to the first note of the
 * next bar. The way itself runs beneath the sounds, the rings and numbers above.
 */
export const LinePath = ({ drawing, ids, onward }: Props) => {
  const [{ places, gaps }, setMeasured] = useState(NOTHING);
  const wanted = [...ids, ...(onward === null ? [] : [onward])].join(' ');
  useEffect(() => {
    const element = drawing.current;
    if (!element) return;
    const update = (): void => setMeasured(measure(element, wanted === '' ? [] : wanted.split(' ')));
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
        {next.length > 1 && <path className="onward" d={routeOf(next, gaps)} />}
        <path d={routeOf(own, gaps)} />
      </svg>
      <svg className="line-path marks" aria-hidden="true">
        {badgesOf(own).map(({ id, left, right, top, bottom, text }) => {
          const width = 9 + text.length * 7;
          return (
            <g key={id}>
              <rect className="ring" x={left} y={top} width={right - left} height={bottom - top} rx={9} />
              <g transform={`translate(${right + (gaps === null ? 5 : -1)} ${top - 1})`}>
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
