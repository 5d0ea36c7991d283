import { boogie } from './boogie';
import { doubleShuffle } from './double-shuffle';
import type { Feel } from './feel';
import { jump } from './jump';
import { minorSlow } from './minor-slow';
import { rhumba } from './rhumba';
import { rock } from './rock';
import { secondLine } from './second-line';
import { shuffle } from './shuffle';
import { slow128 } from './slow-12-8';
import { straight } from './straight';
import { swing } from './swing';
import { train } from './train';

/**
 * The feels, in the order they are offered. Each says where its figures come from; tempo ranges, usual players and
 * whatever else names no source are common practice, no source.
 */
export const FEELS = [
  shuffle,
  slow128,
  swing,
  straight,
  doubleShuffle,
  jump,
  boogie,
  rhumba,
  secondLine,
  train,
  rock,
  minorSlow,
] as const satisfies readonly Feel[];

export type FeelId = (typeof FEELS)[number]['id'];

/** Ids of all feels, in the order they are offered. */
export const FEEL_IDS: readonly FeelId[] = FEELS.map(({ id }) => id);

const BY_ID: ReadonlyMap<FeelId, Feel> = new Map(FEELS.map((feel) => [feel.id, feel]));

/** Everything the players need of a feel: `feelOf('shuffle').bassLine.patterns`. */
export const feelOf = (id: FeelId): Feel => {
  const feel = BY_ID.get(id);
  if (feel === undefined) throw new RangeError(`No feel is called ${id}`);
  return feel;
};
