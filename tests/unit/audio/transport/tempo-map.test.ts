import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { secondsAt, tempoMapOf, ticksAt } from '../../../../src/audio/transport/tempo-map';
import { asBpm, asTicks } from '../../../../src/core/theory/units';
import { plainChart } from '../../../helpers/plain-sections';

const chart = plainChart(12);
type Steps = [at: number, bpm: number][];

const mapOf = (...steps: Steps) =>
  tempoMapOf({ chart, tempo: steps.map(([at, bpm]) => ({ at: asTicks(at), bpm: asBpm(bpm) })) });

describe('tempo map', () => {
  it.each([
    ['a beat at 120', [[0, 120]], 480, 0.5],
    ['a bar at 60', [[0, 60]], 1920, 4],
    [
      'across a step',
      [
        [0, 60],
        [1920, 120],
      ],
      3840,
      6,
    ],
    [
      'exactly on a step',
      [
        [0, 60],
        [1920, 120],
      ],
      1920,
      4,
    ],
    ['before the start', [[0, 120]], -480, -0.5],
  ] as [string, Steps, number, number][])('%s', (_, steps, ticks, seconds) => {
    const map = mapOf(...steps);
    expect(secondsAt(map, ticks)).toBeCloseTo(seconds, 9);
    expect(ticksAt(map, seconds)).toBeCloseTo(ticks, 6);
  });

  it('counts dotted quarters in 12/8', () => {
    const compound = { ...chart, meter: { name: '12/8' as const, beats: 4, beatTicks: asTicks(720) } };
    const map = tempoMapOf({ chart: compound, tempo: [{ at: asTicks(0), bpm: asBpm(60) }] });
    expect(secondsAt(map, 2880)).toBeCloseTo(4, 9);
  });

  it('converts there and back for any steps', () => {
    const steps = fc.array(fc.tuple(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 40, max: 280 })), {
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(steps, fc.integer({ min: -1000, max: 40000 }), (drawn, ticks) => {
        let at = 0;
        const map = mapOf(
          ...drawn.map(([gap, bpm], index): [number, number] => {
            at = index === 0 ? 0 : at + gap;
            return [at, bpm];
          }),
        );
        expect(ticksAt(map, secondsAt(map, ticks))).toBeCloseTo(ticks, 5);
      }),
    );
  });

  it.each([
    ['no steps', [], 'at least one tempo step'],
    ['a late start', [[480, 120]], 'start at 0'],
    [
      'steps that fall back',
      [
        [0, 120],
        [960, 90],
        [480, 100],
      ],
      'got 480 after 960',
    ],
  ] as [string, Steps, string][])('refuses %s', (_, steps, message) => {
    expect(() => mapOf(...steps)).toThrow(message);
  });
});
