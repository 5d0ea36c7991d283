import { describe, expect, it } from 'vitest';
import { encodePcm, type WavFormat, wavEnd, wavHeader } from '../../../src/core/formats/wav';

const fieldsOf = (header: Uint8Array) => {
  const view = new DataView(header.buffer);
  const name = (at: number) => String.fromCharCode(...header.slice(at, at + 4));
  return {
    riff: name(0),
    size: view.getUint32(4, true),
    wave: name(8),
    fmt: name(12),
    fmtSize: view.getUint32(16, true),
    format: view.getUint16(20, true),
    channels: view.getUint16(22, true),
    rate: view.getUint32(24, true),
    byteRate: view.getUint32(28, true),
    blockAlign: view.getUint16(32, true),
    bits: view.getUint16(34, true),
    data: name(36),
    dataSize: view.getUint32(40, true),
  };
};

// "WAVE PCM soundfile format", Stanford CCRMA: offsets, names, 36 + data, rate × channels × bits / 8.
describe('WAVE PCM soundfile format, Stanford CCRMA', () => {
  it('describes ten seconds of 44.1 kHz stereo at 16 bits', () => {
    const header = wavHeader({ sampleRate: 44100, channels: 2, bits: 16 }, 441000);
    expect(header).toHaveLength(44);
    expect(fieldsOf(header)).toEqual({
      riff: 'RIFF',
      size: 1764036,
      wave: 'WAVE',
      fmt: 'fmt ',
      fmtSize: 16,
      format: 1,
      channels: 2,
      rate: 44100,
      byteRate: 176400,
      blockAlign: 4,
      bits: 16,
      data: 'data',
      dataSize: 1764000,
    });
  });

  it.each([
    [{ sampleRate: 48000, channels: 2, bits: 24 }, 288000, 6],
    [{ sampleRate: 48000, channels: 1, bits: 16 }, 96000, 2],
    [{ sampleRate: 44100, channels: 1, bits: 24 }, 132300, 3],
  ] as const)('gives %o a byte rate of %i and blocks of %i bytes', (format, byteRate, blockAlign) => {
    expect(fieldsOf(wavHeader(format, 100))).toMatchObject({
      byteRate,
      blockAlign,
      bits: format.bits,
      dataSize: 100 * blockAlign,
    });
  });

  // RIFF chunks are padded to even length; the pad is not counted in the chunk (from memory of the RIFF rule).
  it('pads an odd number of bytes, counting the pad in the file and not in the chunk', () => {
    const format: WavFormat = { sampleRate: 44100, channels: 1, bits: 24 };
    expect(fieldsOf(wavHeader(format, 3))).toMatchObject({ size: 36 + 10, dataSize: 9 });
    expect(wavEnd(format, 3)).toEqual(new Uint8Array(1));
    expect(wavEnd(format, 4)).toEqual(new Uint8Array(0));
  });

  // 16-bit samples are signed two's complement, little-endian, −32768 to 32767, left before right.
  it('interleaves signed little-endian samples', () => {
    const left = Float32Array.of(0, 0.5, -1);
    const right = Float32Array.of(1, -0.5, 2 ** -15);
    expect([...encodePcm([left, right], 16)]).toEqual([
      0x00, 0x00, 0xff, 0x7f, 0x00, 0x40, 0x00, 0xc0, 0x00, 0x80, 0x01, 0x00,
    ]);
    expect([...encodePcm([Float32Array.of(0.5, -1, 1, -(2 ** -23))], 24)]).toEqual([
      0x00, 0x00, 0x40, 0x00, 0x00, 0x80, 0xff, 0xff, 0x7f, 0xff, 0xff, 0xff,
    ]);
  });
});
