/** Where the sounds of a drawing are, in px from its corner, and how far apart semitones are. */
export interface HeardPlaces {
  /** Null for a sound that the drawing does not show. */
  boxOf(id: string): PlacedBox | null;
  /** Height of a semitone; 0 where the drawing has no piano. */
  readonly semitone: number;
  readonly width: number;
  readonly height: number;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where a sound is drawn, and the hole it belongs to. */
export interface PlacedBox extends Box {
  /** From side to side of its hole. */
  readonly hole: Pick<Box, 'left' | 'width'>;
}

const boxIn = (frame: DOMRect, element: Element): Box => {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { left: left - frame.left, top: top - frame.top, width, height };
};

/** Measures a drawing as it lies now; each sound once, when it is asked for. */
export const measurePlaces = (drawing: HTMLElement): HeardPlaces => {
  const frame = drawing.getBoundingClientRect();
  const known = new Map<string, PlacedBox | null>();
  const [one, next] = drawing.querySelectorAll('.keys .band');
  return {
    boxOf: (id) => {
      const before = known.get(id);
      if (before !== undefined) return before;
      const pill = drawing.querySelector<HTMLElement>(`[data-sound="${CSS.escape(id)}"]`);
      const lane = drawing.querySelector(`.lane[data-column="${pill?.style.gridColumnStart}"]`);
      const box = pill && { ...boxIn(frame, pill), hole: boxIn(frame, lane ?? pill) };
      known.set(id, box);
      return box;
    },
    semitone: one && next ? Math.abs(next.getBoundingClientRect().top - one.getBoundingClientRect().top) : 0,
    width: frame.width,
    height: frame.height,
  };
};
