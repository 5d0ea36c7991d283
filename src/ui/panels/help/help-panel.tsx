import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { useTour } from '../../state/tour-context';
import { Licences } from './licences';
import './help.css';

/** Put in by the build from package.json. */
declare const VERSION: string;

const KEYS: readonly (readonly [string, string])[] = [
  ['Space', 'play and stop'],
  ['P', 'pause, and go on from the beginning of the bar it was paused in'],
  ['← →', 'one bar back or on'],
  ['↑ ↓', 'one line back or on'],
  ['+ −', 'tempo up or down'],
  ['T', 'tap the tempo'],
  ['R', 'repeat this bar, or stop repeating'],
  ['1  2  3', 'while trading: the answer was clean, nearly, or not yet'],
  ['A', 'while trading: the same call again'],
  ['K', 'while trading without a microphone: tap the rhythm of your answer'],
  ['N  B', 'the next song of the set, and the one before; page keys of a foot pedal too'],
  ['Media keys', 'play, pause and stop, and turn the songs of a set: those of a headset too'],
  ['F', 'Stage, the view for playing, and back'],
  ['L', 'listen with the microphone, or stop listening'],
  ['Ctrl Z', 'undo the last choice; with Shift, make it again'],
  ['?', 'this list'],
  ['Escape', 'close a panel'],
];

const MAP_KEYS: readonly (readonly [string, string])[] = [
  ['Tab', 'into the harp map and on'],
  ['← → ↑ ↓', 'from sound to sound'],
  ['Enter', 'hear it, and mark every way to play it'],
  ['Escape', 'take the mark away'],
];

const KeyList = ({ keys }: { readonly keys: typeof KEYS }) => (
  <dl className="keys-list">
    {keys.map(([key, what]) => (
      <div key={key}>
        <dt>{key}</dt>
        <dd>{what}</dd>
      </div>
    ))}
  </dl>
);

const TourOffer = () => {
  const start = useTour();
  return (
    <div className="stack">
      <button type="button" className="tool" onClick={start}>
        Take the tour
      </button>
      <p className="hint">
        Ten things of the page in a sentence each, in five minutes. You can play meanwhile; Escape ends it.
      </p>
    </div>
  );
};

/** The tour, the shortcuts, the version, and what the program is built with. */
export const HelpPanel = ({ onClose }: { readonly onClose: () => void }) => (
  <Panel title="Help" onClose={onClose}>
    <TourOffer />
    <Fold title="Shortcuts" open>
      <KeyList keys={KEYS} />
      <p>In the harp map the keys belong to its sounds:</p>
      <KeyList keys={MAP_KEYS} />
    </Fold>
    <Fold title="Version and licences" open>
      <p>Combshed {VERSION}</p>
      <p>The fonts and libraries it is built with are free software, each under its own licence.</p>
      <Licences />
    </Fold>
  </Panel>
);
