import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import { findLine, type LineSpec } from '../../../src/core/lines/lines';
import { leadNotes } from '../../../src/core/players/lead';
import { asPitchClass, asTicks } from '../../../src/core/theory/units';
import { anyFormChart } from '../../helpers/program-arbitraries';

const cHarp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const anySpec: fc.Arbitrary<LineSpec> = fc.record({
  chart: anyFormChart,
  harp: fc.constant(cHarp),
  technique: fc.constant(EVERY_TECHNIQUE),
  kind: fc.constantFrom(...(['guide tones', 'chord tones', 'arpeggio'] as const)),
  pace: fc.constantFrom(...([1, 2, 4] as const)),
  taste: fc.constantFrom(...(['gentle', 'even', 'bold'] as const)),
  seed: fc.constantFrom(0, 1, 77),
});

describe('the lead', () => {
  it('plays a line in order, without overlaps, as long as the line', () => {
    fc.assert(
      fc.property(anySpec, (spec) => {
        const line = findLine(spec);
        const events = leadNotes(line.notes);
        expect(events.map(({ at, pitch, part }) => [at, pitch, part])).toEqual(
          line.notes.map(({ at, sound }) => [at, sound.pitch, 'lead']),
        );
        events.forEach(({ at, length, velocity, glideTicks = 0 }, i) => {
          expect(length).toBeGreaterThan(0);
          expect(at + length).toBeLessThanOrEqual(events[i + 1]?.at ?? spec.chart.length);
          expect(glideTicks).toBeLessThanOrEqual(length);
          expect(velocity).toBeGreaterThanOrEqual(1);
          expect(velocity).toBeLessThanOrEqual(127);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('slides into a bend from its own reed and breathes at a turn', () => {
    const sounds = ['3D', "3D'", '4B'].flatMap(
      (id) => cHarp.sounds.find((sound) => soundId(sound) === id) ?? [],
    );
    const bars = sounds.map((sound, bar) => ({ at: asTicks(bar * 1920), length: asTicks(1920), sound }));
    const [first, bend, blow] = leadNotes(bars);
    expect(first).not.toHaveProperty('glideFrom');
    expect(bend).toMatchObject({ pitch: 70, glideFrom: 1, glideTicks: 120, length: 1880 });
    expect(blow).toMatchObject({ pitch: 72, length: 1920, velocity: 92 });
  });
});
