import type { Section } from '../core/score/program';
import { useSelected, useSession } from './session-context';

const PLACES: Readonly<Record<Exclude<Section['kind'], 'chorus'>, string>> = {
  'count-in': 'Count-in',
  intro: 'Intro',
  ending: 'Ending',
};

/** Where in the song the band is, and the wish for an ending. */
export const Where = () => {
  const { commands } = useSession();
  const playing = useSelected((state) => state.status.kind === 'playing');
  const chorus = useSelected((state) => state.now.chorus + 1);
  const kind = useSelected((state) => state.now.kind);
  const lastTime = useSelected((state) => state.lastChorus !== null);
  if (!playing) return null;
  return (
    <div className="where">
      <strong>{kind === 'chorus' ? `Chorus ${chorus}` : PLACES[kind]}</strong>
      <button
        type="button"
        className="tool"
        aria-pressed={lastTime}
        onClick={() => commands.lastTime(!lastTime)}
      >
        Last time
      </button>
    </div>
  );
};
