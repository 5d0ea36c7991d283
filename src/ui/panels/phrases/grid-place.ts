import { barTicks, METERS } from '../../../core/chart/build-chart';
import type { MeterName } from '../../../core/chart/chart';
import { spokenHole } from '../../../core/harp/tab';
import type { Phrase, PhraseNote } from '../../../core/phrase/phrase';

/** Pixels of a step of the grid and of a hole: what a finger hits. */
export const STEP_WIDTH = 24;
export const HOLE_HEIGHT = 26;

/** Bars that are drawn: those of the phrase, and one to go on in. */
export const barsDrawn = ({ length, meter }: Phrase): number =>
  Math.min(16, Math.max(2, Math.ceil(length / barTicks(METERS[meter])) + (length === 0 ? 0 : 1)));

const rounded = (value: number): string => String(Math.round(100 * value) / 100);

/** Where a tick lies, in words: `bar 2, beat 3.5`. */
const placeWords = (at: number, meterName: MeterName): string => {
  const meter = METERS[meterName];
  const bar = Math.floor(at / barTicks(meter));
  return `bar ${bar + 1}, beat ${rounded((at - bar * barTicks(meter)) / meter.beatTicks + 1)}`;
};

/** A note in words, for those who do not see the grid. */
export const noteWords = ({ at, length, sounds }: PhraseNote, meterName: MeterName): string => {
  const beats = rounded(length / METERS[meterName].beatTicks);
  return `${sounds.map(spokenHole).join(' and ')}, ${placeWords(at, meterName)}, ${beats} ${beats === '1' ? 'beat' : 'beats'}`;
};
