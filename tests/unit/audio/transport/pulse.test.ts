import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { startPulse } from '../../../../src/audio/transport/pulse';

/** The worker of the pulse, moved by hand. */
class FakeWorker {
  static last: FakeWorker;
  onmessage: (() => void) | null = null;
  onerror: (() => void) | null = null;
  readonly postMessage = vi.fn();
  readonly terminate = vi.fn();
  constructor() {
    FakeWorker.last = this;
  }
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('Worker', FakeWorker);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('the pulse', () => {
  it('beats by the page while its worker has not begun, then by the worker alone', () => {
    const beat = vi.fn();
    const end = startPulse(100, beat);
    vi.advanceTimersByTime(300);
    expect(beat).toHaveBeenCalledTimes(3);
    FakeWorker.last.onmessage?.();
    vi.advanceTimersByTime(300);
    expect(beat).toHaveBeenCalledTimes(4);
    end();
    expect(FakeWorker.last.terminate).toHaveBeenCalledTimes(1);
  });

  it('beats on when the worker breaks down, and ends when told to', () => {
    const beat = vi.fn();
    const end = startPulse(100, beat);
    FakeWorker.last.onmessage?.();
    FakeWorker.last.onerror?.();
    vi.advanceTimersByTime(300);
    expect(beat).toHaveBeenCalledTimes(4);
    end();
    vi.advanceTimersByTime(300);
    expect(beat).toHaveBeenCalledTimes(4);
  });

  it('beats where no worker can be had', () => {
    vi.stubGlobal('Worker', undefined);
    const beat = vi.fn();
    const end = startPulse(100, beat);
    vi.advanceTimersByTime(300);
    end();
    vi.advanceTimersByTime(300);
    expect(beat).toHaveBeenCalledTimes(3);
  });
});
