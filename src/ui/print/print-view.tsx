import { useLayoutEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import type { LineKind } from '../../core/lines/line-slots';
import { lineTab } from '../../core/lines/lines';
import { chartFor, tuneFor } from '../../core/song/tune';
import { usePractice } from '../state/practice-context';
import { useSelected } from '../state/session-context';
import { PrintPage } from './print-page';

const PRINT = 'print';

/**
 * True while the page is printed. The browser takes the page as it stands when its event returns, so the paper must
 * be there at once; until it says that it is done, the medium alone does not take the paper away, for its news may
 * be older.
 */
const usePrinting = (): boolean => {
  const [printing, setPrinting] = useState(() => window.matchMedia(PRINT).matches);
  useLayoutEffect(() => {
    const media = window.matchMedia(PRINT);
    let asked = false;
    const follow = (): void => flushSync(() => setPrinting(asked || media.matches));
    const begin = (): void => {
      asked = true;
      follow();
    };
    const end = (): void => {
      asked = false;
      follow();
    };
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    media.addEventListener('change', follow);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
      media.removeEventListener('change', follow);
    };
  }, []);
  return printing;
};

const LINES: Readonly<Record<LineKind, string>> = {
  'guide tones': 'a line of guide tones',
  'chord tones': 'a line of chord tones',
  arpeggio: 'a walking arpeggio',
};

const Paper = () => {
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

/** The song as paper, there only while it is printed: in the key of the chorus that is heard. */
export const PrintView = () => (usePrinting() ? <Paper /> : null);
