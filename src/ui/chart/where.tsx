import type { BarRange } from '../../core/arranger/program';
import type { BarView } from '../../core/song/bar-view';
import { useSelected, useSession } from '../state/session-context';

const PLACES: Readonly<Record<Exclude<BarView['kind'], 'chorus'>, string>> = {
  rest: 'Starting',
  'count-in': 'Count-in',
  intro: 'Intro',
  ending: 'Ending',
};

const barsText = ({ from, to }: BarRange): string =>
  from === to ? `of bar ${from + 1}` : `of bars ${from + 1} to ${to + 1}`;

/** Where in the song the band is, its tempo where that is not the one chosen, and the wish for an ending. */
export const Where = () => {
  const { commands } = useSession();
  const playing = useSelected((state) => state.status.kind === 'playing' || state.status.kind === 'paused');
  const chorus = useSelected((state) => state.now.chorus + 1);
  const kind = useSelected((state) => state.now.kind);
  const tempo = useSelected((state) => state.now.tempo);
  const target = useSelected((state) => state.settings.tempo);
  const repeat = useSelected((state) => state.settings.plan.repeat);
  const lastTime = useSelected((state) => state.lastChorus !== null);
  const warming = useSelected((state) => state.warmUp !== null);
  if (!playing || warming) return null;
  return (
    <div className="where">
      <strong>
        {kind === 'chorus' ? `${repeat === null ? 'Chorus' : 'Pass'} ${chorus}` : PLACES[kind]}
        {kind === 'chorus' && repeat !== null && <span className="more"> {barsText(repeat)}</span>}
        {tempo !== null && Math.round(tempo) !== Math.round(target) && `, at ${Math.round(tempo)}`}
      </strong>
      <button
        type="button"
        className="tool"
        aria-pressed={lastTime}
        onClick={() => commands.lastTime(!lastTime)}
      >
        Last time<span className="more">: end after this {repeat === null ? 'chorus' : 'pass'}</span>
      </button>
    </div>
  );
};
