import type { Waking } from '../../screen/wake-lock';

/** Stage, the view for playing, as the page shows it. */
export interface StageState {
  readonly stage: {
    readonly open: boolean;
    /** How the screen is kept awake. */
    readonly waking: Waking;
  };
}

/** Before anybody has opened it. */
export const STAGE_CLOSED: StageState['stage'] = { open: false, waking: 'off' };
