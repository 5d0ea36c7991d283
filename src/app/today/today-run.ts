import { dayNumber } from '../../core/log/progress';
import type { Settings } from '../../core/settings/settings';
import { gradeOf, type SelfMark, selfGrade } from '../../core/today/grade';
import { itemList } from '../../core/today/item-list';
import { joinPractice, type PracticeItem, readPracticeItem } from '../../core/today/practice-item';
import { type Grade, graded } from '../../core/today/schedule';
import { type TodayMinutes, todayPlan } from '../../core/today/today-plan';
import { openShelf, type Shelf } from '../keeping/shelf';
import type { WallClock } from '../log/wall-clock';
import { createSetUp } from './set-up';
import { type Gathered, stepOutcome } from './step-outcome';
import type { TodayReads, TodayStand } from './today-needs';
import type { TodayRun, TodayState } from './today-state';

/** Today at work. */
export interface TodayRunner {
  find(minutes: TodayMinutes): void;
  start(): void;
  next(): void;
  mark(mark: SelfMark): void;
  end(): void;
  forget(id: string | null): void;
  dispose(): void;
}

/** A word for a grade. */
const MARK_OF: Readonly<Record<Grade, SelfMark>> = { 1: 'again', 2: 'nearly', 3: 'clean', 4: 'clean' };

/** Collects what the features tell while a step goes on. */
const createGathering = ({ store }: TodayStand) => {
  let gathered: Gathered = { before: store.getState(), reports: [], choruses: [] };
  let seen: TodayReads = store.getState();
  const leave = store.subscribe((now) => {
    const { report } = now.ear;
    const { last } = now.choruses;
    if (report !== null && report !== seen.ear.report)
      gathered = { ...gathered, reports: [...gathered.reports, report] };
    if (last !== null && last !== seen.choruses.last)
      gathered = {
        ...gathered,
        choruses: [...gathered.choruses.filter(({ number }) => number !== last.number), last],
      };
    seen = now;
  });
  return {
    begin: (): void => {
      gathered = { before: store.getState(), reports: [], choruses: [] };
    },
    now: () => gathered,
    dispose: leave,
  };
};

const openItems = (stand: TodayStand): Shelf<PracticeItem> => {
  const { store, kept, keeper, board } = stand;
  const show = (items: readonly PracticeItem[]): void =>
    store.setState(({ today }) => ({ today: { ...today, items } }));
  const shelf = openShelf<PracticeItem>({
    ...{ kept, keeper, name: 'practice', noun: 'thing to practise', parse: readPracticeItem },
    join: joinPractice,
    onChange: show,
    onNotice: board.post,
  });
  show(shelf.items());
  return shelf;
};

/** What stops a step, whatever it is. */
const createQuiet =
  ({ store, band, ask }: TodayStand) =>
  async (): Promise<void> => {
    const { warmUp, bends } = store.getState();
    if (warmUp !== null) ask().endWarmUp();
    band.stop();
    if (bends.turn !== null) (await ask().openBends()).stop();
  };

class Runner implements TodayRunner {
  private readonly stand: TodayStand;
  private readonly clock: WallClock;
  private readonly shelf: Shelf<PracticeItem>;
  private readonly gathering: ReturnType<typeof createGathering>;
  private readonly setUp: ReturnType<typeof createSetUp>;
  private readonly quiet: () => Promise<void>;
  private stopTimer = (): void => {};
  /** The choices to come back to. */
  private before: Settings | null = null;

  constructor(stand: TodayStand, clock: WallClock) {
    this.stand = stand;
    this.clock = clock;
    this.shelf = openItems(stand);
    this.gathering = createGathering(stand);
    this.setUp = createSetUp(stand);
    this.quiet = createQuiet(stand);
  }

  private show(change: Partial<TodayState['today']>): void {
    this.stand.store.setState(({ today }) => ({ today: { ...today, ...change } }));
  }

  private run(): TodayRun | null {
    return this.stand.store.getState().today.run;
  }

  private day(): number {
    return dayNumber(this.clock.day());
  }

  find(minutes: TodayMinutes): void {
    const { tune, settings, book, phrasebook } = this.stand.store.getState();
    const items = itemList(
      {
        harp: tune.harp,
        chart: tune.chart,
        technique: settings.technique,
        position: settings.position,
        songs: book.songs,
        phrases: phrasebook.phrases,
      },
      this.shelf.items(),
    );
    const songs = book.songs.map(({ id }) => id);
    this.show({ minutes, plan: todayPlan({ minutes, day: this.day(), items, songs, seed: items.length }) });
  }

  start(): void {
    const { today, settings } = this.stand.store.getState();
    if (today.plan.length === 0) return;
    this.before ??= settings;
    void this.enter(0);
  }

  private async enter(index: number): Promise<void> {
    this.stopTimer();
    const steps = this.run()?.steps ?? this.stand.store.getState().today.plan;
    const step = steps[index];
    if (step === undefined) {
      this.end();
      return;
    }
    this.show({ run: { steps, index, over: false, marked: null } });
    await this.quiet();
    // Meanwhile the player may have gone on, or ended it.
    if (this.run()?.steps !== steps || this.run()?.index !== index) return;
    if (this.before !== null) this.stand.apply(this.before);
    this.gathering.begin();
    this.setUp(step);
    this.stopTimer = this.stand.later(step.seconds, () => this.timeIsOver());
  }

  private timeIsOver(): void {
    const run = this.run();
    const step = run?.steps[run.index];
    if (run === null || step === undefined) return;
    const over = (): void => this.show({ run: { ...run, over: true } });
    if (step.kind === 'joy') over();
    else if (step.kind === 'warm-up' || step.kind === 'rest' || run.marked !== null) this.next();
    else {
      const outcome = stepOutcome(step.item.exercise, this.gathering.now(), this.stand.store.getState());
      if (outcome === null) over();
      else {
        this.record(step.item, gradeOf(outcome));
        this.next();
      }
    }
  }

  private record(item: PracticeItem, grade: Grade): void {
    const run = this.run();
    const known = this.shelf.items().find(({ id }) => id === item.id)?.memory ?? item.memory;
    this.shelf.put({ ...item, memory: graded(known, grade, this.day()) });
    if (run !== null) this.show({ run: { ...run, marked: MARK_OF[grade] } });
  }

  mark(mark: SelfMark): void {
    const run = this.run();
    const step = run?.steps[run.index];
    if (run === null || step === undefined || (step.kind !== 'due' && step.kind !== 'new')) return;
    this.record(step.item, selfGrade(mark));
    if (run.over) this.next();
  }

  next(): void {
    const run = this.run();
    if (run !== null) void this.enter(run.index + 1);
  }

  end(): void {
    this.stopTimer();
    const { before } = this;
    this.before = null;
    const running = this.run() !== null;
    this.show({ run: null });
    if (!running) return;
    void this.quiet();
    if (before !== null) this.stand.apply(before);
    this.find(this.stand.store.getState().today.minutes);
  }

  forget(id: string | null): void {
    for (const item of this.shelf.items()) if (id === null || item.id === id) this.shelf.remove(item.id);
    this.find(this.stand.store.getState().today.minutes);
  }

  dispose(): void {
    this.stopTimer();
    this.gathering.dispose();
    this.shelf.dispose();
  }
}

/** Sets today to work. */
export const createTodayRunner = (stand: TodayStand, clock: WallClock): TodayRunner =>
  new Runner(stand, clock);
