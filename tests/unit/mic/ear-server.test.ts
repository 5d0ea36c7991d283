import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';
import { createEarServer } from '../../../src/mic/ear-server';
import type { HeardReport } from '../../../src/mic/microphone';
import { harpSamples } from '../../helpers/harp-recording';

const RATE = 48_000;
const BLOCK = 256;
const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });

/** Serves a recording as if the audio clock had run for so many frames before. */
const serve = (samples: Float32Array, from: number): readonly HeardReport[] => {
  const reports: HeardReport[] = [];
  const server = createEarServer(RATE, (report) => reports.push(report));
  server.choose({ harp });
  for (let at = 0; at + BLOCK <= samples.length; at += BLOCK) {
    server.take({ at: from + at, heard: samples.subarray(at, at + BLOCK), sent: new Float32Array(BLOCK) });
  }
  return reports;
};

describe('the ear in its worker', () => {
  const samples = harpSamples([{ midi: 74, from: 0.3, to: 0.8 }], 1);
  const reports = serve(samples, 10 * RATE);
  const notes = reports.flatMap((report) => report.notes);

  it('tells a note when it has begun and when it has ended, in seconds of the audio clock', () => {
    expect(notes.map(({ id, to, sound }) => [id, to === null, sound && soundId(sound)])).toEqual([
      [notes[0]?.id, true, '4D'],
      [notes[0]?.id, false, '4D'],
    ]);
    expect(notes[1]?.from).toBeCloseTo(10.3, 1);
    expect(notes[1]?.to).toBeCloseTo(10.8, 1);
  });

  it('tells of the beginning at once', () => {
    const first = reports.find((report) => report.notes.length > 0);
    expect((first?.frames.at(-1)?.known ?? 99) - 10.3).toBeLessThan(0.1);
  });

  it('tells frames some thirty times a second and levels ten times, and says once that it began', () => {
    expect(reports.length).toBeGreaterThan(25);
    expect(reports.length).toBeLessThan(40);
    expect(reports.filter(({ level }) => level !== null)).toHaveLength(9);
    expect(reports.flatMap(({ begun }) => begun ?? [])).toEqual([10]);
  });

  it('measures levels against full scale', () => {
    const sine = Float32Array.from(
      { length: RATE / 4 },
      (_, i) => 0.5 * Math.sin((2 * Math.PI * 440 * i) / RATE),
    );
    const level = serve(sine, 0).flatMap((report) => report.level ?? [])[0];
    // A sine of half the full scale: −6.02 dB at its peak, −9.03 dB in the mean.
    expect(level?.peak).toBeCloseTo(-6.02, 1);
    expect(level?.mean).toBeCloseTo(-9.03, 1);
    expect(level?.sent).toBe(-120);
  });
});
