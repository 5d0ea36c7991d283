import type { EarCommands } from '../ear/ear';
import type { Join } from '../song/feature';
import type { BendPractice } from './bend-practice';
import type { BendReads, BendsState } from './bends-state';

/** What the page can ask for about bend practice. */
export interface BendCommands {
  /** Fetches bend practice and what is kept of it; the same one each time. Rejects where it could not be fetched. */
  openBends(): Promise<BendPractice>;
}

/** Practising bends one by one: what it is made of is fetched when it is opened, or once the page rests. */
export const joinBends: Join<
  BendsState,
  BendCommands,
  undefined,
  Omit<BendReads, keyof BendsState>,
  Pick<EarCommands, 'hearing'>
> = (stand) => {
  let opened: BendPractice | null = null;
  let over = false;
  const openBends = async (): Promise<BendPractice> => {
    const { createBendPractice } = await import('./bend-practice');
    opened ??= createBendPractice(stand);
    if (over) opened.dispose();
    return opened;
  };
  stand.keeper.shelves.expect(openBends);
  return {
    commands: { openBends },
    isBusy: () => stand.store.getState().bends.turn !== null,
    dispose: () => {
      over = true;
      opened?.dispose();
    },
  };
};
