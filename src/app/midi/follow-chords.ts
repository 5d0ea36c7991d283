import type { FollowedChord } from '../../core/arranger/followed';
import type { Playhead } from '../../core/arranger/playhead';
import { secondsPerTickAt } from '../../core/arranger/section-time';
import type { Chord } from '../../core/theory/chord';
import { chordOf } from '../../core/theory/chords';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import type { MidiState } from './midi-state';

/** A band that follows the chords that are held. */
export interface FollowChords {
  /** To be told whenever other keys are held. @param chord the chord they are; null for none. */
  hold(keys: readonly number[], chord: Chord | null): void;
  onPlayhead(position: Playhead | null): void;
  /** Back to the chart: the band stops, or is to follow no longer. */
  forget(): void;
  dispose(): void;
}

/**
 * Seconds before the bar line at which it is decided what the next bar has: what is handed over to the sound is cut and
 * made anew within some 0.2 s, and instruments outside are told 0.25 s ahead. A chord struck later still counts, at once.
 */
const BEFORE_LINE = 0.5;
/** Share of a beat after the one within which a chord still belongs to it: whoever changes on the one is never early. */
const ON_THE_ONE = 0.5;
/** Chords that are remembered: of a chorus or two. */
const MOST = 64;

type Needs = Pick<Stand<MidiState & Song>, 'store' | 'band' | 'orders' | 'later'>;

type Place = Pick<FollowedChord, 'chorus' | 'bar'>;

/**
 * Lets the band follow held chords. What is held a moment before the bar line, or else was struck last in the bar, is what
 * the band plays from the next one on. A chord struck on the one, or just after it, is taken up at once. After a bar in
 * which nothing was held the chart's own chords come back.
 */
export const createFollowChords = (stand: Needs): FollowChords => new Follower(stand);

class Follower implements FollowChords {
  private readonly stand: Needs;
  private held = false;
  /** The chord struck last since the last bar line, or held over it; null for none. */
  private latest: Chord | null = null;
  private stopTimer = (): void => {};
  private lastBar = '';

  constructor(stand: Needs) {
    this.stand = stand;
  }

  hold(keys: readonly number[], named: Chord | null): void {
    this.held = keys.length > 0;
    if (named === null) return;
    // Which way up a hand holds it says nothing about the bass, which the band has.
    const chord = chordOf({ root: named.rootName, quality: named.quality });
    this.latest = chord;
    const playhead = this.stand.band.playhead();
    if (!this.isOn || playhead === null) return;
    const { section, bar, ticks } = playhead;
    const { at = 0, length = 0 } = section.chart.bars[bar] ?? {};
    const { now, next } = this.placesAt(playhead);
    const left = (at + length - ticks) * secondsPerTickAt(section, ticks);
    if (now !== null && ticks - at < ON_THE_ONE * section.chart.meter.beatTicks) this.take(now, chord);
    else if (next !== null && left < BEFORE_LINE) this.take(next, chord);
  }

  onPlayhead(position: Playhead | null): void {
    if (position === null) return;
    const { section, bar, ticks } = position;
    const here = `${section.index} ${bar}`;
    if (here === this.lastBar) return;
    this.lastBar = here;
    this.stopTimer();
    // What is held goes on; what was only struck counts for the bar it was struck in.
    if (!this.held) this.latest = null;
    const { length = 0 } = section.chart.bars[bar] ?? {};
    const seconds = length * secondsPerTickAt(section, ticks) - BEFORE_LINE;
    this.stopTimer = this.stand.later(Math.max(0, seconds), () => this.decide());
  }

  forget(): void {
    this.stopTimer();
    this.lastBar = '';
    this.set([]);
  }

  dispose(): void {
    this.stopTimer();
  }

  private get isOn(): boolean {
    return this.stand.store.getState().settings.midi.follow;
  }

  private get followed(): readonly FollowedChord[] {
    return this.stand.store.getState().followed ?? [];
  }

  private set(next: readonly FollowedChord[]): void {
    if (next.length === 0 && this.followed.length === 0) return;
    this.stand.store.setState({ followed: next });
    this.stand.orders.follow();
  }

  private take(place: Place, chord: Chord | null): void {
    const before = this.followed.filter(
      ({ chorus, bar }) => chorus < place.chorus || (chorus === place.chorus && bar < place.bar),
    );
    const last = before.at(-1)?.chord ?? null;
    if (last?.symbol !== chord?.symbol) this.set([...before.slice(-MOST), { ...place, chord }]);
    else if (before.length < this.followed.length) this.set(before);
  }

  /** The bar that is heard, and the one after it; null outside of choruses and after the end. */
  private placesAt({ section, bar }: Playhead): { readonly now: Place | null; readonly next: Place | null } {
    const { chorus, barNumbers } = section;
    const number = barNumbers[bar] ?? null;
    const within = barNumbers[bar + 1] ?? null;
    const upcoming = this.stand.band.upcoming();
    const first = upcoming?.barNumbers[0] ?? null;
    const after = upcoming === null || first === null ? null : { chorus: upcoming.chorus, bar: first };
    return {
      now: number === null ? null : { chorus, bar: number },
      next: within === null ? after : { chorus, bar: within },
    };
  }

  private decide(): void {
    const playhead = this.stand.band.playhead();
    const next = playhead && this.placesAt(playhead).next;
    if (this.isOn && next !== null) this.take(next, this.latest);
  }
}
