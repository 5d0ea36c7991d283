import { playBass } from '../players/bass';
import { clearOfBass } from '../players/clear-of-bass';
import { playClick } from '../players/click';
import { playChords } from '../players/comping';
import { playDrums } from '../players/drums';
import { type Passage, passageFor } from '../players/passage';
import { finishScore } from '../score/finish-score';
import type { Score } from '../score/score';

/** All parts of a passage as one score. Same passage, same score. */
export const arrange = (passage: Passage): Score => {
  const bass = finishScore(passage.chart, playBass(passageFor(passage, 'bass'))).events;
  const drums = playDrums(passageFor(passage, 'drums'));
  const played = playChords(passageFor(passage, 'chords'), [...bass, ...drums]);
  const chords = clearOfBass(played, bass, passage.chart.meter.beatTicks / 3);
  return finishScore(passage.chart, [...drums, ...bass, ...chords, ...playClick(passage.chart)]);
};
