import { playBass } from './bass';
import { playClick } from './click';
import { playChords } from './comping';
import { playDrums } from './drums';
import { finishScore } from './finish-score';
import type { Passage } from './passage';
import type { Score } from './score';

/** All parts of a passage as one score. Same passage, same score. */
export const arrange = (passage: Passage): Score =>
  finishScore(passage.chart, [
    ...playDrums(passage),
    ...playBass(passage),
    ...playChords(passage),
    ...playClick(passage.chart),
  ]);
