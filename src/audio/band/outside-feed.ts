/** Tells whoever plays along outside of the page what leaves the loudspeaker, a little ahead. */
import { PULSE_TICKS } from '../../core/midi/out-messages';
import type { OutsideEvent, OutsideNote, OutsidePulse } from '../../core/midi/outside-event';
import type { ScheduledNote } from '../transport/scheduled-note';
import { type Placement, type Timeline, tickAtTime, timeOfTick } from '../transport/timeline';
import type { NoteSink } from '../transport/transport';

/** Seconds that are told ahead: more than two beats of the band's pulse. What was told is not taken back. */
const AHEAD = 0.25;

/**
 * The page's clock is read against the one of the sound at every beat, and either is late now and then: of a new reading
 * this share counts, which leaves a third of a millisecond of ten; one that is farther off than `jump` seconds holds at
 * once.
 */
const READING = { share: 0.03, jump: 0.1 } as const;

/** What is left out as told before, where a timeline was cut: seconds. A pulse at 400 beats a minute lasts 6 ms. */
const SAME_PULSE = 0.003;

export interface FeedOptions {
  readonly timeline: () => Timeline;
  /** Seconds of the audio clock that leave the loudspeaker now. */
  readonly outputTime: () => number;
  /** Page time in ms. */
  readonly pageTime: () => number;
  readonly tell: (events: readonly OutsideEvent[]) => void;
}

/** A sink beside the player that sounds: it hears of every note that is handed over or cut. */
export interface OutsideFeed extends NoteSink {
  /** Tells what is due; to be called at every beat of the band's pulse. */
  beat(): void;
}

/** One sink for two. */
export const bothSinks = (one: NoteSink, other: NoteSink): NoteSink => ({
  start: (note) => {
    one.start(note);
    other.start(note);
  },
  cut: (at) => {
    one.cut(at);
    other.cut(at);
  },
});

const keyOf = ({ event: { part, pitch } }: ScheduledNote): string => `${part} ${pitch}`;

const cutNote = (note: ScheduledNote, at: number): ScheduledNote => ({
  ...note,
  until: Math.min(note.until, at),
});

/** The pulses of a placed section that leave between two times. */
const pulsesOf = (placement: Placement, from: number, to: number): readonly [number, OutsidePulse][] => {
  const { section } = placement;
  const begin = Math.max(from, placement.from);
  const end = Math.min(to, placement.until);
  const told = { index: section.index, countsIn: section.kind === 'count-in' };
  const pulses: [number, OutsidePulse][] = [];
  const first = Math.max(0, Math.ceil(tickAtTime(placement, begin) / PULSE_TICKS - 1e-6));
  for (let ticks = first * PULSE_TICKS; ticks < section.score.length; ticks += PULSE_TICKS) {
    const time = timeOfTick(placement, ticks);
    if (time >= end) break;
    pulses.push([time, { kind: 'pulse', at: 0, section: told, ticks }]);
  }
  return pulses;
};

/** At one moment a note ends before another begins, and the clock comes first. */
const RANK = { pulse: 0, off: 1, on: 2 } as const;

/** Creates a feed that has told nothing. */
export const createOutsideFeed = (options: FeedOptions): OutsideFeed => new Feed(options);

class Feed implements OutsideFeed {
  private readonly options: FeedOptions;
  private pending: readonly ScheduledNote[] = [];
  private sounding = new Map<string, ScheduledNote>();
  private offset: number | null = null;
  private toldTo = 0;
  private lastPulse = Number.NEGATIVE_INFINITY;

  constructor(options: FeedOptions) {
    this.options = options;
  }

  start(note: ScheduledNote): void {
    const held = this.sounding.get(keyOf(note));
    // A note that goes on through a cut is not struck again.
    if (note.offset > 0 && held !== undefined) this.sounding.set(keyOf(note), { ...held, until: note.until });
    else this.pending = [...this.pending, note];
  }

  cut(at: number): void {
    this.pending = this.pending.filter((note) => note.at < at).map((note) => cutNote(note, at));
    this.sounding = new Map([...this.sounding].map(([key, note]) => [key, cutNote(note, at)]));
  }

  beat(): void {
    const { outputTime, pageTime, timeline, tell } = this.options;
    const now = outputTime();
    const to = now + AHEAD;
    const from = Math.max(now - AHEAD, Math.min(this.toldTo, to));
    const pulses = timeline().flatMap((placement) => pulsesOf(placement, from, to));
    const timed = [...this.notesTo(to), ...pulses.filter(([time]) => this.isNext(time))];
    this.toldTo = to;
    const offset = this.offsetOf(pageTime() / 1000 - now);
    if (timed.length === 0) return;
    tell(
      timed
        .sort(([a, one], [b, other]) => a - b || RANK[one.kind] - RANK[other.kind])
        .map(([time, event]) => ({ ...event, at: (time + offset) * 1000 })),
    );
  }

  /** Notes that begin or end before a time, and are not told again. */
  private notesTo(to: number): readonly [number, OutsideEvent][] {
    const told: [number, OutsideNote][] = [];
    const say = (kind: 'on' | 'off', time: number, { event }: ScheduledNote): void => {
      const { part, pitch, velocity } = event;
      told.push([time, { kind, at: 0, part, pitch, velocity }]);
    };
    const due = this.pending.filter(({ at }) => at < to).sort((a, b) => a.at - b.at);
    this.pending = this.pending.filter(({ at }) => at >= to);
    for (const note of due) {
      const before = this.sounding.get(keyOf(note));
      if (before !== undefined) say('off', Math.min(before.until, note.at), before);
      say('on', note.at, note);
      this.sounding.set(keyOf(note), note);
    }
    for (const [key, note] of this.sounding) {
      if (note.until >= to) continue;
      say('off', note.until, note);
      this.sounding.delete(key);
    }
    return told;
  }

  /** Seconds from the clock of the sound to that of the page. */
  private offsetOf(read: number): number {
    const { offset } = this;
    const jumps = offset === null || Math.abs(read - offset) > READING.jump;
    this.offset = jumps ? read : offset + READING.share * (read - offset);
    return this.offset;
  }

  private isNext(time: number): boolean {
    if (time - this.lastPulse < SAME_PULSE) return false;
    this.lastPulse = time;
    return true;
  }
}
