import type { Playhead } from '../../core/arranger/playhead';
import type { TakeNote } from '../../core/takes/take-note';
import type { TakeEvent } from '../../core/takes/take-passes';
import type { TakeSound } from '../../core/takes/take-sound';
import { createTape, type Tape } from '../../core/takes/take-tape';
import { asSeconds } from '../../core/theory/units';
import type { SoundBlock } from '../../mic/microphone';
import type { Hearing } from '../ear/hearing';
import type { PlacedNote } from '../ear/place-notes';

/** What lies on the tape, ready to be written down. */
export interface TapedTake {
  readonly sound: TakeSound;
  readonly events: readonly TakeEvent[];
}

/** Keeps the last minutes of what is played while it is asked to. */
export interface TapeKeeper {
  /** Keeps so many minutes from now on; 0 keeps nothing, and forgets what was kept. */
  keep(minutes: number): void;
  /** Nothing is recorded while this holds, as while a take is heard again. */
  pause(on: boolean): void;
  onPlayhead(playhead: Playhead | null): void;
  /** Null where nothing is kept. */
  taken(): TapedTake | null;
  forget(): void;
  dispose(): void;
}

/** What is kept, or null while nothing is. */
type Tell = (kept: { readonly seconds: number; readonly bytes: number } | null) => void;

type Taped = { readonly at: number } & (
  | { readonly kind: 'bar'; readonly playhead: Playhead }
  | { readonly kind: 'note'; readonly placed: PlacedNote }
);

/** What is on the tape by its own time; notes that still sound, or have no place on it, are left out. */
const eventOf = (taped: Taped, timeOf: (at: number) => number | null): readonly TakeEvent[] => {
  if (taped.kind === 'bar') return [taped];
  const { note, playhead } = taped.placed;
  const from = timeOf(note.from);
  if (note.to === null || from === null) return [];
  const to = asSeconds(from + note.to - note.from);
  const heard: TakeNote = { note: { ...note, from: asSeconds(from), to }, playhead };
  return [{ kind: 'note', heard }];
};

/** @param tell is told what is kept, whenever that changes. */
export const createTapeKeeper = (hearing: Hearing, tell: Tell): TapeKeeper => new Keeper(hearing, tell);

class Keeper implements TapeKeeper {
  private readonly hearing: Hearing;
  private readonly tell: Tell;
  private readonly leaving: readonly (() => void)[];
  private minutes = 0;
  private paused = false;
  private tape: Tape | null = null;
  private rate = 1;
  private events: Taped[] = [];
  /** Notes that sound, by their number. */
  private sounding = new Map<number, Taped>();
  private now = 0;

  constructor(hearing: Hearing, tell: Tell) {
    this.hearing = hearing;
    this.tell = tell;
    this.leaving = [
      hearing.onHeard(({ begun, frames }) => {
        if (begun !== null) this.sounding = new Map();
        this.now = frames.at(-1)?.known ?? this.now;
      }),
      hearing.onNote((placed) => this.takeNote(placed)),
      hearing.onSound((block) => this.takeSound(block)),
    ];
  }

  keep(minutes: number): void {
    if (minutes === this.minutes) return;
    this.minutes = minutes;
    this.forget();
    this.record();
  }

  pause(on: boolean): void {
    this.paused = on;
    this.record();
  }

  onPlayhead(playhead: Playhead | null): void {
    if (this.listens() && playhead !== null) this.events.push({ at: this.now, kind: 'bar', playhead });
  }

  taken(): TapedTake | null {
    if (this.tape === null) return null;
    const { heard, sent, timeOf } = this.tape.contents();
    const sound = { sampleRate: this.rate, heard, sent, late: this.hearing.roundTrip() };
    return { sound, events: this.events.flatMap((each) => eventOf(each, timeOf)) };
  }

  forget(): void {
    this.tape = null;
    this.events = [];
    this.sounding.clear();
    this.tell(null);
  }

  dispose(): void {
    for (const leave of this.leaving) leave();
  }

  private listens(): boolean {
    return this.minutes > 0 && !this.paused;
  }

  private record(): void {
    this.hearing.record(this.listens());
  }

  private takeNote(placed: PlacedNote): void {
    if (!this.listens()) return;
    const { id, from, to } = placed.note;
    const known = this.sounding.get(id);
    const taped: Taped = { at: from, kind: 'note', placed };
    const place = known === undefined ? -1 : this.events.lastIndexOf(known);
    if (place < 0) this.events.push(taped);
    else this.events[place] = taped;
    if (to === null) this.sounding.set(id, taped);
    else this.sounding.delete(id);
  }

  private takeSound(block: SoundBlock): void {
    if (!this.listens()) return;
    if (this.tape === null || this.rate !== block.sampleRate)
      this.tape = createTape(block.sampleRate, 60 * this.minutes);
    this.rate = block.sampleRate;
    this.tape.push(block);
    const since = this.tape.since() ?? 0;
    if ((this.events[0]?.at ?? since) < since) this.events = this.events.filter(({ at }) => at >= since);
    this.tell({ seconds: this.tape.seconds(), bytes: this.tape.bytes() });
  }
}
