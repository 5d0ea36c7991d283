import { useLayoutEffect } from 'react';
import { songFacts } from '../../core/book/song-facts';
import type { LineKind } from '../../core/lines/line-slots';
import { lineTab } from '../../core/lines/line-tab';
import { tuneFor } from '../../core/song/tune';
import { usePractice } from '../state/practice-context';
import { useSelected, useSession } from '../state/session-context';
import { useHeardChart } from '../state/use-heard-chart';
import { PrintHandOut } from './print-hand-out';
import { PrintPage } from './print-page';
import { PrintSet } from './print-set';

const LINES: Readonly<Record<LineKind, string>> = {
  'guide tones': 'a line of guide tones',
  'chord tones': 'a line of chord tones',
  arpeggio: 'a walking arpeggio',
};

/** The song as it is chosen, on paper: the chorus that is heard, in its key and with its turnaround. */
const SongPaper = () => {
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

/** The set that was asked for on paper, as long as the browser prints it. */
const SetPaper = ({ id }: { readonly id: string }) => {
  const { commands } = useSession();
  const { sets, songs } = useSelected((state) => state.book);
  const ownCharts = useSelected((state) => state.ownCharts);
  useLayoutEffect(() => () => commands.choosePaper(null), [commands]);
  const set = sets.find((each) => each.id === id);
  if (set === undefined) return null;
  const found = set.entries.map((entry) => {
    const song = songs.find((each) => each.id === entry.song);
    return song === undefined ? null : { id: song.id, name: song.name, facts: songFacts(song, ownCharts) };
  });
  return <PrintSet set={set} songs={found} />;
};

/** What is printed: the song on the stand, or a set or the hand-out of a class that was asked for. */
export const Paper = () => {
  const set = useSelected((state) => state.book.paper);
  const handOut = useSelected((state) => state.phrasebook.handOut);
  if (handOut) return <PrintHandOut />;
  return set === null ? <SongPaper /> : <SetPaper id={set} />;
};
