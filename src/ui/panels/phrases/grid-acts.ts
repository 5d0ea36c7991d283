import type { Harp } from '../../../core/harp/harp';
import {
  addNote,
  bentBy,
  moveNote,
  onHole,
  otherBreath,
  removeNote,
  resizeNote,
  snapTo,
  soundNote,
} from '../../../core/phrase/edit-phrase';
import type { Phrase, PhraseNote, PhraseSound } from '../../../core/phrase/phrase';
import type { Drag } from './grid-note';

/** What can be done with the chosen note, by button or key. */
export interface Act {
  readonly text: string;
  /** As `KeyboardEvent.key` has it, with `Shift+` before it. */
  readonly keys: readonly string[];
  readonly needsNote: boolean;
  /** The phrase as it is then. */
  readonly change: () => Phrase;
}

/** What is changed. */
export interface GridGround {
  readonly phrase: Phrase;
  readonly harp: Harp;
  /** Of the grid, in ticks. */
  readonly step: number;
}

/** What new notes are, where nothing is chosen yet. */
const FIRST: PhraseSound = { hole: 2, breath: 'draw', technique: 'natural', bend: 0 };

const endOf = ({ notes }: Phrase): number => {
  const last = notes.at(-1);
  return last === undefined ? 0 : last.at + last.length;
};

/** No note gets shorter than half a step of the grid. */
const shortest = (step: number): number => step / 2;

/** The tick behind the chosen note, or behind the last: where a note is added. */
export const nextTick = ({ phrase, step }: GridGround, chosen: PhraseNote | undefined): number =>
  snapTo(chosen === undefined ? endOf(phrase) : chosen.at + chosen.length, step);

/** A note put in at a tick, like the chosen one; on a hole of its own, as its natural note. */
export const addedAt = (
  { phrase, harp, step }: GridGround,
  chosen: PhraseNote | undefined,
  at: number,
  hole?: number,
): Phrase => {
  const like = chosen?.sounds[0] ?? FIRST;
  const sound = hole === undefined ? like : onHole(harp, { ...like, technique: 'natural', bend: 0 }, hole);
  return addNote(phrase, { at, length: chosen?.length ?? 2 * step, sound });
};

/** The phrase after a note was dragged, snapped to the grid. */
export const draggedTo = (
  { phrase, harp, step }: GridGround,
  index: number,
  { kind, ticks, holes }: Drag,
): Phrase => {
  const note = phrase.notes[index];
  const [sound] = note?.sounds ?? [];
  if (note === undefined || sound === undefined) return phrase;
  if (kind === 'resize') {
    const end = snapTo(note.at + note.length + ticks, step);
    return resizeNote(phrase, index, Math.max(shortest(step), end - note.at));
  }
  const moved = moveNote(phrase, index, snapTo(note.at + ticks, step));
  return holes === 0 ? moved : soundNote(moved, index, onHole(harp, sound, sound.hole + holes));
};

/** Every change of the note that is chosen. */
export const actsOn = (ground: GridGround, index: number): readonly Act[] => {
  const { phrase, harp, step } = ground;
  const note = phrase.notes[index];
  const sound = note?.sounds[0] ?? FIRST;
  const act = (text: string, keys: readonly string[], change: () => Phrase, needsNote = true): Act => ({
    ...{ text, keys, change, needsNote },
  });
  const sounds = (next: PhraseSound): Phrase => soundNote(phrase, index, next);
  const moved = (by: number): Phrase => moveNote(phrase, index, snapTo((note?.at ?? 0) + by, step));
  const grown = (by: number): Phrase =>
    resizeNote(phrase, index, Math.max(shortest(step), (note?.length ?? step) + by));
  return [
    act('Add', ['Insert', 'a'], () => addedAt(ground, note, nextTick(ground, note)), false),
    act('Breath', ['b'], () => sounds(otherBreath(harp, sound))),
    act('Bend', ['.'], () => sounds(bentBy(harp, sound, 1))),
    act('Unbend', [','], () => sounds(bentBy(harp, sound, -1))),
    act('Hole −', ['ArrowUp'], () => sounds(onHole(harp, sound, sound.hole - 1))),
    act('Hole +', ['ArrowDown'], () => sounds(onHole(harp, sound, sound.hole + 1))),
    act('Earlier', ['ArrowLeft'], () => moved(-step)),
    act('Later', ['ArrowRight'], () => moved(step)),
    act('Shorter', ['Shift+ArrowLeft'], () => grown(-step)),
    act('Longer', ['Shift+ArrowRight'], () => grown(step)),
    act('Delete', ['Delete', 'Backspace'], () => removeNote(phrase, index)),
  ];
};
