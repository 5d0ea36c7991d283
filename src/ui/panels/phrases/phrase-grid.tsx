import { type CSSProperties, type MouseEvent, useEffect, useRef } from 'react';
import { barTicks, METERS } from '../../../core/chart/build-chart';
import type { Phrase } from '../../../core/phrase/phrase';
import { type Drag, GridNote } from './grid-note';
import { barsDrawn, HOLE_HEIGHT, noteWords, STEP_WIDTH } from './grid-place';
import './phrase-grid.css';

interface Props {
  readonly phrase: Phrase;
  readonly holes: number;
  /** Ticks. */
  readonly step: number;
  readonly selected: number;
  readonly onSelect: (index: number) => void;
  readonly onAdd: (at: number, hole: number) => void;
  readonly onDragged: (index: number, drag: Drag) => void;
}

/** The phrase on a grid of holes and time: press where a note is to be, drag it, pull its end. */
export const PhraseGrid = ({ phrase, holes, step, selected, onSelect, onAdd, onDragged }: Props) => {
  const box = useRef<HTMLDivElement>(null);
  const meter = METERS[phrase.meter];
  const perTick = STEP_WIDTH / step;
  const bars = barsDrawn(phrase);
  const bar = barTicks(meter);
  const at = phrase.notes[selected]?.at;
  const within = useRef(false);
  const note = (): HTMLElement | null => box.current?.querySelector(`[data-at="${at}"]`) ?? null;
  // The keyboard goes with the chosen note, and on to another where its own is taken out.
  useEffect(() => {
    if (within.current && at !== undefined) note()?.focus();
    if (within.current && at === undefined) box.current?.focus();
  });
  const add = (event: MouseEvent<HTMLDivElement>): void => {
    const place = event.currentTarget.getBoundingClientRect();
    const tick = Math.floor((event.clientX - place.left) / STEP_WIDTH) * step;
    onAdd(tick, Math.floor((event.clientY - place.top) / HOLE_HEIGHT) + 1);
  };
  const size = {
    '--step': `${STEP_WIDTH}px`,
    '--beat': `${meter.beatTicks * perTick}px`,
    '--bar': `${bar * perTick}px`,
    '--hole': `${HOLE_HEIGHT}px`,
  } as CSSProperties;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only watches where the keyboard is
    <div
      className="phrase-grid"
      style={size}
      ref={box}
      tabIndex={-1}
      onFocus={() => {
        within.current = true;
      }}
      onBlur={() => {
        within.current = false;
      }}
    >
      <div className="grid-holes" aria-hidden="true">
        {Array.from({ length: holes }, (_, i) => i + 1).map((hole) => (
          <span key={hole}>{hole}</span>
        ))}
      </div>
      <div className="grid-time">
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: the keys of the group around it add notes too */}
        {/* biome-ignore lint/a11y/noStaticElementInteractions: as above */}
        <div
          className="grid-notes"
          style={{ width: bars * bar * perTick, height: holes * HOLE_HEIGHT }}
          onClick={add}
        >
          {phrase.notes.map((note, i) => (
            <GridNote
              // biome-ignore lint/suspicious/noArrayIndexKey: a note that is moved stays the same button
              key={i}
              note={note}
              label={`Note ${i + 1}: ${noteWords(note, phrase.meter)}`}
              perTick={perTick}
              isSelected={i === selected}
              onSelect={() => onSelect(i)}
              onDragged={(drag) => onDragged(i, drag)}
            />
          ))}
        </div>
      </div>
    </div>
  );
};
