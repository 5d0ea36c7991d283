import type { ReactNode } from 'react';
import { useSelected, useSession } from '../state/session-context';
import { PLAY_ID } from './skip-link';

const PlayGlyph = () => (
  <svg viewBox="0 0 20 20" aria-hidden="true">
    <path d="M4 2.2v15.6a1 1 0 0 0 1.5.86l13-7.8a1 1 0 0 0 0-1.72l-13-7.8A1 1 0 0 0 4 2.2z" />
  </svg>
);
const StopGlyph = () => (
  <svg viewBox="0 0 20 20" aria-hidden="true">
    <rect x="3" y="3" width="14" height="14" rx="2" />
  </svg>
);

const PauseGlyph = () => (
  <svg viewBox="0 0 20 20" aria-hidden="true">
    <rect x="3.5" y="2.5" width="4.6" height="15" rx="1.4" />
    <rect x="11.9" y="2.5" width="4.6" height="15" rx="1.4" />
  </svg>
);

const PlayButton = () => {
  const { commands } = useSession();
  const kind = useSelected((state) => state.status.kind);
  if (kind === 'playing' || kind === 'paused') {
    return (
      <button type="button" className="play" id={PLAY_ID} onClick={commands.stop}>
        <StopGlyph /> <span>Stop</span>
      </button>
    );
  }
  return (
    <button
      type="button"
      className="play"
      id={PLAY_ID}
      onClick={() => void commands.play()}
      aria-busy={kind === 'loading'}
    >
      <PlayGlyph /> <span>Play</span>
    </button>
  );
};

/** Where a paused band goes on, as its button says. */
const useGoOnName = (): string => {
  const bar = useSelected((state) => state.now.formBar);
  return `Go on from the beginning of ${bar === null ? 'this bar' : `bar ${bar + 1}`}, without a count-in`;
};

const PauseButton = () => {
  const { commands } = useSession();
  const kind = useSelected((state) => state.status.kind);
  const warming = useSelected((state) => state.warmUp !== null);
  const goOn = useGoOnName();
  const paused = kind === 'paused';
  return (
    <button
      type="button"
      className="tool pause"
      aria-label={paused ? goOn : 'Pause'}
      title={paused ? goOn : 'Pause (P)'}
      data-paused={paused}
      disabled={warming || (kind !== 'playing' && !paused)}
      onClick={commands.pause}
    >
      {paused ? <PlayGlyph /> : <PauseGlyph />}
    </button>
  );
};

/** Play and stop, which are always there, and what stands beside them. */
export const TransportBar = ({ children }: { readonly children: ReactNode }) => (
  <section className="transport" aria-label="Transport">
    <PlayButton />
    <PauseButton />
    {children}
  </section>
);
