import { describe, expect, it } from 'vitest';
import { type ClockReading, createOutputClock } from '../../../../src/audio/transport/output-clock';

const steady: ClockReading = {
  running: true,
  currentTime: 10,
  output: { contextTime: 9.9, performanceTime: 5000 },
  latency: 0.05,
  now: 5000,
};

const clockOver = (first: ClockReading) => {
  let reading = first;
  const clock = createOutputClock(() => reading);
  return { clock, set: (changes: Partial<ClockReading>) => (reading = { ...reading, ...changes }) };
};

describe('heard time', () => {
  it.each<[string, Partial<ClockReading>, number]>([
    ['is the output timestamp', {}, 9.9],
    ['is carried on by the page clock', { now: 5040 }, 9.94],
    ['is not carried on beyond a quarter second, nor past the clock', { now: 9000, currentTime: 12 }, 10.15],
    ['falls back on the latency without a timestamp', { output: null }, 9.95],
    [
      'falls back on the latency for a timestamp of zeros',
      { output: { contextTime: 0, performanceTime: 0 } },
      9.95,
    ],
    [
      'falls back on the latency for a timestamp ahead of the clock',
      { output: { contextTime: 11, performanceTime: 5000 } },
      9.95,
    ],
    [
      'falls back on the latency for one long behind',
      { output: { contextTime: 2, performanceTime: 5000 } },
      9.95,
    ],
  ])('%s', (_, changes, time) => {
    expect(clockOver({ ...steady, ...changes }).clock.time()).toBeCloseTo(time, 9);
  });

  it('is smooth while the clock moves in steps', () => {
    const { clock, set } = clockOver(steady);
    const times = Array.from({ length: 20 }, (_, frame) => {
      set({ now: 5000 + frame * 16, currentTime: 10 + Math.floor((frame * 16) / 20) * 0.02 });
      return clock.time();
    });
    for (const [index, time] of times.slice(1, 15).entries())
      expect(time - times[index]).toBeCloseTo(0.016, 6);
  });

  it('never runs backwards', () => {
    const { clock, set } = clockOver({ ...steady, now: 5050 });
    expect(clock.time()).toBeCloseTo(9.95, 9);
    set({ now: 5051, output: { contextTime: 9.93, performanceTime: 5051 } });
    expect(clock.time()).toBeCloseTo(9.95, 9);
  });

  it('stands while the context does', () => {
    const { clock, set } = clockOver(steady);
    clock.time();
    set({ running: false, now: 5100, currentTime: 10.05 });
    expect(clock.time()).toBeCloseTo(9.9, 9);
  });

  it('may step back after a resync', () => {
    const { clock, set } = clockOver(steady);
    clock.time();
    clock.resync();
    set({ currentTime: 1, output: { contextTime: 0.9, performanceTime: 5000 } });
    expect(clock.time()).toBeCloseTo(0.9, 9);
  });
});
