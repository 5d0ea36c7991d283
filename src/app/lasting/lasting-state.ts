import type { Lasting } from '../../storage/lasting';

/** Whether what the player keeps is there for good. */
export interface LastingState {
  readonly lasting: {
    /** `unasked` until the browser has said. */
    readonly is: Lasting | 'unasked';
    /** Whether the page offers to ask for it. */
    readonly offered: boolean;
    /** Whether the player asked and the browser did not promise it. */
    readonly declined: boolean;
  };
}

/** Before the browser was asked. */
export const LASTING_UNASKED: LastingState = {
  lasting: { is: 'unasked', offered: false, declined: false },
};
