import type { HeardMoment } from '../../app/ear/ear-live';
import { soundHz } from '../../core/harp/intonation';
import { soundId } from '../../core/harp/tab';
import { centsBetween } from '../../core/theory/temperament';
import { asHz, type Hz } from '../../core/theory/units';
import type { HeardPlaces } from './heard-places';

/** A point of the way, in px of the drawing. */
export interface TracePoint {
  readonly x: number;
  readonly y: number;
  /** Of the note it belongs to. */
  readonly note: number;
  /** Seconds ago. */
  readonly age: number;
}

/** Seconds of the way that are drawn: about two bars of a slow blues. */
const TRACE_SECONDS = 8;
/** A held note goes once across its hole in so many seconds. */
const ACROSS = 3;
/** Every so-manieth frame is enough for the eye. */
const EVERY = 3;
/** Cents beyond which a frame is no part of its note's way: another sound has begun already. */
const FARTHEST = 400;

/**
 * The way of the pitch through the sounds of the Keys drawing: at the hole of each note, as high as it was heard, from
 * left to right while it is held, so that a bend is seen to fall and to land.
 */
export const tracePoints = (
  moments: readonly HeardMoment[],
  places: HeardPlaces,
  { now, reference }: { readonly now: number; readonly reference: Hz },
): readonly TracePoint[] =>
  moments.flatMap(({ time, frequency, note }, i) => {
    const age = now - time;
    if (note.sound === null || note.together.length > 0 || age > TRACE_SECONDS || i % EVERY !== 0) return [];
    const box = places.boxOf(soundId(note.sound));
    const cents = centsBetween(soundHz(note.sound, reference), asHz(frequency));
    if (box === null || Math.abs(cents) > FARTHEST) return [];
    const along = ((time - note.from) / ACROSS) % 1;
    return [
      {
        x: box.hole.left + box.hole.width * (0.06 + 0.88 * Math.max(0, along)),
        y: box.top + box.height / 2 - (cents / 100) * places.semitone,
        note: note.id,
        age,
      },
    ];
  });

const WIDTH = 3.5;

/** Draws the way, the older the fainter. `still` draws it evenly, for who wants nothing to move by itself. */
export const drawTrace = (canvas: HTMLCanvasElement, points: readonly TracePoint[], still: boolean): void => {
  const pen = canvas.getContext('2d');
  if (pen === null) return;
  const scale = window.devicePixelRatio || 1;
  const [width, height] = [Math.round(canvas.clientWidth * scale), Math.round(canvas.clientHeight * scale)];
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  pen.setTransform(scale, 0, 0, scale, 0, 0);
  pen.clearRect(0, 0, canvas.clientWidth, canvas.clientHeight);
  pen.strokeStyle = getComputedStyle(canvas).color;
  pen.lineWidth = WIDTH;
  pen.lineCap = 'round';
  for (const [i, to] of points.entries()) {
    const from = points[i - 1];
    // Back at the left edge of the hole the way begins anew.
    if (from === undefined || from.note !== to.note || to.x < from.x) continue;
    pen.globalAlpha = still ? 0.6 : Math.max(0.08, 0.9 * (1 - to.age / TRACE_SECONDS));
    pen.beginPath();
    pen.moveTo(from.x, from.y);
    pen.lineTo(to.x, to.y);
    pen.stroke();
  }
};
