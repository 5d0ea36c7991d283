import { playBass } from '../players/bass';
import { playClick } from '../players/click';
import { playChords } from '../players/comping';
import { playDrums } from '../players/drums';
import type { Passage } from '../players/passage';
import { finishScore } from '../score/finish-score';
import type { Score } from '../score/score';

/** All parts of a passage as one score. Same passage, same score. */
export const arrange = (passage: Passage): Score =>
  finishScore(passage.chart, [
    ...playDrums(passage),
    ...playBass(passage),
    ...playChords(passage),
    ...playClick(passage.chart),
  ]);
