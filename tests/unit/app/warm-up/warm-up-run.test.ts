import { describe, expect, it } from 'vitest';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createSession } from '../../../helpers/create-session';
import { createFakeBand } from '../../../helpers/fake-band';
import { createFakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';

/** A session whose clock is moved by hand. */
const open = () => {
  const band = createFakeBand();
  const waiting: { readonly seconds: number; readonly run: () => void; over: boolean }[] = [];
  const storage = createFakeStorage();
  const session = createSession({
    band,
    kept: createKeptValues(() => storage, new EventTarget()),
    newSeed: () => 1,
    later: (seconds, run) => {
      const entry = { seconds, run, over: false };
      waiting.push(entry);
      return () => {
        entry.over = true;
      };
    },
    takeAway: createFakeTakeAway(),
    ownSounds: createFakeOwnSounds(),
  });
  const ring = (): void => {
    const entry = waiting.findLast(({ over }) => !over);
    if (!entry) throw new Error('Nothing is waiting');
    entry.over = true;
    entry.run();
  };
  const settle = () => new Promise((resolve) => setTimeout(resolve, 0));
  const { commands } = session;
  return { band, waiting, ring, settle, commands, state: session.store.getState };
};

describe('a warm-up', () => {
  it('begins with a rest and goes on with the band when the rest is over', async () => {
    const { band, ring, settle, commands, state } = open();
    commands.startWarmUp();
    expect(state().warmUp?.step.band).toBeNull();
    ring();
    await settle();
    expect(state().warmUp?.number).toBe(2);
    expect(band.asked.at(-1)).toBe('play from 0');
    expect(state().exercise?.chart.bars.length).toBe(band.programs.at(-1)?.chart.bars.length);
  });

  it('takes the next step when the band has played this one, and shows its cues', async () => {
    const { band, ring, settle, commands, state } = open();
    commands.startWarmUp();
    ring();
    await settle();
    band.hear(1, 0);
    expect(state().warmUp?.cue?.text).toMatch(/^Hold /);
    band.report({ kind: 'ready' });
    expect(state().warmUp?.number).toBe(3);
    expect(state().warmUp?.step.band).toBeNull();
  });

  it('runs through all its steps and gives the song back', async () => {
    const { band, ring, settle, commands, state } = open();
    const song = state().tune.chart;
    commands.startWarmUp();
    const steps = state().warmUp?.of ?? 0;
    for (let i = 0; i < steps; i += 1) {
      if (state().warmUp?.step.band === null) ring();
      else band.report({ kind: 'ready' });
      await settle();
    }
    expect(steps).toBeGreaterThan(5);
    expect(state().warmUp).toBeNull();
    expect(state().exercise).toBeNull();
    expect(state().now.tune.chart).toBe(song);
  });

  it('ends with Stop and does not go on by itself afterwards', async () => {
    const { band, waiting, ring, settle, commands, state } = open();
    commands.startWarmUp();
    ring();
    await settle();
    commands.stop();
    expect(state().warmUp).toBeNull();
    expect(waiting.every(({ over }) => over)).toBe(true);
    band.report({ kind: 'ready' });
    expect(state().warmUp).toBeNull();
  });

  it('skips a step on request', async () => {
    const { settle, commands, state } = open();
    commands.startWarmUp();
    commands.skipWarmUpStep();
    await settle();
    expect(state().warmUp?.number).toBe(2);
  });
});
