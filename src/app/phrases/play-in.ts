import type { BandStatus } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import type { Section } from '../../core/arranger/program';
import { secondsPerTickAt } from '../../core/arranger/section-time';
import { barTicks } from '../../core/chart/build-chart';
import type { LooseNote } from '../../core/practice/quantise';
import type { EarCommands } from '../ear/ear';
import type { EarState } from '../ear/ear-state';
import type { PlacedNote } from '../ear/place-notes';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { leadSwing } from './judge-turn';
import type { PhrasesState, PlayedIn, PlayInCommands } from './phrases-state';

type Needs = Stand<PhrasesState & Song & EarState, Pick<EarCommands, 'hearing'>>;

/** Playing a phrase in, at work. */
export interface PlayIn {
  readonly commands: PlayInCommands;
  onPlayhead(position: Playhead | null): void;
  onStatus(status: BandStatus): void;
  dispose(): void;
}

/** Notes are told a moment after they began: so long is waited for the last of them. Seconds. */
const TOLD_AFTER = 0.4;
/** Notes that still sound count as this long. Seconds. */
const SOUNDING = 0.4;
/** What begins this share of a beat before the first bar belongs to it. */
const EARLY = 0.25;

/** Where a bar of the band lies in what is played in. */
interface Anchor {
  readonly section: Section;
  /** Ticks to be taken from the section's own. */
  readonly less: number;
}

const isSame = (a: Section, b: Section): boolean => a.kind === b.kind && a.chorus === b.chorus;

/** What is gathered: over the band from a bar on, or alone from the first note on. */
export const createPlayIn = (stand: Needs): PlayIn => new Recorder(stand);

class Recorder implements PlayIn {
  readonly commands: PlayInCommands;
  private readonly stand: Needs;
  private notes = new Map<number, LooseNote>();
  private anchors: readonly Anchor[] = [];
  private lastBar = '';
  private barsBegun = 0;
  private bars = 0;
  /** The second of the first note, where no band plays. */
  private began: number | null = null;
  private unsubscribe: (() => void) | null = null;
  private stopTimer = (): void => {};

  constructor(stand: Needs) {
    this.stand = stand;
    this.commands = {
      playIn: (bars) => this.begin(bars),
      endPlayIn: () => this.finish(),
      dropPlayIn: () => this.stop(null),
    };
  }

  onPlayhead(position: Playhead | null): void {
    const { played } = this;
    const here =
      position === null ? '' : `${position.section.kind} ${position.section.chorus} ${position.bar}`;
    const isNew = here !== this.lastBar;
    this.lastBar = here;
    if (position === null || !isNew || played === null || played.phase === 'done') return;
    const { section, bar } = position;
    if (section.kind === 'count-in') return;
    const at = section.chart.bars[bar]?.at ?? 0;
    const length = barTicks(section.chart.meter);
    if (this.barsBegun >= this.bars) {
      this.stopTimer();
      this.stopTimer = this.stand.later(TOLD_AFTER, () => this.finish());
      return;
    }
    this.anchors = [...this.anchors, { section, less: at - this.barsBegun * length }];
    this.barsBegun += 1;
    this.show({ phase: 'recording' });
  }

  onStatus({ kind }: BandStatus): void {
    const isOver = kind !== 'playing' && this.anchors.length > 0 && this.played?.phase === 'recording';
    if (isOver) this.finish();
  }

  dispose(): void {
    this.unsubscribe?.();
    this.stopTimer();
  }

  private get played(): PlayedIn | null {
    return this.stand.store.getState().playedIn;
  }

  private show(change: Partial<PlayedIn>): void {
    const { played } = this;
    if (played !== null) this.stand.store.setState({ playedIn: { ...played, ...change } });
  }

  private begin(bars: number): void {
    const { settings, tune } = this.stand.store.getState();
    const { meter } = tune.chart;
    this.stop(null);
    this.unsubscribe ??= this.stand.ask().hearing().onPlayed(this.take);
    this.bars = bars;
    this.stand.store.setState({
      playedIn: {
        ...{ phase: 'waiting', notes: [], meter: meter.name },
        length: bars * barTicks(meter),
        swing: leadSwing({ settings }),
      },
    });
  }

  /** Where a note lies: ticks from the beginning, and how many seconds a tick lasts there; null outside. */
  private readonly placeOf = ({ note, playhead }: PlacedNote) => {
    const { status, settings, tune } = this.stand.store.getState();
    if (playhead !== null) {
      const anchor = this.anchors.findLast(({ section }) => isSame(section, playhead.section));
      if (anchor === undefined) return null;
      return {
        at: playhead.ticks - anchor.less,
        perTick: secondsPerTickAt(playhead.section, playhead.ticks),
      };
    }
    if (status.kind === 'playing') return null;
    const perTick = 60 / (settings.tempo * tune.chart.meter.beatTicks);
    if (this.began === null) {
      this.began = note.from;
      this.show({ phase: 'recording' });
      const whole = (this.played?.length ?? 0) * perTick + TOLD_AFTER;
      this.stopTimer = this.stand.later(whole, () => this.finish());
    }
    return { at: (note.from - this.began) / perTick, perTick };
  };

  private readonly take = (placed: PlacedNote): void => {
    const { played } = this;
    const { note } = placed;
    const { sound } = note;
    if (played === null || played.phase === 'done' || sound === null || !note.steady) return;
    const known = this.notes.get(note.id);
    const place = this.placeOf(placed);
    const at = known?.at ?? place?.at;
    if (at === undefined || place === null) return;
    const early = EARLY * this.stand.store.getState().tune.chart.meter.beatTicks;
    if (at < -early || at >= played.length) return;
    const seconds = note.to === null ? SOUNDING : note.to - note.from;
    this.notes.set(note.id, { at, length: seconds / place.perTick, sounds: [sound, ...note.together] });
  };

  private finish(): void {
    this.stopTimer();
    if (this.played === null || this.played.phase === 'done') return;
    const notes = [...this.notes.values()].sort((a, b) => a.at - b.at);
    this.show({ phase: 'done', notes });
  }

  private stop(playedIn: PlayedIn | null): void {
    this.stopTimer();
    this.notes = new Map();
    this.anchors = [];
    this.barsBegun = 0;
    this.began = null;
    this.stand.store.setState({ playedIn });
  }
}
