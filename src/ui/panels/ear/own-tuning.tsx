import { useEffect, useRef, useState } from 'react';
import { harpKind } from '../../../core/bends/bend-results';
import {
  measuredCents,
  nextReed,
  type ReedReadings,
  readReed,
  reedsInTurn,
} from '../../../core/bends/own-tuning';
import type { ReedCents } from '../../../core/harp/build-harp';
import { BREATHS, type Harp, type Sound } from '../../../core/harp/harp';
import type { OwnedHarp } from '../../../core/harp/harp-case';
import { soundId, spokenHole } from '../../../core/harp/tab';
import type { Settings } from '../../../core/settings/settings';
import { harpForCase, inCase } from '../../../core/song/harp-in-case';
import { signedCents } from '../../../core/theory/temperament';
import { useSelected, useSession } from '../../state/session-context';
import { useBendPractice } from '../../state/use-bend-practice';

interface Reading {
  readonly readings: ReedReadings;
  /** A reed the player wants to play again; null takes the first that is missing. */
  readonly again: Sound | null;
  readonly said: string;
}

const NOTHING: Reading = { readings: new Map(), again: null, said: '' };

/** Reads the reeds as they are played, while it runs. */
const useReadings = (harp: Harp, running: boolean) => {
  const practice = useBendPractice();
  const reference = useSelected((state) => state.settings.reference);
  const [reading, setReading] = useState<Reading>(NOTHING);
  const latest = useRef(reading);
  useEffect(() => {
    latest.current = reading;
  }, [reading]);
  const asked = reading.again ?? nextReed(harp, reading.readings);
  const aim = asked === null ? null : soundId(asked);
  useEffect(() => {
    if (!running || practice === null) return;
    const { hearing } = practice;
    hearing.aim(aim === null ? [] : [aim]);
    const leave = hearing.onNote(({ note }) => {
      const { to } = note;
      if (to === null) return;
      const { readings: before, again } = latest.current;
      const { id, readings, said } = readReed(before, { harp, reference, asked, note });
      const reed = reedsInTurn(harp).find((each) => soundId(each) === id);
      // Before it is aimed at the next: what is taught is what was heard until then.
      if (reed !== undefined) hearing.teach(reed, note.from, to);
      latest.current = { readings, said, again: id === aim ? null : again };
      setReading(latest.current);
    });
    return () => {
      leave();
      hearing.aim([]);
    };
  }, [practice, running, harp, reference, aim, asked]);
  return { ...reading, asked, setReading };
};

interface PictureProps {
  readonly harp: Harp;
  readonly readings: ReedReadings;
  readonly asked: Sound | null;
  readonly onAsk: (sound: Sound) => void;
}

/** What was read of each reed, what is asked for, and what is still to be played. */
const ReedPicture = ({ harp, readings, asked, onAsk }: PictureProps) => (
  <table className="reed-picture">
    <tbody>
      {BREATHS.map((breath) => (
        <tr key={breath}>
          <th scope="row">{breath}</th>
          {reedsInTurn(harp)
            .filter((sound) => sound.breath === breath)
            .map((sound) => {
              const cents = readings.get(soundId(sound));
              const words = cents === undefined ? 'still to play' : `${signedCents(cents)} cents`;
              return (
                <td key={sound.hole}>
                  <button
                    type="button"
                    data-read={cents !== undefined}
                    aria-current={sound === asked ? 'step' : undefined}
                    aria-label={`${spokenHole(sound)}: ${words}`}
                    onClick={() => onAsk(sound)}
                  >
                    <small>{sound.hole}</small>
                    {cents === undefined ? '·' : signedCents(cents)}
                  </button>
                </td>
              );
            })}
        </tr>
      ))}
    </tbody>
  </table>
);

/** What was there before the measured cents were put in. */
interface Before {
  readonly chosen: Pick<Settings, 'intonation' | 'stretch'>;
  /** The harp of the case as it was; null where it was put in, under `added`. */
  readonly owned: OwnedHarp | null;
  readonly added: string | null;
}

/** Puts measured cents into the harp in hand and into the case, and takes them out again. */
const useSaving = () => {
  const { commands, store } = useSession();
  const [before, setBefore] = useState<Before | null>(null);
  const save = (cents: ReedCents): void => {
    const { settings, harpCase } = store.getState();
    const { intonation, stretch } = settings;
    const owned = inCase(settings, harpCase);
    const change = { intonation: { cents }, stretch: 0, reference: settings.reference };
    const kept = { ...(owned ?? harpForCase(settings, harpCase)), ...change };
    commands.choose({ intonation: { cents }, stretch: 0 });
    commands.keepHarp(kept);
    setBefore({ chosen: { intonation, stretch }, owned, added: owned === null ? kept.id : null });
  };
  const takeBack = (): void => {
    if (before === null) return;
    commands.choose(before.chosen);
    if (before.owned !== null) commands.keepHarp(before.owned);
    if (before.added !== null) commands.dropHarp(before.added);
    setBefore(null);
  };
  return { saved: before !== null, save, takeBack };
};

const Measuring = ({ harp }: { readonly harp: Harp }) => {
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  const [running, setRunning] = useState(false);
  const { readings, said, asked, setReading } = useReadings(harp, running && listening);
  const { saved, save, takeBack } = useSaving();
  const all = reedsInTurn(harp).length;
  return (
    <>
      <p>
        Play each natural note once for a second, at your usual breath, one hole alone. The cents become this
        harp’s own, here and in your case; no reed is forced or filed for it. The ear learns meanwhile how
        each reed sounds, and tells chords and splits apart by it.
      </p>
      <div className="save-row">
        <button
          type="button"
          className="tool"
          aria-pressed={running}
          disabled={!listening}
          onClick={() => setRunning(!running)}
        >
          {running ? 'Stop measuring' : 'Measure this harp'}
        </button>
        {readings.size > 0 && (
          <button type="button" className="tool" onClick={() => setReading(NOTHING)}>
            Begin anew
          </button>
        )}
      </div>
      {!listening && <p className="hint">Press Listen first.</p>}
      {(running || readings.size > 0) && (
        <>
          <ReedPicture
            harp={harp}
            readings={readings}
            asked={running ? asked : null}
            onAsk={(again) => setReading((now) => ({ ...now, again }))}
          />
          <p role="status">
            {said} {running && asked !== null && `Next: ${spokenHole(asked)}.`} {readings.size} of {all}{' '}
            reeds.
          </p>
          <div className="save-row">
            <button
              type="button"
              className="tool"
              disabled={readings.size === 0}
              onClick={() => save(measuredCents(harp, readings))}
            >
              Use these cents for this harp
            </button>
            {saved && (
              <button type="button" className="tool" onClick={takeBack}>
                Take them back
              </button>
            )}
          </div>
        </>
      )}
      <ReedsKnown all={all} />
    </>
  );
};

/** How well the ear knows this harp, and how it is made to forget it. */
const ReedsKnown = ({ all }: { readonly all: number }) => {
  const { commands } = useSession();
  const learnt = useSelected((state) => state.ear.learnt);
  if (learnt === 0) return null;
  return (
    <>
      <p>
        The ear knows how {learnt} of {all} reeds sound at this microphone. Numbers are kept of it, in this
        browser, and no sound; it goes on learning while you play.
      </p>
      <div className="save-row">
        <button type="button" className="tool" onClick={commands.forgetReeds}>
          Forget how harps sound here
        </button>
      </div>
    </>
  );
};

/** The harp's own tuning, read from its notes; another harp begins anew. */
export const OwnTuning = () => {
  const harp = useSelected((state) => state.tune.harp);
  return <Measuring key={harpKind(harp)} harp={harp} />;
};
