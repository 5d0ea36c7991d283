import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';
import { hidesSoftNotes } from '../../../core/hearing/calibrate-gate';
import type { Calibration } from '../../../core/hearing/calibration';
import { apartWords } from '../../../core/theory/apart-words';
import { useSelected, useSession } from '../../state/session-context';

const STEPS = {
  quiet: 'Two seconds of quiet, please: the room is being measured.',
  chirps: 'Some chirps: the way from loudspeaker to microphone is being measured. Stay quiet.',
  band: 'The band plays six seconds to itself: what is left of it is being measured. Stay quiet.',
  along: 'Now play any one note along with each click, eight times. Without a harp at hand, tap instead.',
} as const;

const ms = (seconds: number): string => `${Math.round(seconds * 1000)} ms`;

const lagWords = ({ lag, tapped }: Calibration): string => {
  if (lag === null)
    return 'Neither notes nor taps came along with the clicks: your timing is judged by a guess.';
  const apart = apartWords(lag, { earlier: 'before', later: 'after' });
  return tapped
    ? `By your taps you are heard ${apart} a click, the microphone’s own delay as the browser tells it.`
    : `Your notes are heard ${apart} a click, all ways together.`;
};

const foundWords = (known: Calibration): readonly string[] => {
  const { noise, roundTrip, leak, gate } = known;
  return [
    ...(noise === null ? [] : [`The room lies at ${Math.round(noise)} dB.`]),
    roundTrip === null || leak === null
      ? 'The loudspeaker is not heard: headphones, or far away. The band then needs no taking out.'
      : `The loudspeaker comes back after ${ms(roundTrip)}, at ${Math.round(leak)} dB.`,
    ...(gate === null ? [] : [`What is softer than ${Math.round(gate)} dB does not count.`]),
    ...(gate !== null && hidesSoftNotes(gate)
      ? ['That is loud: soft notes may be missed. Go nearer to the microphone, or turn the band down.']
      : []),
    lagWords(known),
  ];
};

/** Seconds since an event happened: the page may have been busy. */
const ago = ({ timeStamp }: { readonly timeStamp: number }): number =>
  Math.max(0, performance.now() - timeStamp) / 1000;

/** To be pressed along with the clicks, by finger or by any key while it has the focus. */
const TapButton = () => {
  const { commands } = useSession();
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus(), []);
  const onKey = (event: KeyboardEvent): void => {
    if (['Tab', 'Escape', 'Shift'].includes(event.key) || event.repeat) return;
    event.preventDefault();
    event.stopPropagation();
    commands.tapAlong(ago(event));
  };
  return (
    <button
      ref={button}
      type="button"
      className="tool tap-along"
      onPointerDown={(event: PointerEvent) => commands.tapAlong(ago(event))}
      onKeyDown={onKey}
    >
      Tap along: here, or with a key
    </button>
  );
};

/** Measures microphone, room, loudspeaker and player, and says what was found. */
export const CalibrationPart = () => {
  const { commands } = useSession();
  const step = useSelected((state) => state.ear.calibrating);
  const known = useSelected((state) => state.ear.calibration);
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  return (
    <>
      <p>
        Some seventeen seconds, in the room and at the volume you play with; you can do without. It is kept
        for this microphone, and forgetting it forgets as well how your harps sound there. Turn the volume
        down first if you wear headphones: the chirps are short, but clear.
      </p>
      <p role="status">{step !== null && STEPS[step]}</p>
      {step === 'along' && <TapButton />}
      <div className="save-row">
        <button
          type="button"
          className="tool"
          disabled={!listening}
          onClick={() => (step === null ? void commands.calibrate() : commands.cancelCalibration())}
        >
          {step === null ? (known === null ? 'Calibrate' : 'Calibrate again') : 'Break off'}
        </button>
        {known !== null && step === null && (
          <button type="button" className="tool" onClick={commands.forgetCalibration}>
            Forget it
          </button>
        )}
      </div>
      {!listening && <p className="hint">Press Listen first.</p>}
      {known !== null && step === null && (
        <ul className="found">
          {foundWords(known).map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
    </>
  );
};
