import type { HeardGrip } from '../grips/grip-listener';
import { soundHz } from '../harp/intonation';
import { elementAt } from '../theory/element-at';
import { centsBetween, hzOf, STANDARD_PITCH } from '../theory/temperament';
import { asCents, asSeconds, type Hz } from '../theory/units';
import type { HeardNote } from './heard-note';

/** Puts notes in which several holes sound in the place of those that a single pitch was heard of. */
export interface GripNotes {
  /** Takes what is new of both; returns what is to be reported. */
  take(notes: readonly HeardNote[], grips: readonly HeardGrip[]): readonly HeardNote[];
}

/** A note that began so long before a grip is the grip, heard first as one pitch. Seconds. */
const BEFORE = 0.06;
/** What goes on for so long after a grip is a note of its own. Seconds. */
const AFTER = 0.1;
/** Several holes are held longer than this before one alone goes on. Seconds. */
const MOMENT = 0.2;
/** Far above the numbers of single notes, and not below 0, where those of instruments are. */
const FIRST_ID = 2 ** 32;
/** Share of a note that lies in a grip, from which on it is what one pitch of the grip seemed to be. */
const WITHIN = 0.5;

const noteOf = (
  { sounds, level }: HeardGrip,
  when: Pick<HeardNote, 'id' | 'from' | 'to'>,
  reference: Hz,
): HeardNote => {
  const sound = elementAt(sounds, 0);
  const frequency = soundHz(sound, reference);
  const { pitch } = sound;
  return {
    ...when,
    ...{ sound, together: sounds.slice(1), alternatives: [], pitch, frequency, level },
    ...{ steady: true, joined: 'attack', vibrato: null, offset: null },
    movement: { start: asCents(0), settling: asSeconds(0), end: asCents(0) },
    cents: centsBetween(hzOf(pitch, { reference }), frequency),
  };
};

/** For one stream. Throws RangeError on a reference outside 440–446 Hz. */
export const createGripNotes = (reference: Hz = STANDARD_PITCH): GripNotes => new Joiner(reference);

/** The grip that sounds, and the note it is reported as. */
interface Sounding {
  readonly grip: number;
  readonly id: number;
  readonly from: HeardNote['from'];
}

class Joiner implements GripNotes {
  private readonly reference: Hz;
  /** The single note that sounds. */
  private open: HeardNote | null = null;
  private now: Sounding | null = null;
  /** Notes that sound under a grip, by their ids, and when it ended. */
  private readonly under = new Map<number, number>();
  private ids = FIRST_ID;

  constructor(reference: Hz) {
    this.reference = reference;
  }

  take(notes: readonly HeardNote[], grips: readonly HeardGrip[]): readonly HeardNote[] {
    if (notes.length === 0 && grips.length === 0) return notes;
    return [...notes.flatMap((note) => this.single(note)), ...grips.map((grip) => this.several(grip))];
  }

  private single(note: HeardNote): readonly HeardNote[] {
    const ended = this.under.get(note.id);
    if (ended !== undefined) {
      if (note.to === null) return [];
      this.under.delete(note.id);
      return note.to - ended > AFTER ? [{ ...note, from: asSeconds(ended) }] : [];
    }
    if (this.now !== null && note.from >= this.now.from - BEFORE) {
      if (note.to === null) this.under.set(note.id, Number.POSITIVE_INFINITY);
      return [];
    }
    if (note.to === null) this.open = note;
    else if (this.open?.id === note.id) this.open = null;
    return [note];
  }

  private several(grip: HeardGrip): HeardNote {
    const now = this.now?.grip === grip.id ? this.now : this.begin(grip);
    this.now = grip.to === null ? now : null;
    const to = grip.to === null ? null : asSeconds(Math.max(now.from, grip.to));
    if (to !== null) {
      for (const [id, ended] of this.under) if (ended > to) this.under.set(id, to);
    }
    return noteOf(grip, { id: now.id, from: now.from, to }, this.reference);
  }

  private begin(grip: HeardGrip): Sounding {
    const { open } = this;
    this.open = null;
    if (open === null || Math.abs(open.from - grip.from) > BEFORE) {
      this.ids += 1;
      if (open !== null && open.from > grip.from) this.under.set(open.id, Number.POSITIVE_INFINITY);
      return { grip: grip.id, id: this.ids, from: asSeconds(grip.from) };
    }
    // Its end is the grip's.
    this.under.set(open.id, Number.POSITIVE_INFINITY);
    return { grip: grip.id, id: open.id, from: open.from };
  }
}

/** A note as one for each hole that sounds in it, lowest first, at the same times. Throws RangeError as `createEar` does. */
export const eachHole = (note: HeardNote, reference: Hz = STANDARD_PITCH): readonly HeardNote[] => [
  { ...note, together: [] },
  ...note.together.map((sound): HeardNote => {
    const { id, from, to, level } = note;
    return noteOf({ id, from, to, level, sounds: [sound] }, { id, from, to }, reference);
  }),
];

/**
 * Of notes that are all there: without grips for a moment under one note that goes on in the same breath. What sounded
 * beside its beginning was a stroke of the band, or the room.
 */
export const withoutMoments = (notes: readonly HeardNote[]): readonly HeardNote[] => {
  const begun = new Map<HeardNote['from'], HeardNote>();
  for (const grip of notes)
    if (grip.together.length > 0 && grip.to !== null && grip.to - grip.from < MOMENT)
      begun.set(grip.to, grip);
  const goesOn = (note: HeardNote): HeardNote | undefined =>
    note.together.length === 0 ? begun.get(note.from) : undefined;
  const moments = new Set(notes.map(goesOn));
  return notes
    .filter((note) => !moments.has(note))
    .map((note) => ({ ...note, from: goesOn(note)?.from ?? note.from }));
};

/** Of notes that are all there: without those of one pitch that were heard within a grip before it was sure. */
export const withoutSeeming = (notes: readonly HeardNote[]): readonly HeardNote[] => {
  const grips = notes.filter(({ together }) => together.length > 0);
  const inGrips = ({ from, to }: HeardNote): number =>
    grips.reduce((sum, grip) => {
      const shared = Math.min(to ?? from, grip.to ?? from) - Math.max(from, grip.from);
      return sum + Math.max(0, shared);
    }, 0);
  return notes.filter(
    (note) => note.together.length > 0 || note.to === null || inGrips(note) < WITHIN * (note.to - note.from),
  );
};
