/** A box on a drawing, in pixels from its upper left corner. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A sound's box on the drawing, and the cell of the drawing's grid it stands in, half the gaps around it included. */
export interface SoundBox extends Box {
  readonly id: string;
  readonly cell: Box;
}

const middleOf = ({ left, right }: Box): number => (left + right) / 2;

/** Along the lower edges of cells and the sides of columns: what is written stands inside the cells. */
const between = (from: SoundBox, to: SoundBox): string => {
  const rightwards = middleOf(to.cell) > middleOf(from.cell);
  const beside = rightwards ? to.cell.left : to.cell.right;
  return `M${middleOf(from)} ${from.cell.bottom} H${beside} V${to.cell.bottom} H${middleOf(to)}`;
};

/**
 * The way through the places in their order, as SVG path data. It keeps to the borders of the cells, so that it
 * crosses nothing written.
 */
export const routeOf = (places: readonly SoundBox[]): string =>
  places
    .slice(1)
    .flatMap((to, i) => {
      const from = places[i];
      return from === undefined || from.id === to.id ? [] : [between(from, to)];
    })
    .join(' ');
