import type { Chord } from '../theory/chord';
import type { Chart } from './chart';
import { romanChord } from './roman';

/** The chord a song comes home to: the chart's own tonic chord, or, where it has none, the key's seventh chord. */
export const homeChord = (chart: Chart): Chord =>
  chart.bars
    .flatMap((bar) => bar.chords)
    .find(({ chord }) => chord.root === chart.key && chord.bass === chord.root)?.chord ??
  romanChord(chart.mode === 'minor' ? 'i7' : 'I7', chart.tonic);
