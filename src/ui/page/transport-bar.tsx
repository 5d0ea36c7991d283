import type { ReactNode } from 'react';
import { useSelected, useSession } from '../state/session-context';

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

const PlayButton = () => {
  const { commands } = useSession();
  const kind = useSelected((state) => state.status.kind);
  if (kind === 'playing') {
    return (
      <button type="button" className="play" onClick={commands.stop}>
        <StopGlyph /> Stop
      </button>
    );
  }
  return (
    <button
      type="button"
      className="play"
      onClick={() => void commands.play()}
      aria-busy={kind === 'loading'}
    >
      <PlayGlyph /> Play
    </button>
  );
};

/** Play and stop, which are always there, and what stands beside them. */
export const TransportBar = ({ children }: { readonly children: ReactNode }) => (
  <section className="transport" aria-label="Transport">
    <PlayButton />
    {children}
  </section>
);
