import type { NoteDraft } from '../score/note';
import { ticksOf } from '../score/steps';
import { pick, type Random } from '../theory/random';
import type { Passage } from './passage';

/** So many bars of one rhythm are enough: the next is varied, and at the end of a phrase one bar earlier. */
const MOST_ALIKE = 4;

const GRACE = { share: 0.7, velocity: 60 } as const;

type Line = readonly NoteDraft[];

const rhythmOf = (line: Line, barAt: number): string => line.map(({ at }) => Math.round(at - barAt)).join();

/** A light repeated note on the off-beat before the next note. */
const withSkip = (random: Random, { grid }: Passage, line: Line, off: number): Line => {
  const long = line.filter(({ length }) => length > grid.beatTicks * 0.75);
  if (long.length === 0) return line;
  const held = pick(random, long.slice(Math.floor(long.length / 2)));
  const until = held.at + held.length;
  const beat = Math.max(1, Math.round(held.length / grid.beatTicks)) - 1;
  const at = held.at + beat * grid.beatTicks + off;
  if (at >= until - 30) return line;
  const skip = { ...held, at, length: (until - at) * GRACE.share, velocity: GRACE.velocity };
  return line.flatMap((note) =>
    note === held ? [{ ...held, length: (at - held.at) * 0.85 }, skip] : [note],
  );
};

/** One note fewer: a weak one is left to the note before it, which goes on. */
const withHold = (random: Random, line: Line, isWeak: (note: NoteDraft) => boolean): Line => {
  const weak = line.filter((note, i) => i > 0 && isWeak(note));
  if (weak.length === 0 || line.length < 3) return line;
  const gone = pick(random, weak);
  const index = line.indexOf(gone);
  return line.flatMap((note, i) => {
    if (note === gone) return [];
    return i === index - 1 ? [{ ...note, length: gone.at + gone.length - note.at }] : [note];
  });
};

/** A bar of a bass line to vary: where it begins, and where its chords do. */
export interface BassBar {
  readonly at: number;
  readonly chordsAt: readonly number[];
  readonly line: Line;
}

const variationsOf = (random: Random, passage: Passage, { at, chordsAt, line }: BassBar, off: number) => {
  const { beatTicks } = passage.grid;
  const begins = (note: NoteDraft) => chordsAt.some((start) => Math.abs(start - note.at) < 1);
  const between = (note: NoteDraft) => Math.round(note.at - at) % beatTicks > 1;
  const skip = withSkip(random, passage, line, off);
  const less = withHold(random, line, (note) => between(note) && !begins(note));
  const beatHeld = withHold(random, line, (note) => {
    const beat = Math.round((note.at - at) / beatTicks);
    return !between(note) && beat % 2 === 1 && !begins(note);
  });
  return random() < 0.5 ? [skip, less, beatHeld] : [less, skip, beatHeld];
};

/**
 * A bass line whose rhythm never stays the same for long: after four bars alike (three where a phrase ends) a bar gets a
 * skip, or one note fewer (common practice, no source). Chords still begin with their bass.
 */
export const varyRhythm = (random: Random, passage: Passage, bars: readonly BassBar[]): Line => {
  const off = ticksOf(passage.grid, { beat: 0, step: 1, of: 2, mark: '' });
  let before = '';
  let alike = 0;
  return bars.flatMap((bar, i) => {
    const own = rhythmOf(bar.line, bar.at);
    const most = i % 4 === 3 ? MOST_ALIKE - 1 : MOST_ALIKE;
    const tired = own === before && alike >= most;
    const other = tired
      ? variationsOf(random, passage, bar, off).find((line) => rhythmOf(line, bar.at) !== own)
      : undefined;
    const line = other ?? bar.line;
    const rhythm = rhythmOf(line, bar.at);
    alike = rhythm === before ? alike + 1 : 1;
    before = rhythm;
    return line;
  });
};
