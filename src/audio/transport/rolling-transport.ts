/**
 * The band's own clockwork. A rolling window of the score is handed to the sounding side ahead of time, so that
 * a busy page loses nothing; any change cuts what was handed over a moment from now and fills the window anew.
 * Pure arithmetic over a clock that is read, never awaited: tests move it by hand.
 */
import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import { elementAt } from '../../core/theory/element-at';
import {
  barIndexOfNumber,
  chorusWith,
  formPositionAt,
  type SectionSource,
  sectionInPlaceOf,
  soundsAlike,
  ticksOfFormPosition,
} from './form-position';
import { type HeldPlace, holdBar } from './held-place';
import {
  allNotes,
  notesAcross,
  notesBetween,
  type Push,
  pushSeconds,
  type ScheduledNote,
} from './scheduled-note';
import {
  cutTimeline,
  forgetBefore,
  nextBeat,
  type Placement,
  placementAt,
  placeSection,
  type Timeline,
  tickAtTime,
  timeOfTick,
} from './timeline';
import type { NoteSink, Transport, TransportOptions } from './transport';

/** 1.75 s lets the page be busy for more than a second and a half. */
const WINDOW = 1.75;
const CUT_AFTER = 0.03;
/** Sections are set on the clock this much before the window reaches them: more than any push. */
const PLACE_AHEAD = 0.25;
/** What was heard is remembered this long, for output devices with much delay. */
const REMEMBER = 5;

/** Creates a transport, stopped. */
export const createTransport = (options: TransportOptions): Transport => new RollingTransport(options);

class RollingTransport implements Transport {
  private readonly now: () => number;
  private readonly source: SectionSource;
  private readonly sink: NoteSink;
  private readonly window: number;
  private readonly cutAfter: number;
  private program: Program | null = null;
  private push: Push = {};
  private fromBar = 0;
  private placements: Timeline = [];
  private filledTo = 0;
  private lateNotes = 0;
  private next: { readonly after: Section; readonly section: Section | null } | null = null;
  private previewed: {
    readonly program: Program;
    readonly old: Section;
    readonly section: Section | null;
  } | null = null;

  constructor({ now, source, sink, window = WINDOW, cutAfter = CUT_AFTER }: TransportOptions) {
    this.now = now;
    this.source = source;
    this.sink = sink;
    this.window = window;
    this.cutAfter = cutAfter;
  }

  start(program: Program, fromBar: number, at: number): void {
    this.stop();
    this.adopt(program);
    this.fromBar = fromBar;
    this.lateNotes = 0;
    const section = this.source(program, 0, fromBar);
    if (section === null) return;
    this.placements = [placeSection(section, at)];
    this.filledTo = this.now();
    this.fill();
  }

  stop(): void {
    if (this.program === null) return;
    this.sink.cut(this.now());
    this.program = null;
    this.placements = [];
    this.next = null;
    this.previewed = null;
  }

  hold(heard: Playhead): HeldPlace | null {
    const { program, fromBar } = this;
    this.stop();
    return program && holdBar(program, fromBar, heard);
  }

  goOn({ program, fromBar, playhead: { section, ticks } }: HeldPlace, at: number): void {
    this.stop();
    this.adopt(program);
    this.fromBar = fromBar;
    this.lateNotes = 0;
    this.filledTo = this.now();
    this.enter(section, ticks, at, true);
  }

  tick(): void {
    if (this.program === null) return;
    this.fill();
    const current = placementAt(this.placements, this.now());
    if (current?.open) this.sectionFollowing(current.section);
    this.placements = forgetBefore(this.placements, this.now() - REMEMBER);
  }

  change(program: Program): void {
    const sounding = this.openAt(this.now() + this.cutAfter);
    if (sounding === null) return;
    const section = this.replacement(program, sounding);
    const same =
      section !== null && section.index === sounding.section.index && soundsAlike(section, sounding.section);
    const samePush = JSON.stringify(pushSeconds(program.style.push)) === JSON.stringify(this.push);
    // Making a section takes time: only now is it known when the cut can be.
    const at = this.now() + this.cutAfter;
    const current = this.openAt(at);
    if (current?.section !== sounding.section) {
      this.change(program);
      return;
    }
    this.adopt(program);
    if (section === null) this.endAt(at);
    else if (same && samePush) this.renewFrom({ ...current, section });
    else
      this.enter(
        section,
        ticksOfFormPosition(section, formPositionAt(current.section, tickAtTime(current, at))),
        at,
        true,
      );
  }

  seek(bar: number): void {
    const at = this.now() + this.cutAfter;
    const current = this.openAt(at);
    if (this.program === null || current === null) return;
    if (current.section.kind === 'count-in' || current.section.kind === 'intro') {
      this.fromBar = bar;
      this.renewFrom(current);
      return;
    }
    const { program, fromBar } = this;
    const section = chorusWith(this.source, program, { bar, from: current.section, fromBar });
    if (section === null) return;
    const beat = timeOfTick(current, nextBeat(current.section, tickAtTime(current, at)));
    const index = Math.max(0, barIndexOfNumber(section, bar));
    this.enter(section, elementAt(section.chart.bars, index).at, beat, false);
  }

  refill(): void {
    const at = this.now() + this.cutAfter;
    const current = this.openAt(at);
    if (current === null) return;
    this.enter(current.section, tickAtTime(current, at), at, true);
  }

  preview(program: Program, seconds: number): readonly ScheduledNote[] {
    const at = this.now() + this.cutAfter;
    const current = this.openAt(at);
    if (current === null) return [];
    const section = this.replacement(program, current);
    if (section === null) return [];
    const ticks = ticksOfFormPosition(section, formPositionAt(current.section, tickAtTime(current, at)));
    const placement = placeSection(section, at, ticks);
    return [...notesAcross(placement, at, {}), ...notesBetween(placement, at, at + seconds, {})];
  }

  ahead(): readonly ScheduledNote[] {
    const current = this.openAt(this.now());
    if (current === null) return [];
    const rest = notesBetween(current, this.now(), current.until, {});
    const next = this.sectionFollowing(current.section);
    return next ? [...rest, ...allNotes(placeSection(next, current.until))] : rest;
  }

  timeline(): Timeline {
    return this.placements;
  }

  sectionAfter(time: number): Section | null {
    const index = this.placements.findIndex(({ from, until }) => from <= time && time < until);
    const [current, following] = index < 0 ? [] : this.placements.slice(index, index + 2);
    if (this.program === null || current === undefined) return null;
    if (following) return following.section;
    return current.open ? this.sectionFollowing(current.section) : null;
  }

  playing(): boolean {
    const last = this.placements.at(-1);
    if (this.program === null || last === undefined) return false;
    return this.now() < last.until || (last.open && this.sectionFollowing(last.section) !== null);
  }

  late(): number {
    return this.lateNotes;
  }

  private adopt(program: Program): void {
    this.program = program;
    this.push = pushSeconds(program.style.push);
    this.next = null;
  }

  private openAt(time: number): Placement | null {
    const found = placementAt(this.placements, time) ?? this.placements.find(({ from }) => from > time);
    return found?.open ? found : null;
  }

  private replacement(program: Program, current: Placement): Section | null {
    const old = current.section;
    if (this.previewed?.program === program && this.previewed.old === old) return this.previewed.section;
    const { number } = formPositionAt(old, tickAtTime(current, this.now() + this.cutAfter));
    const section = sectionInPlaceOf(this.source, program, { section: old, number }, this.fromBar);
    this.previewed = { program, old, section };
    return section;
  }

  private sectionFollowing(after: Section): Section | null {
    if (this.next?.after === after) return this.next.section;
    const section =
      after.last || this.program === null ? null : this.source(this.program, after.index + 1, this.fromBar);
    this.next = { after, section };
    return section;
  }

  /** Keeps what sounds now and plans everything after it anew. */
  private renewFrom(current: Placement): void {
    const end = current.until;
    this.next = null;
    this.placements = this.placements
      .filter(({ from }) => from < end)
      .map((placement) => (placement.from === current.from ? current : placement));
    if (this.filledTo > end) {
      this.sink.cut(end);
      this.filledTo = end;
    }
    this.fill();
  }

  private endAt(at: number): void {
    this.sink.cut(at);
    this.placements = cutTimeline(this.placements, at);
  }

  /** Goes on at tick `ticks` of a section at a time, taking up held notes on the way when asked. */
  private enter(section: Section, ticks: number, at: number, takeUp: boolean): void {
    this.next = null;
    this.sink.cut(at);
    const placement = placeSection(section, at, ticks);
    this.placements = [...cutTimeline(this.placements, at), placement];
    if (takeUp) for (const note of notesAcross(placement, at, this.push)) this.sink.start(note);
    this.filledTo = at;
    this.fill();
  }

  private extend(to: number): void {
    for (let last = this.placements.at(-1); last?.open && last.until < to; last = this.placements.at(-1)) {
      const section = this.sectionFollowing(last.section);
      if (section === null || section.score.length <= 0) return;
      this.placements = [...this.placements, placeSection(section, last.until)];
    }
  }

  private fill(): void {
    const now = this.now();
    const to = Math.max(now + this.window, this.filledTo);
    this.extend(to + PLACE_AHEAD);
    const notes = this.placements
      .filter(({ open }) => open)
      .flatMap((placement) => notesBetween(placement, this.filledTo, to, this.push));
    for (const note of notes.sort((one, other) => one.at - other.at)) {
      if (note.at < now) this.lateNotes += 1;
      if (note.at >= now - WORTH_STARTING) this.sink.start(note);
    }
    this.filledTo = to;
  }
}

/** A note later than this would be heard as a mistake: it is left out. */
const WORTH_STARTING = 0.05;
