import type { Bar, BarKey, Chart, ChordSpan } from '../chart/chart';
import { greatestDivisor } from '../theory/divisor';

/** What an ABC tune of chords holds. */
export interface AbcSheet {
  readonly chart: Chart;
  /** Beats a minute. */
  readonly tempo: number;
  /** Words before the tempo, such as the feel. */
  readonly feel: string;
}

/** The note that lengths are counted in: a quarter, or an eighth in compound meters. In ticks. */
const unitTicks = ({ meter }: Chart): number => (meter.beatTicks === 720 ? 240 : 480);

/** A length in units as ABC writes it behind a note: `4`, `3/2`, `/2`, nothing for one (§4.3). */
const lengthText = (ticks: number, unit: number): string => {
  const divisor = greatestDivisor(ticks, unit);
  const [over, under] = [ticks / divisor, unit / divisor];
  if (under === 1) return over === 1 ? '' : String(over);
  return `${over === 1 ? '' : over}/${under}`;
};

/** A rest of the chord's length under its symbol; where the band rests, a word above it that is no chord (§4.19). */
const spanText = ({ chord, band, length }: ChordSpan, unit: number): string =>
  `"${band === 'rest' ? '^N.C.' : chord.symbol}"z${lengthText(length, unit)}`;

const barText = (bar: Bar, unit: number): string => bar.chords.map((span) => spanText(span, unit)).join(' ');

const keyText = ({ tonic, mode }: BarKey): string => `${tonic}${mode === 'minor' ? 'm' : ''}`;

const plain = (text: string): string => text.replace(/[\r\n%\\]+/g, ' ').trim();

const BARS_A_LINE = 4;

/** The lines of the music: four bars each, parted where a section or another key begins. */
const musicLines = (chart: Chart): readonly string[] => {
  const unit = unitTicks(chart);
  const lines: string[] = [];
  let open: string[] = [];
  let key: BarKey = chart;
  const close = (end: string): void => {
    if (open.length > 0) lines.push(`${open.join('|')}${end}`);
    open = [];
  };
  if (chart.pickUp !== undefined) lines.push(`${barText(chart.pickUp, unit)}|`);
  for (const bar of chart.bars) {
    const next = bar.key ?? chart;
    if (bar.place?.bar === 0) {
      close('|');
      lines.push(`P:${plain(bar.place.section)}`);
    }
    if (next.tonic !== key.tonic || next.mode !== key.mode) {
      close('|');
      lines.push(`K:${keyText(next)}`);
    }
    key = next;
    open.push(barText(bar, unit));
    if (open.length === BARS_A_LINE) close('|');
  }
  close('|');
  const last = lines.pop() ?? '';
  return [...lines, last.replace(/\|$/, '|]')];
};

/** A chart as an ABC tune (standard 2.1 of 2011): its chords over rests, bars as they are played, sections as parts. */
export const writeAbc = ({ chart, tempo, feel }: AbcSheet): string => {
  const compound = chart.meter.beatTicks === 720;
  return [
    'X:1',
    `T:${plain(chart.title)}`,
    `M:${chart.meter.name}`,
    `L:${compound ? '1/8' : '1/4'}`,
    `Q:"${plain(feel).replace(/"/g, '')}" ${compound ? '3/8' : '1/4'}=${Math.round(tempo)}`,
    `K:${keyText(chart)}`,
    ...musicLines(chart),
    '',
  ].join('\n');
};
