import { useId, useRef } from 'react';
import { positionTitle } from '../../core/harp/positions';
import { keyName } from '../../core/theory/pitch';
import { laterView } from '../controls/later-view';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';
import { ENTRIES, type Entry, entryOf, type PanelId } from './entries';

const Where = laterView(async () => (await import('../chart/where')).Where);

interface Props {
  /** The panel that is open. */
  readonly open: PanelId | null;
  readonly onOpen: (id: PanelId) => void;
  readonly narrow: boolean;
}

const Comb = () => (
  <svg viewBox="0 0 30 18" aria-hidden="true">
    <rect
      x="0.9"
      y="0.9"
      width="28.2"
      height="16.2"
      rx="4"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
    />
    {[5, 9, 13, 17, 21].map((x) => (
      <rect key={x} x={x} y="5" width="2.4" height="8" rx="0.8" fill="currentColor" />
    ))}
  </svg>
);

const EntryButton = ({ entry, open, onOpen }: Omit<Props, 'narrow'> & { readonly entry: Entry }) => {
  const shown = open !== null && entryOf(open) === entry;
  return (
    <button
      type="button"
      className="plain"
      aria-expanded={shown}
      onClick={() => onOpen(shown && open !== null ? open : entry.pages[0].id)}
    >
      {entry.text}
    </button>
  );
};

/** On a phone the entries are behind one button, so that the head of the page is one line. */
const Menu = ({ open, onOpen }: Omit<Props, 'narrow'>) => {
  const id = useId();
  const list = useRef<HTMLElement>(null);
  const choose = (panel: PanelId): void => {
    list.current?.hidePopover?.();
    onOpen(panel);
  };
  return (
    <>
      <button type="button" className="plain menu-button" popoverTarget={id}>
        Menu
      </button>
      <nav id={id} ref={list} popover="auto" className="menu" aria-label="Panels">
        {ENTRIES.map((entry) => (
          <EntryButton key={entry.text} entry={entry} open={open} onOpen={choose} />
        ))}
      </nav>
    </>
  );
};

/** The name of the program, the song in words, and the ways to the panels. */
export const Masthead = ({ open, onOpen, narrow }: Props) => {
  const tune = useSelected((state) => state.now.tune);
  const { tonic, mode } = tune.chart;
  const names = useNames();
  return (
    <header className="masthead">
      <h1 className="wordmark">
        <Comb />
        Combshed
      </h1>
      {narrow && <Menu open={open} onOpen={onOpen} />}
      <p className="song-line">
        <span>
          <span className="lead-in">Song in </span>
          <strong>{names.key(tonic)}</strong>
          {mode === 'minor' ? ' minor' : ''},{' '}
          <strong>{names.key(keyName(tune.harp.key, 'major'))} harp</strong>
        </span>
        <span className="position">, {positionTitle(tune.position)}</span>
      </p>
      <Where />
      {!narrow && (
        <nav aria-label="Panels">
          {ENTRIES.map((entry) => (
            <EntryButton key={entry.text} entry={entry} open={open} onOpen={onOpen} />
          ))}
        </nav>
      )}
    </header>
  );
};
