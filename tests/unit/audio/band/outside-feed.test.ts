import { describe, expect, it } from 'vitest';
import { createOutsideFeed } from '../../../../src/audio/band/outside-feed';
import { createTransport } from '../../../../src/audio/transport/rolling-transport';
import type { OutsideEvent, OutsideNote, OutsidePulse } from '../../../../src/core/midi/outside-event';
import { asBpm } from '../../../../src/core/theory/units';
import { plainProgram, plainSections } from '../../../helpers/plain-sections';

/** The loudspeaker is so much behind the audio clock, and the page's clock began earlier. */
const BEHIND = 0.05;
const PAGE = 5000;

/** Choruses of two bars. */
const PROGRAM = plainProgram(2, 100);

const rig = () => {
  let now = 0;
  const told: OutsideEvent[] = [];
  const feed = createOutsideFeed({
    timeline: () => transport.timeline(),
    outputTime: () => now - BEHIND,
    pageTime: () => PAGE + now * 1000,
    tell: (events) => told.push(...events),
  });
  const transport = createTransport({ now: () => now, source: plainSections, sink: feed });
  const run = (seconds: number): void => {
    for (const end = now + seconds; now < end - 1e-9; now += 0.1) {
      transport.tick();
      feed.beat();
    }
  };
  /** Seconds of the audio clock an event was told for. */
  const timeOf = ({ at }: OutsideEvent): number => (at - PAGE) / 1000 - BEHIND;
  const pulses = (): readonly OutsidePulse[] => told.filter((each) => each.kind === 'pulse');
  const notes = (): readonly OutsideNote[] => told.filter((each) => each.kind !== 'pulse');
  return { transport, run, pulses, notes, told, timeOf };
};

describe('what is told to whoever plays along outside', () => {
  it('is a clock of 24 pulses a quarter, each once and in time, across sections', () => {
    const { transport, run, pulses, timeOf } = rig();
    transport.start(PROGRAM, 0, 0.1);
    run(12);
    const times = pulses().map(timeOf);
    const gaps = times.slice(1).map((time, i) => time - (times[i] ?? 0));
    const { tempo } = PROGRAM;
    for (const gap of gaps) expect(gap).toBeCloseTo(60 / tempo / 24, 6);
    expect(times[0]).toBeCloseTo(0.1, 6);
    expect(new Set(pulses().map(({ section }) => section.index)).size).toBeGreaterThan(1);
    expect(times.at(-1)).toBeGreaterThan(11.9);
  });

  it('is every note once, begun and ended, a little before it leaves the loudspeaker', () => {
    const { transport, run, notes, timeOf, told } = rig();
    transport.start(PROGRAM, 0, 0.1);
    let checked = 0;
    for (let i = 0; i < 60; i += 1) {
      const seen = told.length;
      run(0.1);
      for (const event of told.slice(seen)) {
        checked += 1;
        expect(timeOf(event)).toBeGreaterThan((i - 1) / 10 - BEHIND);
      }
    }
    expect(checked).toBeGreaterThan(20);
    const held = new Set<string>();
    for (const { kind, part, pitch } of notes()) {
      const key = `${part} ${pitch}`;
      expect(held.has(key)).toBe(kind === 'off');
      if (kind === 'on') held.add(key);
      else held.delete(key);
    }
    const times = told.map(({ at }) => at);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });

  it('lets notes end where the band is cut, and does not strike again what goes on', () => {
    const { transport, run, notes, timeOf } = rig();
    transport.start(PROGRAM, 0, 0.1);
    run(4);
    transport.change({ ...PROGRAM, tempo: asBpm(60) });
    run(4);
    transport.stop();
    run(0.3);
    const held = new Map<string, number>();
    for (const event of notes()) {
      const key = `${event.part} ${event.pitch}`;
      expect(held.has(key)).toBe(event.kind === 'off');
      if (event.kind === 'on') held.set(key, timeOf(event));
      else held.delete(key);
    }
    expect([...held]).toEqual([]);
  });

  it('says each pulse once where the band was cut', () => {
    const { transport, run, pulses, timeOf } = rig();
    transport.start(PROGRAM, 0, 0.1);
    run(3);
    transport.refill();
    run(3);
    const times = pulses().map(timeOf);
    const gaps = times.slice(1).map((time, i) => time - (times[i] ?? 0));
    for (const gap of gaps) expect(gap).toBeCloseTo(60 / PROGRAM.tempo / 24, 6);
  });
});
