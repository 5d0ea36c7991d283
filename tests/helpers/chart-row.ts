import type { Chart } from '../../src/core/chart/chart';

/** Bars as `symbol:beats` words, parted by `|`; `N.C.` where the band rests. */
export const chartRow = ({ bars, meter }: Chart): string =>
  bars
    .map(({ chords }) =>
      chords
        .map(
          ({ chord, band, length }) =>
            `${band === 'rest' ? 'N.C.' : chord.symbol}:${length / meter.beatTicks}`,
        )
        .join(' '),
    )
    .join(' | ');
