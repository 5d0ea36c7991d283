import { type RefObject, useEffect, useState } from 'react';

interface Props {
  /** The drawing whose sounds the path goes through. */
  readonly drawing: RefObject<HTMLElement | null>;
  /** Sound ids in playing order. */
  readonly ids: readonly string[];
  /** Where the path leads in the next bar, or null. */
  readonly onward: string | null;
}

interface Point {
  readonly id: string;
  readonly x: number;
  /** Lower edge of the sound: the path runs there, so that what is written stays readable. */
  readonly y: number;
  readonly right: number;
  readonly top: number;
}

const measure = (drawing: HTMLElement, ids: readonly string[]): readonly Point[] => {
  const frame = drawing.getBoundingClientRect();
  return ids.flatMap((id) => {
    const pill = drawing.querySelector(`[data-sound="${CSS.escape(id)}"]`);
    if (!pill) return [];
    const box = pill.getBoundingClientRect();
    const x = box.left + box.width / 2 - frame.left;
    const y = box.bottom - frame.top;
    return [{ id, x, y, right: box.right - frame.left, top: box.top - frame.top }];
  });
};

const pathOf = (points: readonly Point[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join(' ');

/** The numbers of the notes at each place, so that a place played twice shows both. */
const badgesOf = (points: readonly Point[]): readonly (Point & { readonly text: string })[] => {
  const places = new Map<string, Point & { text: string }>();
  for (const [i, point] of points.entries()) {
    const known = places.get(point.id);
    places.set(point.id, { ...point, text: known ? `${known.text} ${i + 1}` : `${i + 1}` });
  }
  return [...places.values()];
};

/** The line of the bar drawn through the map, its notes numbered, and dotted on to the first note of the next bar. */
export const LinePath = ({ drawing, ids, onward }: Props) => {
  const [points, setPoints] = useState<readonly Point[]>([]);
  const wanted = [...ids, ...(onward === null ? [] : [onward])].join(' ');
  useEffect(() => {
    const element = drawing.current;
    if (!element) return;
    const update = (): void => setPoints(measure(element, wanted === '' ? [] : wanted.split(' ')));
    update();
    const watch = new ResizeObserver(update);
    watch.observe(element);
    return () => watch.disconnect();
  }, [drawing, wanted]);
  const own = points.slice(0, ids.length);
  const next = onward === null ? [] : points.slice(ids.length - 1);
  return (
    <svg className="line-path" aria-hidden="true">
      {next.length > 1 && <path className="onward" d={pathOf(next)} />}
      <path d={pathOf(own)} />
      {badgesOf(own).map(({ id, right, top, text }) => (
        <g key={id} transform={`translate(${right - 6} ${top + 1})`}>
          <rect x={-4 - text.length * 4.5} y={-9} width={8 + text.length * 9} height={18} rx={9} />
          <text y={5}>{text}</text>
        </g>
      ))}
    </svg>
  );
};
