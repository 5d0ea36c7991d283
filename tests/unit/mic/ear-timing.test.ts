import { expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { lagOf } from '../../../src/core/hearing/calibration';
import { CHIRPS_AT, chirp, findRoundTrip } from '../../../src/core/hearing/round-trip';
import { asPitchClass } from '../../../src/core/theory/units';
import { createEarServer } from '../../../src/mic/ear-server';
import { clickSound } from '../../../src/mic/send-sound';

/** Samples a second: half of what browsers give, for a test that does not take long. */
const RATE = 24_000;
/** What leaves the page comes back after so many seconds: a loudspeaker, a desk of air, two buffers. */
const WAY = 0.142;
/** A block of the worklet, and where on the audio clock the stream begins. */
const BLOCK = 128;
const BEGUN = 2;

/** C5 as a reed of some harmonics that rises for 25 ms. */
const reed = (seconds: number): Float32Array =>
  Float32Array.from({ length: seconds * RATE }, (_, i) => {
    const time = i / RATE;
    const level = 0.15 * Math.min(1, time / 0.025, (seconds - time) / 0.02);
    const harmonics = [1, 2, 3, 4, 5, 6, 7, 8];
    return harmonics.reduce((sum, k) => sum + (level / k) * Math.sin(2 * Math.PI * 523.25 * k * time), 0);
  });

const add = (to: Float32Array, at: number, sound: Float32Array): void => {
  const from = Math.round(at * RATE);
  sound.forEach((value, i) => {
    to[from + i] += value;
  });
};

it('finds the way by chirps, and places notes within 15 ms once the player has played along with clicks', () => {
  const clicks = [2.6, 3, 3.43, 3.82, 4.25, 4.63];
  const note = reed(0.2);
  const heard = new Float32Array(5.1 * RATE);
  const sent = new Float32Array(5.1 * RATE);
  for (const at of CHIRPS_AT) {
    add(sent, at, chirp(RATE));
    add(heard, at + WAY, chirp(RATE));
  }
  for (const at of clicks) {
    add(sent, at, clickSound(RATE));
    add(heard, at + WAY, clickSound(RATE));
    add(heard, at + WAY, note);
  }
  const upTo = 2.5 * RATE;
  const way = findRoundTrip(sent.subarray(0, upTo), heard.subarray(0, upTo), RATE);
  expect(way?.seconds).toBeCloseTo(WAY, 4);

  const onsets: number[] = [];
  const server = createEarServer(RATE, ({ notes }) => {
    for (const note of notes) if (note.to === null) onsets.push(note.from - BEGUN);
  });
  server.choose({ harp: buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 }) });
  // What is played along is all that the ear has to hear.
  for (let i = upTo; i + BLOCK <= heard.length; i += BLOCK) {
    server.take({
      at: BEGUN * RATE + i,
      heard: heard.slice(i, i + BLOCK),
      sent: sent.slice(i, i + BLOCK),
    });
  }
  const lag = lagOf(clicks.slice(0, 4), onsets);
  expect(Math.abs((lag ?? 0) - WAY)).toBeLessThan(0.02);
  const errors = clicks
    .slice(4)
    .map((click) => Math.min(...onsets.map((at) => Math.abs(at - (lag ?? 0) - click))));
  expect(Math.max(...errors)).toBeLessThanOrEqual(0.015);
});
