import { describe, expect, it } from 'vitest';
import { calibrateGate } from '../../../src/core/hearing/calibrate-gate';
import { createPitchTracker } from '../../../src/core/hearing/pitch-tracker';
import { createRandom } from '../../../src/core/theory/random';

const levels = (count: number, level: number): readonly number[] =>
  Array.from({ length: count }, () => level);
/** Levels after the first moments, in which the filters swing in. */
const levelsOf = (samples: Float32Array): readonly number[] =>
  createPitchTracker({ sampleRate: 24000 })
    .push(samples)
    .slice(20)
    .map(({ level }) => level);
const hum = (seconds: number, peak: number): Float32Array => {
  const random = createRandom(7);
  return Float32Array.from(
    { length: seconds * 24000 },
    (_, n) => peak * (Math.sin((2 * Math.PI * 400 * n) / 24000) + 0.3 * (random() - random())),
  );
};

describe('the gate', () => {
  it('stands just above the louder of room and leak', () => {
    expect(calibrateGate({ room: levels(200, -70), leak: levels(200, -58) })).toEqual({
      gate: -54,
      setBy: 'leak',
      loud: false,
    });
    expect(calibrateGate({ room: levels(200, -60), leak: [] })).toMatchObject({ gate: -56, setBy: 'room' });
  });

  it('is not moved by a cough', () => {
    const coughing = [...levels(195, -70), ...levels(5, -20)];
    expect(calibrateGate({ room: coughing, leak: [] }).gate).toBe(-66);
  });

  it('is a guess where too little was heard, or nothing that is a number', () => {
    expect(calibrateGate({ room: levels(10, -20), leak: [] }).setBy).toBe('guess');
    expect(calibrateGate({ room: levels(200, Number.NaN), leak: [] }).setBy).toBe('guess');
  });

  it('keeps to what a microphone and a harp leave room for, and says where it is loud', () => {
    expect(calibrateGate({ room: levels(200, -120), leak: [] })).toMatchObject({ gate: -75, loud: false });
    expect(calibrateGate({ room: levels(200, -10), leak: [] })).toMatchObject({ gate: -34, loud: true });
  });

  it('keeps a humming room silent and a harp heard', () => {
    const room = hum(2, 0.002);
    const { gate } = calibrateGate({ room: levelsOf(room), leak: [] });
    const voiced = (samples: Float32Array, options: { readonly gate?: number }): number =>
      createPitchTracker({ sampleRate: 24000, ...options })
        .push(samples)
        .filter(({ known, frequency }) => known > 0.2 && frequency > 0).length;
    expect(voiced(room, {})).toBeGreaterThan(300);
    expect(voiced(room, { gate })).toBe(0);
    expect(voiced(hum(2, 0.02), { gate })).toBeGreaterThan(300);
  });
});
