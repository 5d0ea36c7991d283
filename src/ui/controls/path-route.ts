/** A sound's box on the drawing, in pixels from its upper left corner. */
export interface Place {
  readonly id: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room between the rows and between the columns of a drawing, in pixels. */
export interface Gaps {
  readonly row: number;
  readonly column: number;
}

const middleOf = ({ left, right }: Place): number => (left + right) / 2;

/** A straight way from middle to middle. */
const straight = (from: Place, to: Place): string =>
  [from, to]
    .map((place, i) => `${i === 0 ? 'M' : 'L'}${middleOf(place)} ${(place.top + place.bottom) / 2}`)
    .join(' ');

/** A way that keeps to the gaps below the rows and beside the columns, so that it crosses nothing written. */
const inGaps = (from: Place, to: Place, gaps: Gaps): string => {
  const under = ({ bottom }: Place): number => bottom + gaps.row / 2;
  const beside = middleOf(to) > middleOf(from) ? to.left - gaps.column / 2 : to.right + gaps.column / 2;
  return `M${middleOf(from)} ${under(from)} H${beside} V${under(to)} H${middleOf(to)}`;
};

/** The way through the places in their order, as SVG path data; gaps null means straight lines. */
export const routeOf = (places: readonly Place[], gaps: Gaps | null): string =>
  places
    .slice(1)
    .flatMap((to, i) => {
      const from = places[i];
      if (from === undefined || from.id === to.id) return [];
      return [gaps === null ? straight(from, to) : inGaps(from, to, gaps)];
    })
    .join(' ');
