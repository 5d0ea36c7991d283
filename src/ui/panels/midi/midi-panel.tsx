import { KEY_USES } from '../../../core/midi/keyboard';
import { pitchName } from '../../../core/theory/pitch';
import { asMidi } from '../../../core/theory/units';
import { Choice, optionsOf } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';
import { Pedals } from './pedals';
import { SendOut } from './send-out';

const USES = optionsOf(KEY_USES, {
  split: 'Left hand: chords, right hand: the harp',
  chords: 'All keys: chords',
  harp: 'All keys: the harp',
});

/** The keys of a piano that can part the hands: every octave’s C, F and G between A0 and C8. */
const SPLITS = Array.from({ length: 88 }, (_, i) => i + 21)
  .filter((key) => [0, 5, 7].includes(key % 12))
  .map((value) => ({ value, name: pitchName(asMidi(value)) }));

/** What is plugged in, in a sentence. */
const Plugged = () => {
  const status = useSelected((state) => state.midi.status);
  if (status.kind === 'asking') return <p role="status">The browser asks whether this page may have them.</p>;
  if (status.kind !== 'open') return null;
  return (
    <p role="status">
      {status.inputs.length === 0
        ? 'Nothing is plugged in yet. It is taken up by itself when it is.'
        : `Listening to ${status.inputs.join(', ')}.`}
    </p>
  );
};

/** What the hands do now, in words: for whoever sees no drawing, and to see that the keyboard is heard. */
const Held = () => {
  const { held, fit, sounding, missing } = useSelected((state) => state.midi);
  const tonic = useSelected((state) => state.now.tune.chart.tonic);
  const names = useNames();
  const pitchText = (pitch: number): string => names.pitch(pitchName(asMidi(pitch), tonic));
  const keys = held.map(pitchText).join(' ');
  return (
    <p className="hint" aria-live="polite">
      {fit !== null && `You hold ${names.chord(fit.chord)}: ${keys}. What fits and the map answer to it.`}
      {fit === null && held.length > 0 && `You hold ${keys}: no chord has that name.`}
      {held.length === 0 && sounding.length > 0 && 'The harp plays.'}
      {held.length === 0 &&
        missing !== null &&
        `${pitchText(missing)} is not on this harp, or not in your reach.`}
      {held.length === 0 && sounding.length === 0 && missing === null && 'Press a key to try.'}
    </p>
  );
};

/** The band leaves its chords to whoever plays them, and follows those where that is wanted. */
const OwnChords = () => {
  const { commands } = useSession();
  const { chords, second } = useSelected((state) => state.settings.mix.channels);
  const follow = useSelected((state) => state.settings.midi.follow);
  const mute = (muted: boolean): void => {
    commands.setChannel('chords', { muted });
    commands.setChannel('second', { muted });
  };
  return (
    <>
      <Switch
        label="I play the chords: the band leaves them out"
        on={chords.muted && second.muted}
        onChange={mute}
      />
      <Switch
        label="The band follows the chords I hold"
        on={follow}
        onChange={(on) => {
          commands.chooseMidi({ follow: on });
          if (on) mute(true);
        }}
        hint="What you hold when a bar ends is what the band plays from the next one on; a chord struck on the one, or just after it, is taken up at once. Hold nothing for a bar, and the chart comes back."
      />
    </>
  );
};

/** Keyboards and pedals that are plugged in: asked for here, and told what to do. */
export const MidiPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const names = useNames();
  const { commands } = useSession();
  const { use, split } = useSelected((state) => state.settings.midi);
  const kind = useSelected((state) => state.midi.status.kind);
  const open = kind === 'open' || kind === 'asking';
  return (
    <Panel title="MIDI" onClose={onClose}>
      <Fold title="Keyboard" open>
        <p>
          Hold a chord, and What fits answers to it, with the band or without. Other keys play the harp in
          your hand, and only what it has.
        </p>
        <div className="save-row">
          <button
            type="button"
            className="tool"
            aria-pressed={open}
            onClick={() => void commands.listenToMidi(!open)}
          >
            {open ? 'Let them go' : 'Use what is plugged in (MIDI)'}
          </button>
        </div>
        <Plugged />
        {kind === 'open' && <Held />}
        <Choice
          label="The keys"
          value={use}
          options={USES}
          size="long"
          onChoose={(next) => commands.chooseMidi({ use: next })}
        />
        {use === 'split' && (
          <Choice
            label="The right hand begins at"
            value={SPLITS.some(({ value }) => value === split) ? split : 60}
            options={SPLITS.map(({ value, name }) => ({ value, text: names.pitch(name) }))}
            size="short"
            onChoose={(next) => commands.chooseMidi({ split: next })}
          />
        )}
        <OwnChords />
      </Fold>
      <Fold title="Send out" open={false}>
        <SendOut />
      </Fold>
      <Fold title="Pedals and switches" open>
        <Pedals />
      </Fold>
    </Panel>
  );
};
