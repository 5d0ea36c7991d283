import { describe, expect, it } from 'vitest';
import { createDoubler, createHalver, heardThroughHalfRate } from '../../../src/core/signal/half-rate';

const BLOCK = 128;
/** Turns a sample of the whole rate. */
const sine = (frequency: number, length: number): Float32Array =>
  Float32Array.from({ length }, (_, i) => Math.sin(2 * Math.PI * frequency * i));

const halved = (samples: Float32Array): Float32Array => {
  const halver = createHalver(BLOCK);
  const out = new Float32Array(samples.length / 2);
  for (let at = 0; at < samples.length; at += BLOCK)
    halver.process(samples.subarray(at, at + BLOCK), out.subarray(at / 2, (at + BLOCK) / 2));
  return out;
};

const doubled = (samples: Float32Array): Float32Array => {
  const doubler = createDoubler(BLOCK);
  const out = new Float32Array(samples.length * 2);
  for (let at = 0; at < samples.length; at += BLOCK)
    doubler.process(samples.subarray(at, at + BLOCK), out.subarray(2 * at, 2 * (at + BLOCK)));
  return out;
};

/** Level of the second half of samples in dB, where a full sine has 0. */
const levelOf = (samples: Float32Array): number => {
  const settled = samples.subarray(samples.length / 2);
  return 10 * Math.log10((2 * settled.reduce((sum, value) => sum + value * value, 0)) / settled.length);
};

/** Level of what a sine of another frequency leaves when it is taken out of the second half of samples, in dB. */
const besides = (samples: Float32Array, frequency: number): number => {
  const settled = samples.subarray(samples.length / 2);
  const [cosine, sinePart] = [Math.cos, Math.sin].map(
    (wave) =>
      (2 / settled.length) *
      settled.reduce((sum, value, i) => sum + value * wave(2 * Math.PI * frequency * i), 0),
  );
  return levelOf(
    Float32Array.from([
      ...samples.subarray(0, samples.length / 2),
      ...settled.map(
        (value, i) =>
          value -
          cosine * Math.cos(2 * Math.PI * frequency * i) -
          sinePart * Math.sin(2 * Math.PI * frequency * i),
      ),
    ]),
  );
};

describe('half the sample rate', () => {
  it.each([0.0078125, 0.0625, 0.125, 0.15625])('passes %f of the rate down as loud as it is', (frequency) => {
    expect(levelOf(halved(sine(frequency, 8192)))).toBeCloseTo(0, 2);
  });

  it.each([0.34375, 0.40625, 0.46875])('stops %f of the rate, which would be folded over', (frequency) => {
    expect(levelOf(halved(sine(frequency, 8192)))).toBeLessThan(-100);
  });

  it.each([0.015625, 0.125, 0.3125])('goes up without an image of %f of half the rate', (frequency) => {
    const up = doubled(sine(frequency, 4096));
    expect(levelOf(up)).toBeCloseTo(0, 2);
    expect(besides(up, frequency / 2)).toBeLessThan(-100);
  });

  it('says how a response is heard between down and up', () => {
    const response = sine(0.05, 300).map((value, i) => value * Math.exp(-i / 40));
    const heard = heardThroughHalfRate(response);
    // An impulse of the band that is passed: two samples would fold over.
    const samples = new Float32Array(2048).map((_, i) => Math.exp(-(((i - 400) / 6) ** 2)));
    const sent = halved(samples);
    const answered = new Float32Array(sent.length).map((_, at) =>
      response.reduce((sum, value, i) => sum + value * (sent[at - i] ?? 0), 0),
    );
    const got = doubled(answered);
    for (let at = 0; at < got.length; at += 7) {
      const wanted = heard.reduce((sum, value, i) => sum + value * (samples[at - i] ?? 0), 0);
      expect(Math.abs(got[at] - wanted)).toBeLessThan(1e-4);
    }
  });
});
