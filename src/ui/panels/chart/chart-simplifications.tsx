import { useMemo } from 'react';
import type { Chart } from '../../../core/chart/chart';
import { simplifications } from '../../../core/chart-text/simplifications';
import { Fold } from '../../controls/fold';
import { useNames } from '../../state/use-names';

const barsText = (bars: readonly number[]): string =>
  `${bars.length === 1 ? 'Bar' : 'Bars'} ${bars.map((bar) => bar + 1).join(', ')}`;

/** Chords of which the band plays less, or more, than is written. */
export const ChartSimplifications = ({ chart }: { readonly chart: Chart }) => {
  const names = useNames();
  const simplified = useMemo(() => simplifications(chart), [chart]);
  return (
    <Fold title={`What the band simplifies: ${simplified.length === 0 ? 'nothing' : simplified.length}`}>
      {simplified.length === 0 ? (
        <p>The band plays every chord of this chart as it is written.</p>
      ) : (
        <ul className="rows">
          {simplified.map(({ symbol, bars, sentence }) => (
            <li key={symbol}>
              {names.text(sentence)} <span className="hint">{barsText(bars)}.</span>
            </li>
          ))}
        </ul>
      )}
      <p className="hint">The map, what fits and the tab always count every tone that is written.</p>
    </Fold>
  );
};
