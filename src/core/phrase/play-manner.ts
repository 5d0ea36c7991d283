import type { NoteEvent } from '../score/score';
import { asMidi, asTicks } from '../theory/units';
import { velocityBy } from './dynamics';
import type { HarpNote } from './phrase';

/** A slide takes this long a hole, at most a third of its note; a shake changes holes so often (common practice, no source). */
const SLIDE_TICKS = 36;
const SHAKE_TICKS = 80;
/** The second hole of a shake is a little softer. */
const SHAKE_SOFTER = 8;

const clampVelocity = (velocity: number): number => Math.max(1, Math.min(127, velocity));

/** The same note from `from` to `to` ticks after its beginning, at a pitch; how it began is forgotten. */
const piece = (note: NoteEvent, from: number, to: number, pitch: number): NoteEvent => {
  const { glideFrom: _, glideTicks: __, ...plain } = note;
  return { ...plain, at: asTicks(note.at + from), length: asTicks(to - from), pitch: asMidi(pitch) };
};

const slid = (note: NoteEvent, { slide }: HarpNote): readonly NoteEvent[] => {
  const step = Math.floor(Math.min(SLIDE_TICKS, note.length / 3 / Math.max(1, slide.length)));
  if (step < 1) return [note];
  const over = slide.map(({ pitch }, i) => piece(note, i * step, (i + 1) * step, pitch));
  return over.length === 0 ? [note] : [...over, piece(note, over.length * step, note.length, note.pitch)];
};

const shaken = (note: NoteEvent, other: number): readonly NoteEvent[] => {
  const times = Math.max(1, Math.round(note.length / SHAKE_TICKS));
  const edge = (i: number): number => Math.round((i * note.length) / times);
  return Array.from({ length: times }, (_, i) =>
    i === 0
      ? { ...note, length: asTicks(Math.max(1, edge(1))) }
      : {
          ...piece(note, edge(i), edge(i + 1), i % 2 === 0 ? note.pitch : other),
          velocity: clampVelocity(note.velocity - (i % 2 === 0 ? 0 : SHAKE_SOFTER)),
        },
  );
};

/** A curve as glides from point to point; what does not move is one note. */
const curved = (note: NoteEvent, natural: number, points: readonly number[]): readonly NoteEvent[] => {
  const pitchAt = (i: number): number => natural - (points[i] ?? 0) / 100;
  const legs = Math.max(1, Math.min(points.length - 1, note.length));
  const edge = (i: number): number => Math.round((i * note.length) / legs);
  const events: NoteEvent[] = [];
  for (let i = 0; i < legs; i += 1) {
    const to = pitchAt(Math.min(i + 1, points.length - 1));
    const last = events.at(-1);
    if (last !== undefined && last.pitch === to) {
      events[events.length - 1] = { ...last, length: asTicks(note.at + edge(i + 1) - last.at) };
      continue;
    }
    const leg = piece(note, edge(i), edge(i + 1), to);
    const glideFrom = pitchAt(i) - to;
    events.push(glideFrom === 0 ? leg : { ...leg, glideFrom, glideTicks: leg.length });
  }
  return events;
};

/** A held note of the harp voice played the way a phrase asks for it: louder or softer, slid into, bent, shaken. */
export const playManner = (held: NoteEvent, played: HarpNote): readonly NoteEvent[] => {
  const { dynamic, accent, curve } = played.note;
  const [sound] = played.sounds;
  const velocity = clampVelocity(held.velocity + velocityBy(dynamic, accent === true));
  const pieces = slid({ ...held, velocity }, played);
  const main = pieces.at(-1);
  if (main === undefined || sound === undefined) return pieces;
  const before = pieces.slice(0, -1);
  if (played.shake !== null) return [...before, ...shaken(main, played.shake.pitch)];
  return curve === undefined ? pieces : [...before, ...curved(main, sound.pitch + sound.bend, curve)];
};
