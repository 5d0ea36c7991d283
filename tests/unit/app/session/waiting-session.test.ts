import { expect, it } from 'vitest';
import { openState } from '../../../../src/app/session/opening';
import { createWaitingSession } from '../../../../src/app/session/waiting-session';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const keep = () => createKeptValues(() => createFakeStorage(), new EventTarget());

/** A session that is on its way until it is let come. */
const awaited = () => {
  const kept = keep();
  const whole = openSession(kept);
  const store = openState(kept);
  let attempts = 0;
  let fail = false;
  const session = createWaitingSession(store, async () => {
    attempts += 1;
    if (fail) throw new Error('no network');
    return whole.session;
  });
  return {
    ...{ session, whole, store },
    attempts: () => attempts,
    failing: (on: boolean): void => {
      fail = on;
    },
  };
};

it('carries out what was asked before, in order, once what does it is here', async () => {
  const { session, whole } = awaited();
  session.commands.typeTempo('96');
  session.commands.nudgeTempo(4);
  expect(whole.state().settings.tempo).not.toBe(100);
  await session.arrive();
  expect(whole.state().settings.tempo).toBe(100);
});

it('carries out at once what is asked later, and fetches once', async () => {
  const { session, whole, attempts } = awaited();
  await Promise.all([session.arrive(), session.arrive()]);
  session.commands.typeTempo('96');
  expect(whole.state().settings.tempo).toBe(96);
  expect(attempts()).toBe(1);
});

it('gives back what a command promises', async () => {
  const { session } = awaited();
  const copies = session.commands.keptCopies();
  await session.arrive();
  expect(await copies).toEqual([]);
});

it('has every command as one function, so that effects do not run anew', () => {
  const { session } = awaited();
  expect(session.commands.stop).toBe(session.commands.stop);
  expect(session.commands.stop).not.toBe(session.commands.pause);
});

it('has silence to show until it is here', async () => {
  const { session, whole } = awaited();
  expect([session.live.playhead(), session.live.ear.frame(), session.live.ear.trace()]).toEqual([
    null,
    null,
    [],
  ]);
  await session.arrive();
  expect(session.live.ear).toBe(whole.session.live.ear);
});

it('says when it cannot be fetched, tries again, and does then what was asked', async () => {
  const { session, whole, store, failing } = awaited();
  failing(true);
  session.commands.typeTempo('96');
  await expect(session.arrive()).rejects.toThrow('no network');
  expect(
    store
      .getState()
      .notices.map(({ text }) => text)
      .join(),
  ).toMatch(/could not be fetched/);
  failing(false);
  await session.arrive();
  expect(store.getState().notices).toEqual([]);
  expect(whole.state().settings.tempo).toBe(96);
});
