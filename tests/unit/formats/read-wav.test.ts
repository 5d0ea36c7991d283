import { describe, expect, it } from 'vitest';
import { monoOf, readWav } from '../../../src/core/formats/read-wav';
import { encodePcm, wavHeader } from '../../../src/core/formats/wav';
import { type WavKind, wavFile } from '../../helpers/hearing/wav-file';

const LEFT = [0, 0.5, -0.5, 1, -1, 0.123];
const RIGHT = [0, -0.25, 0.25, 0.5, 0.75, -0.321];

const soundOf = (bytes: Uint8Array) => {
  const reading = readWav(bytes);
  if (reading.kind === 'wrong') throw new Error(reading.why);
  return reading.sound;
};
const problemOf = (bytes: Uint8Array): string => {
  const reading = readWav(bytes);
  return reading.kind === 'wrong' ? reading.why : 'it was read';
};

describe('reading WAV files', () => {
  it.each<WavKind>([
    { code: 1, bits: 16, sampleRate: 44100 },
    { code: 1, bits: 24, sampleRate: 48000 },
    { code: 1, bits: 24, sampleRate: 48000, extensible: true },
    { code: 1, bits: 32, sampleRate: 44100 },
    { code: 3, bits: 32, sampleRate: 48000 },
    { code: 3, bits: 32, sampleRate: 48000, extensible: true },
  ])('gives back the samples of %j', (kind) => {
    const sound = soundOf(wavFile([LEFT, RIGHT], kind));
    expect(sound.sampleRate).toBe(kind.sampleRate);
    expect(sound.channels).toHaveLength(2);
    LEFT.forEach((value, i) => {
      expect(sound.channels[0][i]).toBeCloseTo(value, 4);
      expect(sound.channels[1][i]).toBeCloseTo(RIGHT[i], 4);
      expect(monoOf(sound)[i]).toBeCloseTo((value + RIGHT[i]) / 2, 4);
    });
  });

  it('reads what the project writes', () => {
    const format = { sampleRate: 44100, channels: 1, bits: 24 } as const;
    const samples = Float32Array.from(LEFT);
    const bytes = Buffer.concat([wavHeader(format, samples.length), encodePcm([samples], 24)]);
    expect(soundOf(bytes).channels[0][5]).toBeCloseTo(0.123, 6);
  });

  it('keeps what there is of a file that was cut short', () => {
    const whole = wavFile([LEFT], { code: 1, bits: 16, sampleRate: 44100 });
    expect(soundOf(whole.subarray(0, whole.length - 3)).channels[0]).toHaveLength(LEFT.length - 2);
  });

  it('takes samples that are no numbers for silence', () => {
    const bytes = wavFile([[Number.NaN, 0.5]], { code: 3, bits: 32, sampleRate: 48000 });
    expect([...soundOf(bytes).channels[0]]).toEqual([0, 0.5]);
  });

  it('says what is wrong with every other file', () => {
    const file = wavFile([LEFT], { code: 1, bits: 16, sampleRate: 44100 });
    const changed = (at: number, value: number): Buffer => {
      const copy = Buffer.from(file);
      copy[at] = value;
      return copy;
    };
    expect(problemOf(new Uint8Array(0))).toBe('it is not a WAV file');
    expect(problemOf(Buffer.from('a letter, not a recording'))).toBe('it is not a WAV file');
    expect(problemOf(file.subarray(0, 12))).toContain('no "fmt " chunk');
    expect(problemOf(file.subarray(0, 36))).toContain('no "data" chunk');
    expect(problemOf(changed(20, 2))).toContain('format 2');
    expect(problemOf(changed(34, 8))).toContain('8 bits');
    expect(problemOf(changed(22, 0))).toContain('no channel');
    expect(problemOf(changed(23, 255))).toContain('65281 channels');
    expect(problemOf(changed(26, 255))).toContain('16755780 samples a second');
    expect(problemOf(changed(25, 0))).toContain('68 samples a second');
  });

  it('does not look at millions of empty chunks', () => {
    const zeros = new Uint8Array(16_000);
    zeros.set([...'RIFF0000WAVE'].map((letter) => letter.charCodeAt(0)));
    const tail = Buffer.from(wavFile([LEFT], { code: 1, bits: 16, sampleRate: 44100 })).subarray(12);
    expect(problemOf(Buffer.concat([zeros, tail]))).toContain('no "fmt " chunk');
  });

  it('never fails, whatever the bytes', () => {
    const file = wavFile([LEFT, RIGHT], { code: 1, bits: 24, sampleRate: 48000 });
    for (let i = 0; i < 600; i += 1) {
      const bytes = Buffer.from(file.subarray(0, (i * 7) % file.length));
      if (bytes.length > 4) bytes[(i * 13) % bytes.length] = i % 256;
      expect(['sound', 'wrong']).toContain(readWav(bytes).kind);
    }
  });
});
