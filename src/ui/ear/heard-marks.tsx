import { type RefObject, useCallback, useRef } from 'react';
import { WIDEST_GRIP } from '../../core/harp/grip-shapes';
import type { Sound } from '../../core/harp/harp';
import { soundId } from '../../core/harp/tab';
import type { HeardNote } from '../../core/hearing/heard-note';
import { signedCents } from '../../core/theory/temperament';
import { useSelected, useSession } from '../state/session-context';
import { isStill, useFrame } from '../state/use-frame';
import { offsetOf } from './heard-offset';
import { type HeardPlaces, measurePlaces, type PlacedBox } from './heard-places';
import { drawTrace, tracePoints } from './heard-trace';
import { useEarShown } from './use-ear-shown';

/** Seconds after which places are measured anew, cents written anew and, where motion is reduced, the way drawn anew. */
const EVERY = { places: 0.5, cents: 0.12, still: 0.5 } as const;
/** A note stays lit so long after its end, in seconds, that short ones are seen. */
const AFTERGLOW = 0.15;

/** Cents with their sign, as on a tuner; whole fives, since a reed wavers by more. */
const centsText = (cents: number): string => signedCents(Math.round(cents / 5) * 5);

const layOver = (mark: HTMLElement, box: PlacedBox | null): void => {
  mark.hidden = box === null;
  if (box === null) return;
  mark.style.translate = `${box.left}px ${box.top}px`;
  mark.style.width = `${box.width}px`;
  mark.style.height = `${box.height}px`;
};

/** Lays a ring over each of several sounds. */
const layOverAll = (rings: HTMLElement, sounds: readonly Sound[], places: HeardPlaces): void => {
  for (const [i, mark] of [...rings.children].entries()) {
    const sound = sounds[i];
    if (mark instanceof HTMLElement) layOver(mark, sound ? places.boxOf(soundId(sound)) : null);
  }
};

/** Scrolls the room of a drawing that is higher than it, so that what is lit is seen. */
const bringIntoView = (drawing: HTMLElement, box: PlacedBox): void => {
  const room = drawing.parentElement;
  if (room === null) return;
  const seen =
    box.top > room.scrollTop + box.height && box.top + box.height < room.scrollTop + room.clientHeight;
  if (!seen) room.scrollTop = box.top + box.height / 2 - room.clientHeight / 2;
};

/** What is remembered from one animation frame to the next. */
interface Memory {
  places: HeardPlaces | null;
  measured: number;
  written: number;
  drawn: number;
  note: HeardNote | null;
  /** The note brought into view last. */
  seen: HeardNote | null;
  until: number;
}

/** The note to light, a moment longer than it sounds. */
const noteToLight = (memory: Memory, sounding: HeardNote | null, now: number): HeardNote | null => {
  if (sounding !== null) {
    memory.note = sounding;
    memory.until = now + AFTERGLOW;
  }
  return now <= memory.until ? memory.note : null;
};

/**
 * What the microphone hears, over a drawing of the harp: the sounding reed ringed, with its cents, or all that sound on
 * one breath; dashed, another that gives the same pitch; and on the Keys drawing the way of the pitch. Drawn past React,
 * once a frame.
 */
export const HeardMarks = ({ drawing }: { readonly drawing: RefObject<HTMLElement | null> }) => {
  const { live } = useSession();
  const shown = useEarShown();
  const reference = useSelected((state) => state.settings.reference);
  const ring = useRef<HTMLDivElement>(null);
  const beside = useRef<HTMLDivElement>(null);
  const other = useRef<HTMLDivElement>(null);
  const cents = useRef<HTMLSpanElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const memory = useRef<Memory>({
    places: null,
    measured: 0,
    written: 0,
    drawn: 0,
    note: null,
    seen: null,
    until: 0,
  });
  const draw = useCallback(() => {
    const kept = memory.current;
    const now = performance.now() / 1000;
    if (
      !drawing.current ||
      !ring.current ||
      !beside.current ||
      !other.current ||
      !cents.current ||
      !canvas.current
    )
      return;
    if (kept.places === null || now - kept.measured > EVERY.places) {
      kept.places = measurePlaces(drawing.current);
      kept.measured = now;
    }
    const frame = live.ear.frame();
    const note = noteToLight(kept, live.ear.sounding(), now);
    const [alternative] = note?.alternatives ?? [];
    const box = note?.sound ? kept.places.boxOf(soundId(note.sound)) : null;
    if (box !== null && note !== kept.seen) bringIntoView(drawing.current, box);
    kept.seen = note;
    layOver(ring.current, box);
    layOverAll(beside.current, note?.together ?? [], kept.places);
    layOver(other.current, alternative ? kept.places.boxOf(soundId(alternative)) : null);
    const offset = note && offsetOf(note, frame?.frequency ?? 0, reference);
    cents.current.hidden = (note?.together.length ?? 0) > 0;
    if (offset !== null && now - kept.written > EVERY.cents) {
      cents.current.textContent = centsText(offset);
      kept.written = now;
    }
    const still = isStill();
    if (kept.places.semitone === 0 || frame === null || (still && now - kept.drawn < EVERY.still)) return;
    kept.drawn = now;
    drawTrace(
      canvas.current,
      tracePoints(live.ear.trace(), kept.places, { now: frame.known, reference }),
      still,
    );
  }, [drawing, live, reference]);
  useFrame(shown, draw);
  if (!shown) return null;
  return (
    <div className="heard" aria-hidden="true">
      <canvas ref={canvas} />
      <div className="heard-other" ref={other} hidden />
      <div className="heard-ring" ref={ring} hidden>
        <span ref={cents} />
      </div>
      <div ref={beside}>
        {Array.from({ length: WIDEST_GRIP - 1 }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rings differ by nothing but their place
          <div key={i} className="heard-ring" data-together hidden />
        ))}
      </div>
    </div>
  );
};
