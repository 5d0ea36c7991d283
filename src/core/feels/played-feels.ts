import { boogie } from './boogie';
import { doubleShuffle } from './double-shuffle';
import type { PlayedFeel, Playing } from './feel';
import { FEELS, type FeelId } from './feels';
import { funkBlues } from './funk-blues';
import { jump } from './jump';
import { minorSlow } from './minor-slow';
import { rhumba } from './rhumba';
import { rock } from './rock';
import { secondLine } from './second-line';
import { shuffle } from './shuffle';
import { slow128 } from './slow-12-8';
import { slowDrag } from './slow-drag';
import { straight } from './straight';
import { swing } from './swing';
import { train } from './train';

const PLAYING: Readonly<Record<FeelId, Playing>> = {
  shuffle,
  'slow-12-8': slow128,
  swing,
  straight,
  'double-shuffle': doubleShuffle,
  jump,
  boogie,
  rhumba,
  'second-line': secondLine,
  train,
  rock,
  'minor-slow': minorSlow,
  'slow-drag': slowDrag,
  'funk-blues': funkBlues,
};

/** Every feel with how it is played. */
const PLAYED: ReadonlyMap<FeelId, PlayedFeel> = new Map(
  FEELS.map((feel) => [feel.id, { ...feel, ...PLAYING[feel.id] }]),
);

/** Everything the players need of a feel: `playedFeel('shuffle').bassLine.patterns`. */
export const playedFeel = (id: FeelId): PlayedFeel => {
  const feel = PLAYED.get(id);
  if (feel === undefined) throw new RangeError(`No feel is called ${id}`);
  return feel;
};
