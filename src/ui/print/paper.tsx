import type { LineKind } from '../../core/lines/line-slots';
import { lineTab } from '../../core/lines/lines';
import { chartFor, tuneFor } from '../../core/song/tune';
import { usePractice } from '../state/practice-context';
import { useSelected } from '../state/session-context';
import { PrintPage } from './print-page';

const LINES: Readonly<Record<LineKind, string>> = {
  'guide tones': 'a line of guide tones',
  'chord tones': 'a line of chord tones',
  arpeggio: 'a walking arpeggio',
};

/** The song as it is chosen, on paper, in the key of the chorus that is heard. */
export const Paper = () => {
  const settings = useSelected((state) => state.settings);
  const ownCharts = useSelected((state) => state.ownCharts);
  const key = useSelected((state) => state.now.tune.chart.key);
  const { line } = usePractice();
  const tune = tuneFor(settings, chartFor(settings, ownCharts, key));
  return (
    <PrintPage
      settings={settings}
      tune={tune}
      line={line ? { name: LINES[line.kind], tabs: lineTab(line, tune.chart, settings.tabStyle) } : undefined}
    />
  );
};
