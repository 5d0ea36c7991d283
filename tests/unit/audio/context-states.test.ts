import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { asSeconds } from '../../../src/core/theory/units';
import { bandRig, FakeContext } from '../../helpers/band-rig';

/** The states of an AudioContext: Web Audio API 1.1, enumeration AudioContextState (w3.org/TR/webaudio-1.1). */
type State = AudioContextState;

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const LONG = 4000;

/** A context whose promise to resume stays open until `start`. */
class SlowContext extends FakeContext {
  private open: (() => void)[] = [];
  override readonly resume = vi.fn(() => new Promise<void>((resolve) => this.open.push(resolve)));
  start(): void {
    this.become('running');
    for (const resolve of this.open) resolve();
  }
  /** Runs and tells nobody but those who wait for the promise. */
  startWithoutEvent(): void {
    this.state = 'running';
    for (const resolve of this.open) resolve();
  }
}

/** A context that the system has taken away: it refuses to resume, as the specification has it. */
class TakenContext extends FakeContext {
  override state: State = 'interrupted';
  override readonly resume = vi.fn(
    (): Promise<void> => Promise.reject(new DOMException('taken', 'InvalidStateError')),
  );
}

describe('a context that is slow to start', () => {
  it('is waited for, and the band begins when it runs although the page had said that it stays silent', async () => {
    const context = new SlowContext();
    const { play, engines, statuses, band } = bandRig({ contexts: [context] });
    const begun = play(5);
    await vi.advanceTimersByTimeAsync(LONG);
    expect(await begun).toEqual({ kind: 'blocked' });
    context.start();
    await vi.advanceTimersByTimeAsync(0);
    expect(band.status()).toEqual({ kind: 'playing' });
    expect(engines[0].play).toHaveBeenCalledTimes(1);
    expect(engines[0].play).toHaveBeenCalledWith(expect.anything(), expect.anything(), 5);
    expect(statuses).toEqual(['loading', 'blocked', 'ready', 'playing']);
  });

  it('is not called silent when it takes 0.9 s', async () => {
    const context = new SlowContext();
    const { play, statuses } = bandRig({ contexts: [context] });
    const begun = play();
    await vi.advanceTimersByTimeAsync(900);
    context.start();
    expect(await begun).toEqual({ kind: 'playing' });
    expect(statuses).toEqual(['loading', 'ready', 'playing']);
  });

  it('is looked at again when loading took longer than it did', async () => {
    const context = new SlowContext();
    const load = () => new Promise<void>((resolve) => setTimeout(resolve, 2 * LONG));
    const { play, statuses } = bandRig({ contexts: [context], load });
    const begun = play();
    await vi.advanceTimersByTimeAsync(LONG);
    context.start();
    await vi.advanceTimersByTimeAsync(LONG);
    expect(await begun).toEqual({ kind: 'playing' });
    expect(statuses).not.toContain('blocked');
  });

  it('is believed by its promise where no event comes', async () => {
    const context = new SlowContext();
    const { play, band } = bandRig({ contexts: [context] });
    void play();
    await vi.advanceTimersByTimeAsync(LONG);
    context.startWithoutEvent();
    await vi.advanceTimersByTimeAsync(0);
    expect(band.status()).toEqual({ kind: 'playing' });
  });

  it('begins at the bar moved to meanwhile, with the music changed to', async () => {
    const context = new SlowContext();
    const { play, band, engines } = bandRig({ contexts: [context] });
    void play();
    await vi.advanceTimersByTimeAsync(LONG);
    band.seek(7);
    context.start();
    await vi.advanceTimersByTimeAsync(0);
    expect(engines[0].play).toHaveBeenCalledWith(expect.anything(), expect.anything(), 7);
  });

  it('plays nothing when it was stopped meanwhile', async () => {
    const context = new SlowContext();
    const { play, band, engines } = bandRig({ contexts: [context] });
    void play();
    await vi.advanceTimersByTimeAsync(LONG);
    band.stop();
    context.start();
    await vi.advanceTimersByTimeAsync(0);
    expect(engines[0].play).not.toHaveBeenCalled();
    expect(band.status()).toEqual({ kind: 'ready' });
  });

  it('begins once when Play was pressed twice', async () => {
    const context = new SlowContext();
    const { play, band, engines } = bandRig({ contexts: [context] });
    void play();
    await vi.advanceTimersByTimeAsync(LONG);
    void play();
    expect(band.status()).toEqual({ kind: 'loading' });
    context.start();
    await vi.advanceTimersByTimeAsync(LONG);
    expect(engines[0].play).toHaveBeenCalledTimes(1);
    expect(band.status()).toEqual({ kind: 'playing' });
  });
});

describe('every state a context can come into', () => {
  it.each<[State, string]>([
    ['running', 'playing'],
    ['suspended', 'interrupted'],
    ['interrupted', 'interrupted'],
    ['closed', 'failed'],
  ])('while the band plays: %s is told as %s', async (state, kind) => {
    const context = new FakeContext();
    const { play, band } = bandRig({ contexts: [context] });
    await play();
    context.become(state);
    expect(band.status().kind).toBe(kind);
  });

  it.each<[State, string]>([
    ['running', 'ready'],
    ['suspended', 'ready'],
    ['interrupted', 'ready'],
    ['closed', 'failed'],
  ])('while the band rests: %s is told as %s', async (state, kind) => {
    const context = new FakeContext();
    const { play, band } = bandRig({ contexts: [context] });
    await play();
    band.stop();
    context.become(state);
    expect(band.status().kind).toBe(kind);
  });

  it.each<[State, string, number]>([
    ['running', 'playing', 1],
    ['suspended', 'blocked', 0],
    ['interrupted', 'interrupted', 0],
    ['closed', 'failed', 0],
  ])('while it waits for the first sound: %s is told as %s', async (state, kind, begun) => {
    const context = new SlowContext();
    const { play, band, engines } = bandRig({ contexts: [context] });
    void play();
    await vi.advanceTimersByTimeAsync(LONG);
    context.become(state);
    await vi.advanceTimersByTimeAsync(0);
    expect(band.status().kind).toBe(kind);
    expect(engines[0].play).toHaveBeenCalledTimes(begun);
  });
});

describe('an interruption', () => {
  it('ends with resume, and the band goes on where it was', async () => {
    const context = new FakeContext();
    const { play, band, engines } = bandRig({ contexts: [context] });
    await play();
    context.become('suspended');
    expect(await band.resume()).toEqual({ kind: 'playing' });
    expect(context.resume).toHaveBeenCalledTimes(2);
    expect([engines[0].play, engines[0].stop].map((call) => call.mock.calls.length)).toEqual([1, 0]);
  });

  it('stays one while the system keeps the sound, and ends by itself afterwards', async () => {
    const context = new TakenContext();
    context.state = 'suspended';
    context.resume.mockImplementationOnce(async () => context.become('running'));
    const { play, band, engines } = bandRig({ contexts: [context] });
    await play();
    context.become('interrupted');
    expect(await band.resume()).toEqual({ kind: 'interrupted' });
    context.become('running');
    expect(band.status()).toEqual({ kind: 'playing' });
    expect(engines[0].play).toHaveBeenCalledTimes(1);
  });

  it('that was there before Play is called one, not a browser that waits for a click, and the band begins after it', async () => {
    const context = new TakenContext();
    const { play, band, engines } = bandRig({ contexts: [context] });
    expect(await play()).toEqual({ kind: 'interrupted' });
    context.become('running');
    await vi.advanceTimersByTimeAsync(0);
    expect(band.status()).toEqual({ kind: 'playing' });
    expect(engines[0].play).toHaveBeenCalledTimes(1);
  });

  it('is still one after a single sound was asked for in vain', async () => {
    const context = new FakeContext();
    const { play, band } = bandRig({ contexts: [context] });
    await play();
    context.willing = false;
    context.become('suspended');
    await band.audition('lead', 72, asSeconds(1), 0);
    expect(band.status()).toEqual({ kind: 'interrupted' });
  });

  it('is nothing to resume from when there is none', async () => {
    const context = new FakeContext();
    const { play, band } = bandRig({ contexts: [context] });
    expect(await band.resume()).toEqual({ kind: 'asleep' });
    await play();
    band.stop();
    expect(await band.resume()).toEqual({ kind: 'ready' });
    expect(context.resume).toHaveBeenCalledTimes(1);
  });
});

describe('sounds that can be computed no longer', () => {
  it('end the band in words, and Play tries anew', async () => {
    const contexts = [new FakeContext(), new FakeContext()];
    const { play, band, engines, events } = bandRig({ contexts });
    const bars: unknown[] = [];
    band.onBar((position) => bars.push(position));
    await play();
    events[0].onLost('no file');
    expect(band.status()).toEqual({ kind: 'failed', why: 'load', detail: 'no file' });
    expect(bars).toEqual([null]);
    expect(engines[0].dispose).toHaveBeenCalledTimes(1);
    expect(await play()).toEqual({ kind: 'playing' });
    events[0].onLost('told late');
    expect(band.status()).toEqual({ kind: 'playing' });
  });

  it('do not end it when the page can compute them', async () => {
    const { play, band, events } = bandRig();
    const told = vi.fn();
    const end = band.onMakeshift(told);
    await play();
    events[0].onMakeshift();
    end();
    events[0].onMakeshift();
    expect(told).toHaveBeenCalledTimes(1);
    expect(band.status()).toEqual({ kind: 'playing' });
  });
});
