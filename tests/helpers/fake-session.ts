import { openDraft } from '../../src/core/song/chart-drafts';
import type { KeptValues } from '../../src/storage/kept-values';
import { createSession, type Devices } from './create-session';
import { createFakeBand } from './fake-band';
import { createFakeMicrophone } from './fake-microphone';
import { createFakeOwnSounds } from './fake-own-sounds';
import { createFakeTakeAway } from './fake-take-away';
import { createFakeTakes } from './fake-takes';

let seed = 100;

/** A session on what a tab keeps, with a band that makes no sound and time that is let pass by hand. */
export const openSession = (
  kept: KeptValues,
  also: Partial<
    Pick<
      Devices,
      'screen' | 'recorded' | 'book' | 'lasting' | 'log' | 'today' | 'phrases' | 'midi' | 'mediaKeys' | 'tabs'
    >
  > = {},
) => {
  const due = new Map<() => void, number>();
  const band = createFakeBand();
  const takeAway = createFakeTakeAway();
  const microphone = createFakeMicrophone();
  const takes = createFakeTakes();
  const session = createSession({
    band,
    kept,
    newSeed: () => {
      seed += 1;
      return seed;
    },
    later: (seconds, run) => {
      const once = (): void => run();
      due.set(once, seconds);
      return () => due.delete(once);
    },
    takeAway,
    ownSounds: createFakeOwnSounds(),
    microphone,
    takes,
    ...also,
  });
  const state = session.store.getState;
  return {
    band,
    takeAway,
    microphone,
    takes,
    session,
    state,
    commands: session.commands,
    draft: () => openDraft(state())?.present,
    notices: () =>
      state()
        .notices.map(({ text }) => text)
        .join('\n'),
    /** Lets everything happen that was to happen later, or what was to happen within so many seconds. */
    pass: (within = Number.POSITIVE_INFINITY): void => {
      const runs = [...due].filter(([, seconds]) => seconds <= within).map(([run]) => run);
      for (const run of runs) due.delete(run);
      for (const run of runs) run();
    },
  };
};
