import { useEffect, useState } from 'react';
import type { PlayedIn } from '../../../app/phrases/phrases-state';
import { METERS } from '../../../core/chart/build-chart';
import type { Phrase } from '../../../core/phrase/phrase';
import { quantise } from '../../../core/practice/quantise';
import { pitchName } from '../../../core/theory/pitch';
import { asMidi } from '../../../core/theory/units';
import { Choice } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

const BARS = [1, 2, 4, 8] as const;

/** Steps a beat that notes snap to; 0 leaves them as they were played. */
const SNAPS = [
  { value: 0, text: 'Nothing: as it was played' },
  { value: 2, text: 'Eighths' },
  { value: 3, text: 'Triplets' },
  { value: 4, text: 'Sixteenths' },
] as const;

const usualSnap = ({ meter }: PlayedIn): number => (METERS[meter].beatTicks === 720 ? 3 : 2);

const snapped = ({ notes, ...played }: PlayedIn, steps: number): Phrase =>
  quantise(notes, { ...played, steps });

interface Props {
  readonly onPhrase: (phrase: Phrase) => void;
}

/** What was played in, snapped as is wanted, as often as is wanted. */
const Snapping = ({ played, onPhrase }: Props & { readonly played: PlayedIn }) => {
  const { commands } = useSession();
  const [steps, setSteps] = useState(usualSnap(played));
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for what was played, and at every other choice
  useEffect(() => {
    if (played.notes.length > 0) onPhrase(snapped(played, steps));
  }, [played, steps]);
  if (played.notes.length === 0)
    return (
      <p role="status">
        No note was heard. Play nearer to the microphone, or on keys that play the harp, and try once more.
      </p>
    );
  return (
    <>
      <Choice label="Snap what was played to" value={steps} options={SNAPS} onChoose={setSteps} />
      <button type="button" className="tool" onClick={commands.dropPlayIn}>
        Leave it like this
      </button>
    </>
  );
};

const phaseWords = ({ phase }: PlayedIn, isPlaying: boolean): string => {
  if (phase === 'recording') return 'Play: it is being written down.';
  return isPlaying ? 'It begins with the next bar.' : 'It begins with your first note.';
};

/** What a keyboard that is plugged in does here, and the key that is not on the harp. */
const Keyboard = () => {
  const isOpen = useSelected((state) => state.midi.status.kind === 'open');
  const use = useSelected((state) => state.settings.midi.use);
  const names = useNames();
  const missing = useSelected((state) => state.midi.missing);
  const tonic = useSelected((state) => state.now.tune.chart.tonic);
  if (!isOpen) return null;
  if (use === 'chords')
    return (
      <p className="hint">
        All keys of the keyboard are for chords now. To play in with them, choose under Band, MIDI that they
        play the harp.
      </p>
    );
  return (
    <p className="hint" aria-live="polite">
      {missing === null
        ? 'Keys that play the harp are written down too.'
        : `${names.pitch(pitchName(asMidi(missing), tonic))} is not on this harp, or not in your reach: it is left out.`}
    </p>
  );
};

/** Playing a phrase in by microphone or keyboard, over the band or alone at the tempo of the stand. */
export const PlayInRow = ({ onPhrase }: Props) => {
  const { commands } = useSession();
  const played = useSelected((state) => state.playedIn);
  const listens = useSelected((state) => state.ear.status.kind === 'listening');
  const hasKeys = useSelected(
    (state) => state.midi.status.kind === 'open' && state.settings.midi.use !== 'chords',
  );
  const isPlaying = useSelected((state) => state.status.kind === 'playing');
  const [bars, setBars] = useState<number>(2);
  if (played !== null && played.phase !== 'done') {
    return (
      <div className="group">
        <p role="status">{phaseWords(played, isPlaying)}</p>
        <Keyboard />
        <button type="button" className="tool" onClick={commands.endPlayIn}>
          That is it
        </button>
      </div>
    );
  }
  return (
    <details open={played !== null}>
      <summary>Play it in</summary>
      <div className="group">
        <Choice
          label="Bars to play"
          value={bars}
          options={BARS.map((value) => ({ value, text: String(value) }))}
          onChoose={setBars}
        />
        <p className="hint">
          Over the band it begins with the next bar; without it with your first note, at the tempo of the
          stand.
        </p>
        <Keyboard />
        <div className="own-buttons">
          {(listens || hasKeys) && (
            <button type="button" className="tool" onClick={() => commands.playIn(bars)}>
              Begin
            </button>
          )}
          {!listens && (
            <button
              type="button"
              className="tool"
              onClick={() => void commands.listenToMe().then(() => commands.playIn(bars))}
            >
              Switch the microphone on and begin
            </button>
          )}
        </div>
        {played !== null && <Snapping played={played} onPhrase={onPhrase} />}
      </div>
    </details>
  );
};
