import type { Chart } from '../chart/chart';
import { type TabStyle, tab } from '../harp/tab';
import type { Line, LineNote } from './lines';

/**
 * The line's tab under each bar of the chart, in the chosen style; `tabs[i]` belongs to bar i.
 * @param beside what stands after each sound's tab, with the space before it; nothing where it is left out.
 */
export const lineTab = (
  line: Line,
  chart: Chart,
  style: TabStyle,
  beside: (note: LineNote) => string = () => '',
): readonly string[] =>
  chart.bars.map(({ at, length }) =>
    line.notes
      .filter((note) => note.at >= at && note.at < at + length)
      .map((note) => `${tab(note.sound, style)}${beside(note)}`)
      .join(' '),
  );
