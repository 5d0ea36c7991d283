import { describe, expect, it } from 'vitest';
import { createFileRoom } from '../../../../src/audio/export/file-room';
import { createLiveRoom, liveRoomAnswer } from '../../../../src/audio/mixer/live-room';
import { roomImpulse } from '../../../../src/audio/mixer/room';
import { createStereoConvolver } from '../../../../src/core/signal/stereo-convolver';
import { createRandom } from '../../../../src/core/theory/random';

const SHAPE = { sampleRate: 48_000, seed: 1, seconds: 0.42 };
const { atHalfRate, heard } = liveRoomAnswer(SHAPE);
const energy = (samples: Float32Array): number => samples.reduce((sum, value) => sum + value * value, 0);

const answered = (samples: Float32Array, block: number) => {
  const room = createLiveRoom(atHalfRate, block);
  const [left, right] = [new Float32Array(samples.length), new Float32Array(samples.length)];
  for (let at = 0; at < samples.length; at += block) {
    const to = at + block;
    room.process(samples.subarray(at, to), left.subarray(at, to), right.subarray(at, to));
  }
  return [left, right] as const;
};

describe('the room on the audio thread', () => {
  const apart = (one: readonly Float32Array[], other: readonly Float32Array[]): number =>
    Math.max(
      ...one.map((samples, side) => {
        const left = energy(samples.map((value, i) => value - other[side][i]));
        return 10 * Math.log10(left / energy(samples));
      }),
    );
  const empty = (length: number) => [new Float32Array(length), new Float32Array(length)] as const;

  it.each([128, 256])('is the room of files to −120 dB, in blocks of %i', (block) => {
    const random = createRandom(3);
    const samples = Float32Array.from({ length: 24 * 1024 }, () => 2 * random() - 1);
    const live = answered(samples, block);
    const file = empty(samples.length);
    createFileRoom(atHalfRate).addTo(file, samples);
    expect(apart(live, file)).toBeLessThan(-120);
    const said = empty(samples.length);
    createStereoConvolver([heard.left, heard.right]).process(samples, said);
    expect(apart(live, said)).toBeLessThan(-100);
  });

  it('has energy 1 on each side, and answers as early as the room does', () => {
    const whole = roomImpulse(SHAPE);
    const first = (samples: Float32Array): number => {
      const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      return samples.findIndex((value) => Math.abs(value) > peak / 10);
    };
    for (const side of ['left', 'right'] as const) {
      expect(energy(heard[side])).toBeCloseTo(1, 5);
      expect(Math.abs(first(heard[side]) - first(whole[side])) / 48).toBeLessThan(0.5);
    }
  });

  it('is silent after it has rung out, and answers again', () => {
    const samples = new Float32Array(48 * 1024);
    samples[0] = 1;
    samples[40 * 1024] = 1;
    const [left] = answered(samples, 256);
    expect(energy(left.subarray(0, 1024))).toBeGreaterThan(0.05);
    expect(energy(left.subarray(32 * 1024, 40 * 1024))).toBe(0);
    const again = left.slice(40 * 1024, 44 * 1024).map((value, i) => value - left[i]);
    expect(Math.max(...again.map(Math.abs))).toBeLessThan(1e-6);
  });
});
