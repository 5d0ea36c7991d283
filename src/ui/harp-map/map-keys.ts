/** What a key does on the map: moves the focus from one sound to another, or nothing. */
type Move = (map: HTMLElement, from: HTMLElement) => HTMLElement | null;

const middle = (element: Element): { readonly x: number; readonly y: number } => {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
};

const soundsOf = (map: HTMLElement): readonly HTMLElement[] => [
  ...map.querySelectorAll<HTMLElement>('.pill'),
];

/** The nearest sound in a direction; what lies off the straight way counts three times. */
const towards =
  (dx: number, dy: number): Move =>
  (map, from) => {
    const here = middle(from);
    const ranked = soundsOf(map).flatMap((pill) => {
      const there = middle(pill);
      const along = (there.x - here.x) * dx + (there.y - here.y) * dy;
      const aside = Math.abs((there.x - here.x) * dy) + Math.abs((there.y - here.y) * dx);
      return along > 2 ? [{ pill, cost: along + aside * 3 }] : [];
    });
    return ranked.sort((a, b) => a.cost - b.cost)[0]?.pill ?? null;
  };

/** The natural notes of a hole: its blow note, or its draw note when the blow note has the focus already. */
const hole =
  (number: number): Move =>
  (map, from) => {
    const blow = map.querySelector<HTMLElement>(`[data-sound="${number}B"]`);
    return from === blow ? map.querySelector<HTMLElement>(`[data-sound="${number}D"]`) : blow;
  };

const MOVES: Readonly<Record<string, Move>> = {
  ArrowLeft: towards(-1, 0),
  ArrowRight: towards(1, 0),
  ArrowUp: towards(0, -1),
  ArrowDown: towards(0, 1),
  ...Object.fromEntries(Array.from({ length: 10 }, (_, i) => [String((i + 1) % 10), hole(i + 1)])),
};

/**
 * Where a key leads on the map: arrows go to the nearest sound that way, digits to a hole (0 is the tenth; once for
 * blow, twice for draw). Null when the key means nothing here.
 */
export const soundForKey = (map: HTMLElement, from: HTMLElement, key: string): HTMLElement | null =>
  MOVES[key]?.(map, from) ?? null;
