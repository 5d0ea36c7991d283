/** The tempo ladder: a song gets a little faster as it gets better, and half a step slower after trouble. */

/** What lets the tempo rise: nothing, a clean chorus, or so many choruses. */
export const LADDERS = ['off', 'clean', 'count'] as const;
export type Ladder = (typeof LADDERS)[number];

/** How the tempo climbs. Tempos in beats a minute. */
export interface LadderChoice {
  readonly by: Ladder;
  /** How much faster at a time. */
  readonly step: number;
  /** Choruses before each step, where they are counted. */
  readonly every: number;
  /** Where the ladder ends. */
  readonly top: number;
}

/** Bounds of a ladder: how much at a time, after how many choruses. */
export const LADDER_LIMITS = { step: { least: 1, most: 20 }, every: { least: 1, most: 12 } } as const;

/** What a chorus was worth, for tempo and marks. */
export type ChorusVerdict = 'clean' | 'fair' | 'trouble';

/** What came of a chorus: by the ear, or as the player has it; null where nobody has said. */
export type ChorusOutcome = ChorusVerdict | null;

/** Where a player stands on the ladder. */
export interface LadderPlace {
  readonly tempo: number;
  /** Choruses since the tempo was last another. */
  readonly since: number;
}

/**
 * The place after a chorus. Trouble takes half a step back, never below `least`; from there it goes up again by whole
 * steps, so that what was hard is met at another tempo.
 *
 * @example
 * climb({ by: 'clean', step: 4, every: 1, top: 120 }, { tempo: 96, since: 0 }, 'clean', 40) // { tempo: 100, since: 0 }
 */
export const climb = (
  { by, step, every, top }: LadderChoice,
  { tempo, since }: LadderPlace,
  outcome: ChorusOutcome,
  least: number,
): LadderPlace => {
  if (by === 'off') return { tempo, since: since + 1 };
  if (outcome === 'trouble') {
    const back = Math.max(least, tempo - step / 2);
    return back === tempo ? { tempo, since: since + 1 } : { tempo: back, since: 0 };
  }
  const rises = by === 'clean' ? outcome === 'clean' : since + 1 >= every;
  const up = rises ? Math.max(tempo, Math.min(top, tempo + step)) : tempo;
  return up === tempo ? { tempo, since: since + 1 } : { tempo: up, since: 0 };
};

/** What the stand says of the ladder: what lets it rise, in a few words. */
export const ladderWords = (choice: LadderChoice, { tempo, since }: LadderPlace): string => {
  const next = Math.min(choice.top, tempo + choice.step);
  if (next <= tempo) return 'the top of the ladder';
  if (choice.by === 'clean') return `${Math.round(next)} after a clean chorus`;
  const left = Math.max(1, choice.every - since);
  return `${Math.round(next)} after ${left === 1 ? 'this chorus' : `${left} more choruses`}`;
};
