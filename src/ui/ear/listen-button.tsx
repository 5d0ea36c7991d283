import { laterView } from '../controls/later-view';
import { useSelected, useSession } from '../state/session-context';

const LevelMeter = laterView(async () => (await import('./level-meter')).LevelMeter);

/** Listens with the microphone, or stops; says how loud it is while it listens. */
export const ListenButton = () => {
  const { commands } = useSession();
  const kind = useSelected((state) => state.ear.status.kind);
  const open = kind === 'listening' || kind === 'silent' || kind === 'asking';
  return (
    <div className="ear" data-open={open}>
      <button
        type="button"
        className="tool listen"
        aria-label="Listen with the microphone"
        aria-keyshortcuts="l"
        aria-pressed={open}
        aria-busy={kind === 'asking'}
        title="Listen with the microphone (L). What it hears never leaves this machine."
        onClick={commands.toggleListening}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <rect x="7" y="2" width="6" height="10" rx="3" />
          <path
            d="M4 9.5a6 6 0 0 0 12 0M10 15.5V18M7 18h6"
            fill="none"
            stroke="currentColor"
            strokeWidth="1.7"
          />
        </svg>
      </button>
      <LevelMeter />
    </div>
  );
};
