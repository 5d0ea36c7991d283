import { positionTitle } from '../../core/harp/positions';
import { keyName, prettyName } from '../../core/theory/pitch';
import { Where } from '../chart/where';
import { useSelected } from '../state/session-context';

export type SheetId = 'harp' | 'practise' | 'chart' | 'band' | 'mixer' | 'take-away' | 'care';

const SHEETS: readonly { readonly id: SheetId; readonly text: string }[] = [
  { id: 'harp', text: 'Harp' },
  { id: 'practise', text: 'Practise' },
  { id: 'chart', text: 'Chart' },
  { id: 'band', text: 'Band' },
  { id: 'mixer', text: 'Mixer' },
  { id: 'take-away', text: 'Take away' },
  { id: 'care', text: 'Care' },
];

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

/** The name of the program, the song in words, and the ways to the panels. */
export const Masthead = ({
  open,
  onOpen,
}: {
  readonly open: SheetId | 'song' | null;
  readonly onOpen: (id: SheetId) => void;
}) => {
  const tune = useSelected((state) => state.now.tune);
  const { tonic, mode } = tune.chart;
  return (
    <header className="masthead">
      <h1 className="wordmark">
        <Comb />
        Combshed
      </h1>
      <p className="song-line">
        Song in <strong>{prettyName(tonic)}</strong>
        {mode === 'minor' ? ' minor' : ''},{' '}
        <strong>{prettyName(keyName(tune.harp.key, 'major'))} harp</strong>, {positionTitle(tune.position)}
      </p>
      <Where />
      <nav aria-label="Panels">
        {SHEETS.map(({ id, text }) => (
          <button
            key={id}
            type="button"
            className="plain"
            aria-expanded={open === id}
            onClick={() => onOpen(id)}
          >
            {text}
          </button>
        ))}
      </nav>
    </header>
  );
};
