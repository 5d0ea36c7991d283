import type { LineKind } from '../../core/lines/line-slots';
import { lineTab } from '../../core/lines/lines';
import { tuneFor } from '../../core/song/tune';
import { usePractice } from '../state/practice-context';
import { useSelected } from '../state/session-context';
import { useHeardChart } from '../state/use-heard-chart';
import { PrintPage } from './print-page';

const LINES: Readonly<Record<LineKind, string>> = {
  'guide tones': 'a line of guide tones',
  'chord tones': 'a line of chord tones',
  arpeggio: 'a walking arpeggio',
};

/** The song as it is chosen, on paper: the chorus that is heard, in its key and with its turnaround. */
export const Paper = () => {
  const settings = useSelected((state) => state.settings);
  const { line } = usePractice();
  const tune = tuneFor(settings, useHeardChart());
  return (
    <PrintPage
      settings={settings}
      tune={tune}
      line={line ? { name: LINES[line.kind], tabs: lineTab(line, tune.chart, settings.tabStyle) } : undefined}
    />
  );
};
