import { positionNumber } from '../../core/harp/positions';
import { sectionAhead, sectionWays, sectionWords } from '../../core/song/section-ahead';
import { keyName } from '../../core/theory/pitch';
import { useSelected } from './session-context';
import { useHeardChart } from './use-heard-chart';
import { useNames } from './use-names';

/** A section that comes within a line in another key, in words. */
export interface SectionSaid {
  /** `Trio in C`. */
  readonly what: string;
  /** `1st position (straight) on the C harp, or take the F harp`. */
  readonly how: string;
  /** The same where there is little room: `1st position`, and `F harp` where another would keep the song's. */
  readonly short: { readonly position: string; readonly harp: string | null };
}

/** The section in another key that comes within a line of the chart; null where none does. */
export const useSectionAhead = (): SectionSaid | null => {
  const names = useNames();
  const chart = useHeardChart();
  const now = useSelected((state) => state.now);
  const playing = useSelected((state) => state.status.kind === 'playing' && state.warmUp === null);
  const { repeat, choruses, keys } = useSelected((state) => state.settings.plan);
  const last = useSelected((state) => state.lastChorus);
  if (!playing || now.kind !== 'chorus' || now.formBar === null || repeat !== null) return null;
  const ends = now.chorus === (last ?? (choruses === null ? null : choruses - 1));
  const goesOn = !ends && keys.kind === 'same';
  const { harp, position } = now.tune;
  const ahead = sectionAhead(chart, now.formBar, { harp, position }, goesOn);
  if (ahead === null) return null;
  const other = ahead.harpKey === harp.key ? null : names.key(`${keyName(ahead.harpKey, 'major')} harp`);
  return {
    what: sectionWords(ahead, names),
    how: sectionWays(ahead, { harp, position }, names),
    short: { position: positionNumber(ahead.position), harp: other },
  };
};
