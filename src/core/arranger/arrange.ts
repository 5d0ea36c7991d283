import { playBass } from '../players/bass';
import { clearOfBass } from '../players/clear-of-bass';
import { playClick } from '../players/click';
import { playChords } from '../players/comping';
import { doubleTime } from '../players/double-time';
import { playDrums } from '../players/drums';
import { type Passage, passageFor } from '../players/passage';
import { besideFirst, playSecond, withoutLoneNotes } from '../players/second';
import { finishScore } from '../score/finish-score';
import type { Score } from '../score/score';

/** All parts of a passage as one score. Same passage, same score. */
export const arrange = (passage: Passage): Score => {
  const { chart, click, style } = passage;
  const band = style.time === 'double-time' ? doubleTime(passage) : passage;
  const bass = finishScore(chart, playBass(passageFor(band, 'bass'))).events;
  const drums = playDrums(passageFor(band, 'drums'));
  const passing = chart.meter.beatTicks / 3;
  const played = playChords(passageFor(band, 'chords'), [...bass, ...drums]);
  const chords = withoutLoneNotes(clearOfBass(played, bass, passing));
  const beside = playSecond(passageFor(band, 'second'), chords, bass);
  const second = withoutLoneNotes(clearOfBass(besideFirst(beside, chords), bass, passing));
  return finishScore(chart, [
    ...drums,
    ...bass,
    ...chords,
    ...second,
    ...playClick(chart, click.place, click.firstBar),
  ]);
};
