import type { SelfMark } from '../../core/today/grade';
import type { TodayMinutes } from '../../core/today/today-plan';
import type { WallClock } from '../log/wall-clock';
import type { Join } from '../song/feature';
import type { TodayAsks, TodayReads } from './today-needs';
import type { TodayRunner } from './today-run';
import type { TodayState } from './today-state';

/** What the page can ask for about what to practise today. */
export interface TodayCommands {
  /** Works out what today would be. */
  findToday(minutes: TodayMinutes): Promise<void>;
  /** Begins it, as it was worked out. */
  startToday(): void;
  /** Goes on to the next step. */
  nextToday(): void;
  /** Says how the step was, and goes on where its time is over. */
  markToday(mark: SelfMark): void;
  endToday(): void;
  /** Deletes what is known of one thing that was practised, or of all. */
  forgetPractice(id: string | null): void;
}

/** What to practise today: what schedules it is fetched when it is asked for. */
export const joinToday: Join<TodayState, TodayCommands, WallClock | undefined, TodayReads, TodayAsks> = (
  stand,
  clock,
) => {
  let runner: TodayRunner | null = null;
  let over = false;
  const open = async (): Promise<TodayRunner | null> => {
    if (clock === undefined) return null;
    const { createTodayRunner } = await import('./today-run');
    runner ??= createTodayRunner(stand, clock);
    if (over) runner.dispose();
    return runner;
  };
  // What is known of each exercise is in a file with everything, whether it was asked for in this visit or not.
  if (clock !== undefined) stand.keeper.shelves.expect(open);
  return {
    commands: {
      findToday: async (minutes) => (await open())?.find(minutes),
      startToday: () => runner?.start(),
      nextToday: () => runner?.next(),
      markToday: (mark) => runner?.mark(mark),
      endToday: () => runner?.end(),
      forgetPractice: (id) => runner?.forget(id),
    },
    isBusy: () => stand.store.getState().today.run !== null,
    dispose: () => {
      over = true;
      runner?.dispose();
    },
  };
};
