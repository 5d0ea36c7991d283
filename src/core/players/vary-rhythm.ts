import type { PhrasePlace } from '../chart/phrases';
import type { NoteDraft } from '../score/note';
import { ticksOf } from '../score/steps';
import { pick, type Random } from '../theory/random';
import type { Passage } from './passage';

/** So many bars of even beats are enough: the next is varied, and at the end of a phrase one bar earlier. */
const MOST_ALIKE = 4;
/** A figure turns at the end of every phrase, and now and then in the bar before. */
const MOST_FIGURES = 2;
const EARLY_TURN = 0.4;

const GRACE = { share: 0.7, velocity: 60 } as const;
/** A skip with less room than this, in ticks, would be a click. */
const SHORTEST_SKIP = 60;

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
  if (at >= until - SHORTEST_SKIP) return line;
  const skip = { ...held, at, length: (until - at) * GRACE.share, velocity: GRACE.velocity };
  return line.flatMap((note) =>
    note === held ? [{ ...held, length: (at - held.at) * 0.85 }, skip] : [note],
  );
};

/** A note said twice: a short one is struck again on the off-beat after it, where the line is silent there. */
const withEcho = (random: Random, { grid }: Passage, line: Line, off: number): Line => {
  const open = line.filter(({ at }, i) => {
    const next = line[i + 1]?.at;
    return next !== undefined && next - at > grid.beatTicks && Math.round(at) % grid.beatTicks === 0;
  });
  if (open.length === 0) return line;
  const said = pick(random, open);
  const length = Math.min(said.length, (grid.beatTicks - off) * GRACE.share);
  const echo = { ...said, at: said.at + off, length, velocity: GRACE.velocity };
  return line.flatMap((note) =>
    note === said ? [{ ...said, length: Math.min(said.length, off * 0.9) }, echo] : [note],
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
  readonly phrase: PhrasePlace;
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
  const both = random() < 0.5 ? [skip, less] : [less, skip];
  return [...both, beatHeld, withEcho(random, passage, line, off)];
};

/** A note on every beat and none between. */
const isEven = ({ grid }: Passage, { at, line }: BassBar): boolean =>
  line.length === grid.beats && line.every((note) => Math.round(note.at - at) % grid.beatTicks < 2);

/** How many bars of one rhythm may stand before a bar is varied. */
const mostAlike = (random: Random, passage: Passage, bar: BassBar): number => {
  const left = bar.phrase.of - 1 - bar.phrase.bar;
  const turns = left === 0;
  if (isEven(passage, bar)) return turns ? MOST_ALIKE - 1 : MOST_ALIKE;
  if (turns) return 1;
  return left === 1 && random() < EARLY_TURN ? MOST_FIGURES : MOST_ALIKE;
};

/**
 * A bass line whose rhythm never stays the same for long: after four bars of even beats (three where a phrase ends), and
 * with a figure at the end of every phrase, a bar gets a skip, an echo, or one note fewer (common practice, no source).
 * Chords still begin with their bass.
 */
export const varyRhythm = (random: Random, passage: Passage, bars: readonly BassBar[]): Line => {
  const off = ticksOf(passage.grid, { beat: 0, step: 1, of: 2, mark: '' });
  let before = '';
  let alike = 0;
  return bars.flatMap((bar) => {
    const own = rhythmOf(bar.line, bar.at);
    const most = mostAlike(random, passage, bar);
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
