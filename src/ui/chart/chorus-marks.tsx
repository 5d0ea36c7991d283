import { useEffect } from 'react';
import { FADE_WORDS, FADES } from '../../core/practice/fading';
import { ladderWords } from '../../core/practice/tempo-ladder';
import { useSelected, useSession } from '../state/session-context';

const OUTCOMES = [
  { outcome: 'clean', sign: '●', text: 'Clean' },
  { outcome: 'fair', sign: '◐', text: 'Nearly' },
  { outcome: 'trouble', sign: '○', text: 'Trouble' },
] as const;

/** Lets the player say how the last chorus was, where nobody listens. */
const SelfMark = () => {
  const { commands } = useSession();
  const last = useSelected((state) => state.choruses.last);
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  if (last === null || listening) return null;
  return (
    <fieldset className="self-marks">
      <legend className="unseen">How was chorus {last.number + 1}?</legend>
      {OUTCOMES.map(({ outcome, sign, text }) => (
        <button
          key={outcome}
          type="button"
          className="tool"
          aria-pressed={last.outcome === outcome}
          onClick={() => commands.markChorus(outcome)}
        >
          <span aria-hidden="true">{sign}</span> {text}
        </button>
      ))}
    </fieldset>
  );
};

const LadderLine = () => {
  const ladder = useSelected((state) => state.settings.ladder);
  const tempo = useSelected((state) => state.settings.tempo);
  const place = useSelected((state) => state.choruses.place);
  const since = place.tempo === tempo ? place.since : 0;
  return (
    <p aria-live="polite">
      <b>{Math.round(tempo)}</b> beats a minute; {ladderWords(ladder, { tempo, since })}.
    </p>
  );
};

/** Hides what fades, for eyes and screen readers alike: the style sheet does it by these marks on the page. */
const useFading = (fade: (typeof FADES)[number], tone: number): void => {
  useEffect(() => {
    const { dataset } = document.documentElement;
    dataset.faded = String(FADES.indexOf(fade));
    dataset.fadedTone = String(tone);
    return () => {
      delete dataset.faded;
      delete dataset.fadedTone;
    };
  }, [fade, tone]);
};

const MemoryLine = () => {
  const { commands } = useSession();
  const { fade, tone } = useSelected((state) => state.choruses);
  useFading(fade, tone);
  return (
    <p aria-live="polite">
      {FADE_WORDS[fade]}{' '}
      {fade !== 'nothing' && (
        <button type="button" className="tool" onClick={commands.showAgain}>
          Show it again
        </button>
      )}
    </p>
  );
};

/** What the choruses come to while they are played: the tempo ladder, and what is played from memory. */
export const ChorusMarks = () => {
  const playing = useSelected(({ status }) => status.kind === 'playing' || status.kind === 'paused');
  const warmUp = useSelected((state) => state.warmUp !== null);
  const ladder = useSelected((state) => state.settings.ladder.by !== 'off');
  const memory = useSelected((state) => state.settings.fromMemory);
  if (!playing || warmUp || (!ladder && !memory)) return null;
  return (
    <section className="chorus-marks card" aria-label="Chorus by chorus">
      {ladder && <LadderLine />}
      {memory && <MemoryLine />}
      <SelfMark />
    </section>
  );
};
