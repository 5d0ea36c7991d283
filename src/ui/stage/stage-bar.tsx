import type { Bar, BarRange } from '../../core/chart/chart';
import { barPlace } from '../../core/song/bar-place';
import { ListenButton } from '../ear/listen-button';
import { useSelected, useSession } from '../state/session-context';
import { StageStrip } from './stage-strip';

const PLACES = { rest: 'Ready', 'count-in': 'Count-in', intro: 'Intro', ending: 'Ending' } as const;

const barText = (bars: readonly Bar[], bar: number, repeat: BarRange | null): string => {
  const here = bars[bar];
  if (here?.place !== undefined) return barPlace(here, bar);
  return repeat === null
    ? `bar ${bar + 1} of ${bars.length}`
    : `bar ${bar + 1} in ${repeat.from + 1}–${repeat.to + 1}`;
};

/** Where in the song the band is, in two short lines. */
const StageWhere = () => {
  const { kind, chorus, formBar } = useSelected((state) => state.now);
  const repeat = useSelected((state) => state.settings.plan.repeat);
  const warmUp = useSelected((state) => state.warmUp);
  const bars = useSelected((state) => (state.exercise ?? state.tune).chart.bars);
  const harp = useSelected((state) => state.now.tune.harp.key);
  const place = kind === 'chorus' ? `${repeat === null ? 'Chorus' : 'Pass'} ${chorus + 1}` : PLACES[kind];
  return (
    <p className="stage-where" data-harp={harp}>
      <strong>{warmUp === null ? place : `Step ${warmUp.number} of ${warmUp.of}`}</strong>
      <span>{formBar === null ? '' : barText(bars, formBar, repeat)}</span>
    </p>
  );
};

/** Play or Stop, within reach of a hand. */
const StagePlay = () => {
  const { commands } = useSession();
  const playing = useSelected(
    (state) => state.status.kind === 'playing' || state.status.kind === 'paused' || state.warmUp !== null,
  );
  const loading = useSelected((state) => state.status.kind === 'loading');
  return (
    <button type="button" className="play" aria-busy={loading} onClick={commands.toggle}>
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {playing ? <rect x="3" y="3" width="14" height="14" rx="2" /> : <path d="M4 2 L18 10 L4 18 z" />}
      </svg>
      {playing ? 'Stop' : 'Play'}
    </button>
  );
};

/** The bar at the top of Stage: play, where we are, the form, the way back. */
export const StageBar = () => {
  const { commands } = useSession();
  return (
    <header className="stage-bar">
      <StagePlay />
      <StageWhere />
      <StageStrip />
      <ListenButton />
      <button
        type="button"
        className="tool stage-leave"
        onClick={commands.leaveStage}
        aria-label="Leave Stage"
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M4 4 L16 16 M16 4 L4 16" />
        </svg>
      </button>
    </header>
  );
};
