import { type CSSProperties, type PointerEvent, useRef, useState } from 'react';
import type { PhraseNote } from '../../../core/phrase/phrase';
import { noteText } from '../../../core/phrase/print-phrase';
import { HOLE_HEIGHT } from './grid-place';

/** What a finger or the mouse does with a note: so many ticks and holes from where it began. */
export interface Drag {
  readonly kind: 'move' | 'resize';
  readonly ticks: number;
  readonly holes: number;
}

interface Props {
  readonly note: PhraseNote;
  readonly label: string;
  readonly perTick: number;
  readonly isSelected: boolean;
  readonly onSelect: () => void;
  /** Told once, when it is let go. */
  readonly onDragged: (drag: Drag) => void;
}

interface Held {
  readonly kind: Drag['kind'];
  readonly x: number;
  readonly y: number;
}

/** Less than this many pixels is a press, not a drag. */
const STILL = 5;

/** A note on the grid, to be chosen, moved, and pulled longer by its right edge. */
export const GridNote = ({ note, label, perTick, isSelected, onSelect, onDragged }: Props) => {
  const held = useRef<Held | null>(null);
  const [by, setBy] = useState<Drag | null>(null);
  const [first] = note.sounds;
  const grab =
    (kind: Drag['kind']) =>
    (event: PointerEvent<HTMLElement>): void => {
      event.stopPropagation();
      event.currentTarget.setPointerCapture(event.pointerId);
      held.current = { kind, x: event.clientX, y: event.clientY };
      onSelect();
    };
  const move = (event: PointerEvent<HTMLElement>): void => {
    const from = held.current;
    if (from === null) return;
    const [x, y] = [event.clientX - from.x, event.clientY - from.y];
    if (by === null && Math.hypot(x, y) < STILL) return;
    setBy({ kind: from.kind, ticks: x / perTick, holes: Math.round(y / HOLE_HEIGHT) });
  };
  const drop = (event: PointerEvent<HTMLElement>): void => {
    event.stopPropagation();
    held.current = null;
    setBy(null);
    if (by !== null) onDragged(by);
  };
  const cancel = (): void => {
    held.current = null;
    setBy(null);
  };
  const pull = { onPointerMove: move, onPointerUp: drop, onPointerCancel: cancel };
  const ticks = by === null ? 0 : by.ticks;
  const moved = by?.kind === 'move' ? by : null;
  const style = {
    left: Math.max(0, (note.at + (moved === null ? 0 : ticks)) * perTick),
    width: Math.max(10, (note.length + (by?.kind === 'resize' ? ticks : 0)) * perTick - 2),
    top: ((first?.hole ?? 1) - 1 + (moved?.holes ?? 0)) * HOLE_HEIGHT,
    height: HOLE_HEIGHT - 2,
  } satisfies CSSProperties;
  return (
    <button
      type="button"
      className="grid-note"
      style={style}
      data-at={note.at}
      data-draw={first?.breath === 'draw'}
      aria-label={label}
      aria-pressed={isSelected}
      tabIndex={isSelected ? 0 : -1}
      onFocus={onSelect}
      onClick={(event) => event.stopPropagation()}
      onPointerDown={grab('move')}
      {...pull}
    >
      <span className="grid-note-text">{noteText(note, 'arrows')}</span>
      <span className="grid-note-end" onPointerDown={grab('resize')} {...pull} />
    </button>
  );
};
