import { describe, expect, it, vi } from 'vitest';
import { createBand } from '../../../../src/audio/band/create-band';
import { RESTING_SOUND } from '../../../../src/audio/band/resting-sound';
import { asSeconds } from '../../../../src/core/theory/units';
import { FakeContext, program, bandRig as rig } from '../../../helpers/band-rig';
import { plainProgram } from '../../../helpers/plain-sections';

describe('the band before and after the first gesture', () => {
  it('costs nothing until it is played', () => {
    const { band, createContext } = rig();
    band.stop();
    band.change(program);
    band.seek(3);
    band.setSound(RESTING_SOUND);
    expect([band.status(), band.playhead(), band.upcoming()]).toEqual([{ kind: 'asleep' }, null, null]);
    expect(createContext).not.toHaveBeenCalled();
  });

  it('asks the context to run within the gesture, before anything is awaited', () => {
    const context = new FakeContext();
    void rig({ contexts: [context] }).play();
    expect(context.resume).toHaveBeenCalledTimes(1);
  });

  it('loads, plays and stops', async () => {
    const { band, statuses, engines, play } = rig();
    expect(await play()).toEqual({ kind: 'playing' });
    expect(engines[0].play).toHaveBeenCalledWith(program, RESTING_SOUND, 0);
    band.stop();
    band.stop();
    expect(statuses).toEqual(['loading', 'ready', 'playing', 'ready']);
  });

  it('lends its sound without being loaded, and lets it rest only once all of it is given back', async () => {
    vi.useFakeTimers();
    const context = new FakeContext();
    const { band, engines, play } = rig({ contexts: [context] });
    const [one, other] = [await band.lend(), await band.lend()];
    expect([one?.context === other?.context, one?.output === other?.output]).toEqual([true, true]);
    expect([context.state, engines.length, band.status()]).toEqual(['running', 0, { kind: 'asleep' }]);
    await play();
    band.stop();
    one?.giveBack();
    one?.giveBack();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(context.state).toBe('running');
    other?.giveBack();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(context.state).toBe('suspended');
    vi.useRealTimers();
  });

  it('has nothing to lend where there is no sound', async () => {
    const { band } = rig({ contexts: [] });
    expect([await band.lend(), band.status().kind]).toEqual([null, 'failed']);
  });

  it('seeks only while playing', async () => {
    const { band, engines, play } = rig();
    await play();
    band.seek(5);
    band.stop();
    band.seek(6);
    expect(engines[0].seek.mock.calls).toEqual([[5]]);
  });

  it('pauses, is led elsewhere, and goes on or stops from there', async () => {
    const { band, statuses, engines, play } = rig();
    band.pause();
    expect(await band.resume()).toEqual({ kind: 'asleep' });
    await play();
    band.pause();
    band.pause();
    band.seek(5);
    expect(band.status()).toEqual({ kind: 'paused' });
    expect(await band.resume()).toEqual({ kind: 'playing' });
    band.pause();
    band.stop();
    expect(await band.resume()).toEqual({ kind: 'ready' });
    expect(engines[0].goOn).toHaveBeenCalledTimes(1);
    expect(engines[0].seek.mock.calls).toEqual([[5]]);
    expect(statuses).toEqual(['loading', 'ready', 'playing', 'paused', 'playing', 'paused', 'ready']);
  });

  it('plays the program changed to while loading', async () => {
    let loaded = () => {};
    const { band, engines, play } = rig({ load: () => new Promise((resolve) => (loaded = resolve)) });
    const begun = play();
    const faster = plainProgram(12, 200);
    band.change(faster);
    loaded();
    await begun;
    expect(engines[0].play).toHaveBeenCalledWith(faster, RESTING_SOUND, 0);
  });

  it('plays with the sound set last, even while loading', async () => {
    let loaded = () => {};
    const { band, engines, play } = rig({ load: () => new Promise((resolve) => (loaded = resolve)) });
    const begun = play();
    const organ = { ...RESTING_SOUND, chords: 'organ' as const };
    band.setSound(organ);
    loaded();
    await begun;
    expect(engines[0].play).toHaveBeenCalledWith(program, organ, 0);
  });

  it('does not begin when stopped while loading', async () => {
    let loaded = () => {};
    const { band, engines, play } = rig({ load: () => new Promise((resolve) => (loaded = resolve)) });
    const begun = play();
    band.stop();
    loaded();
    expect(await begun).toEqual({ kind: 'ready' });
    expect(engines[0].play).not.toHaveBeenCalled();
  });

  it('tells of bars, and is ready again when the music ends by itself', async () => {
    const { band, events, engines, play } = rig();
    const bars: unknown[] = [];
    const end = band.onBar((position) => bars.push(position));
    await play();
    events[0].onBar(null);
    end();
    events[0].onBar(null);
    expect(bars).toEqual([null]);
    engines[0].stop();
    events[0].onEnd();
    expect(band.status()).toEqual({ kind: 'ready' });
  });

  it('lets the context rest within a second of the music, and wakes it for the next', async () => {
    vi.useFakeTimers();
    const context = new FakeContext();
    const { band, play } = rig({ contexts: [context] });
    await play();
    band.stop();
    // The room rings for 0.42 s.
    await vi.advanceTimersByTimeAsync(440);
    expect(context.state).toBe('running');
    await vi.advanceTimersByTimeAsync(300);
    expect([context.state, band.status().kind]).toEqual(['suspended', 'ready']);
    expect(await play()).toEqual({ kind: 'playing' });
    await vi.advanceTimersByTimeAsync(60_000);
    expect(context.state).toBe('running');
    vi.useRealTimers();
  });

  it('lets the context run until a single note and what follows it have died away', async () => {
    vi.useFakeTimers();
    const context = new FakeContext();
    const { band, engines } = rig({ contexts: [context] });
    await band.audition('lead', 72, asSeconds(1.2), 0);
    const [engine] = engines;
    engine?.sounding.mockReturnValue(true);
    await vi.advanceTimersByTimeAsync(5000);
    expect(context.state).toBe('running');
    engine?.sounding.mockReturnValue(false);
    await vi.advanceTimersByTimeAsync(1600);
    expect(context.state).toBe('suspended');
    vi.useRealTimers();
  });

  it('does not let it rest while the first sounds of a song or a note are awaited', async () => {
    vi.useFakeTimers();
    try {
      const context = new FakeContext();
      const { band, engines, play } = rig({ contexts: [context] });
      await play();
      band.stop();
      const [engine] = engines;
      const late = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 1500));
      engine.play.mockImplementationOnce(() => late().then(() => true));
      const begun = play();
      await vi.advanceTimersByTimeAsync(1500);
      await begun;
      expect(context.suspend).not.toHaveBeenCalled();
      engine.audition.mockImplementationOnce(late);
      const heard = band.audition('lead', 60, asSeconds(1), 0);
      await vi.advanceTimersByTimeAsync(1500);
      await heard;
      expect(context.suspend).not.toHaveBeenCalled();
      await vi.advanceTimersByTimeAsync(1000);
      expect(context.state).toBe('suspended');
    } finally {
      vi.useRealTimers();
    }
  });

  it('lets a single note be heard without a sound set', async () => {
    const { band, engines } = rig();
    await band.audition('lead', 72, asSeconds(0.5), -1);
    expect(engines[0].audition).toHaveBeenCalledWith(
      'lead',
      { midi: 72, seconds: 0.5, glideFrom: -1 },
      RESTING_SOUND,
    );
  });
});

describe('the band in bad circumstances', () => {
  it('says that there is no Web Audio', async () => {
    expect(await rig({ contexts: [] }).play()).toMatchObject({ kind: 'failed', why: 'no web audio' });
  });

  it('says that the device cannot be opened', async () => {
    const band = createBand({
      createContext: () => {
        throw new Error('no hardware');
      },
      loadEngine: () => Promise.reject(new Error('not reached')),
    });
    expect(await band.play(program, RESTING_SOUND, 0)).toEqual({
      kind: 'failed',
      why: 'device',
      detail: 'no hardware',
    });
  });

  it('says that loading failed, and tries again', async () => {
    let fails = true;
    const { play } = rig({
      load: async () => {
        if (fails) throw new Error('offline');
      },
    });
    expect(await play()).toEqual({ kind: 'failed', why: 'load', detail: 'offline' });
    fails = false;
    expect(await play()).toEqual({ kind: 'playing' });
  });

  it('is blocked while the browser wants a gesture, and plays after one', async () => {
    const context = new FakeContext();
    context.willing = false;
    const { band, play } = rig({ contexts: [context] });
    expect(await play()).toEqual({ kind: 'blocked' });
    context.willing = true;
    expect(await play()).toEqual({ kind: 'playing' });
    expect(band.status()).toEqual({ kind: 'playing' });
  });

  it.each<AudioContextState | 'interrupted'>(['suspended', 'interrupted'])(
    'is interrupted when the context becomes %s, and goes on with it',
    async (state) => {
      const context = new FakeContext();
      const { band, play } = rig({ contexts: [context] });
      await play();
      context.become(state);
      expect(band.status()).toEqual({ kind: 'interrupted' });
      context.become('running');
      expect(band.status()).toEqual({ kind: 'playing' });
    },
  );

  it('resumes an interrupted context on play', async () => {
    const context = new FakeContext();
    const { play } = rig({ contexts: [context] });
    await play();
    context.become('suspended');
    expect(await play()).toEqual({ kind: 'playing' });
    expect(context.resume).toHaveBeenCalledTimes(2);
  });

  it('takes a new context when the device was closed', async () => {
    const contexts = [new FakeContext(), new FakeContext()];
    const [first] = contexts;
    const { band, engines, play } = rig({ contexts });
    await play();
    first.become('closed');
    expect(band.status()).toMatchObject({ kind: 'failed', why: 'device' });
    expect(engines[0].dispose).toHaveBeenCalledTimes(1);
    expect(await play()).toEqual({ kind: 'playing' });
    expect(engines).toHaveLength(2);
  });

  it('never lets an exception of the engine out of play', async () => {
    const { engines, play } = rig();
    await play();
    engines[0].play.mockRejectedValueOnce(new Error('broken graph'));
    expect(await play()).toMatchObject({ kind: 'failed', detail: 'broken graph' });
  });

  it('does not come to life when disposed while loading', async () => {
    let loaded = () => {};
    const { band, engines, play } = rig({ load: () => new Promise((resolve) => (loaded = resolve)) });
    const begun = play();
    band.dispose();
    loaded();
    expect(await begun).toEqual({ kind: 'asleep' });
    expect(engines[0].dispose).toHaveBeenCalledTimes(1);
  });

  it('gives the context back when disposed, and twice is once', async () => {
    const context = new FakeContext();
    const { band, engines, play } = rig({ contexts: [context] });
    await play();
    band.dispose();
    band.dispose();
    expect(context.close).toHaveBeenCalledTimes(1);
    expect(engines[0].dispose).toHaveBeenCalledTimes(1);
    expect(band.status()).toEqual({ kind: 'asleep' });
  });
});
