import type { BarView } from '../../core/song/bar-view';
import { useSelected, useSession } from '../state/session-context';

const PLACES: Readonly<Record<Exclude<BarView['kind'], 'chorus'>, string>> = {
  rest: 'Starting',
  'count-in': 'Count-in',
  intro: 'Intro',
  ending: 'Ending',
};

/** Where in the song the band is, its tempo where that is not the one chosen, and the wish for an ending. */
export const Where = () => {
  const { commands } = useSession();
  const playing = useSelected((state) => state.status.kind === 'playing' || state.status.kind === 'paused');
  const chorus = useSelected((state) => state.now.chorus + 1);
  const kind = useSelected((state) => state.now.kind);
  const tempo = useSelected((state) => state.now.tempo);
  const target = useSelected((state) => state.settings.tempo);
  const passes = useSelected((state) => state.settings.plan.repeat !== null);
  const lastTime = useSelected((state) => state.lastChorus !== null);
  const warming = useSelected((state) => state.warmUp !== null);
  if (!playing || warming) return null;
  const place = kind === 'chorus' ? `${passes ? 'Pass' : 'Chorus'} ${chorus}` : PLACES[kind];
  return (
    <div className="where">
      <strong>
        {place}
        {tempo !== null && Math.round(tempo) !== Math.round(target) && `, at ${Math.round(tempo)}`}
      </strong>
      <button
        type="button"
        className="tool"
        aria-pressed={lastTime}
        title="End after this chorus"
        onClick={() => commands.lastTime(!lastTime)}
      >
        Last time
      </button>
    </div>
  );
};
