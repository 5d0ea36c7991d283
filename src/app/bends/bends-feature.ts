import type { EarCommands } from '../ear/ear';
import type { Feature } from '../song/feature';
import type { BendPractice } from './bend-practice';
import { type BendReads, type BendsState, NO_BENDS } from './bends-state';

/** What the page can ask for about bend practice. */
export interface BendCommands {
  /** Fetches bend practice and what is kept of it; the same one each time. Rejects where it could not be fetched. */
  openBends(): Promise<BendPractice>;
}

/** Practising bends one by one: fetched after the page is drawn. */
export const bendsFeature: Feature<
  BendsState,
  BendCommands,
  undefined,
  Omit<BendReads, keyof BendsState>,
  Pick<EarCommands, 'hearing'>
> = {
  initial: () => ({ bends: NO_BENDS }),
  join: (stand) => {
    let opened: BendPractice | null = null;
    let over = false;
    return {
      commands: {
        openBends: async () => {
          const { createBendPractice } = await import('./bend-practice');
          opened ??= createBendPractice(stand);
          if (over) opened.dispose();
          return opened;
        },
      },
      isBusy: () => stand.store.getState().bends.turn !== null,
      dispose: () => {
        over = true;
        opened?.dispose();
      },
    };
  },
};
