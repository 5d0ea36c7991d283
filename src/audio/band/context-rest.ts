/** How often a context that may rest is looked at. */
const STEP_MS = 225;
/** Looks in a row at which nothing sounds: from the first to the last the room dies away (0.42 s). */
const QUIET_LOOKS = 3;

export interface RestOptions {
  /** Whether the context has nothing to do now; a rest that is due is dropped when it has. */
  readonly idle: () => boolean;
  /** Whether something may still be heard, which a rest waits for. */
  readonly sounding: () => boolean;
  readonly rest: () => void;
}

/** Lets a context rest within a second of the last sound: one that runs costs battery even when it plays silence. */
export interface ContextRest {
  soon(): void;
  notNow(): void;
  /** No rest while something begins: its first sounds may take longer to compute than a rest is waited for. */
  notWhile<Result>(begin: () => Promise<Result>): Promise<Result>;
}

/** Lets a context rest once nothing has sounded for a while; nothing is watched before it is asked to. */
export const createContextRest = ({ idle, sounding, rest }: RestOptions): ContextRest => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let beginning = 0;
  const wait = (looks: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (!idle() || beginning > 0) return;
      if (sounding()) wait(QUIET_LOOKS);
      else if (looks === 1) rest();
      else wait(looks - 1);
    }, STEP_MS);
  };
  const soon = (): void => wait(QUIET_LOOKS);
  return {
    soon,
    notNow: () => clearTimeout(timer),
    notWhile: async (begin) => {
      beginning += 1;
      try {
        return await begin();
      } finally {
        beginning -= 1;
        soon();
      }
    },
  };
};
