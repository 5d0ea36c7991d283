/** WAV files byte by byte, apart from the project's own writer. */

export interface WavKind {
  /** 1 for whole numbers, 3 for floats. */
  readonly code: 1 | 3;
  readonly bits: 16 | 24 | 32;
  readonly sampleRate: number;
  /** With the longer header that multichannel and 24-bit recorders write. */
  readonly extensible?: boolean;
}

/** The bytes of a file with these channels, −1 to 1, and a chunk before the samples as recorders leave. */
export const wavFile = (
  channels: readonly ArrayLike<number>[],
  { code, bits, sampleRate, extensible = false }: WavKind,
): Buffer => {
  const frames = channels[0].length;
  const block = (channels.length * bits) / 8;
  const format = Buffer.alloc(extensible ? 40 : 16);
  format.writeUInt16LE(extensible ? 0xfffe : code, 0);
  format.writeUInt16LE(channels.length, 2);
  format.writeUInt32LE(sampleRate, 4);
  format.writeUInt32LE(sampleRate * block, 8);
  format.writeUInt16LE(block, 12);
  format.writeUInt16LE(bits, 14);
  if (extensible) {
    format.writeUInt16LE(22, 16);
    format.writeUInt16LE(bits, 18);
    format.writeUInt16LE(code, 24);
    Buffer.from('000000001000800000aa00389b71', 'hex').copy(format, 26);
  }
  const data = Buffer.alloc(frames * block);
  for (let i = 0; i < frames; i += 1) {
    channels.forEach((samples, channel) => {
      const at = i * block + (channel * bits) / 8;
      if (code === 3) data.writeFloatLE(samples[i], at);
      else data.writeIntLE(Math.round(samples[i] * (2 ** (bits - 1) - 1)), at, bits / 8);
    });
  }
  const chunk = (name: string, body: Buffer): Buffer => {
    const head = Buffer.alloc(8);
    head.write(name, 'latin1');
    head.writeUInt32LE(body.length, 4);
    return Buffer.concat([head, body, Buffer.alloc(body.length % 2)]);
  };
  const rest = Buffer.concat([
    Buffer.from('WAVE'),
    chunk('fmt ', format),
    chunk('LIST', Buffer.from('odd')),
    chunk('data', data),
  ]);
  return Buffer.concat([chunk('RIFF', rest)]);
};

/** A tone of a few harmonics that rises and falls within 10 ms, from one second to another. */
export interface PlainTone {
  readonly from: number;
  readonly to: number;
  readonly hz: number;
}

/** Tones after each other, with faint noise between. */
export const plainTones = (
  tones: readonly PlainTone[],
  seconds: number,
  sampleRate: number,
): Float64Array => {
  const out = Float64Array.from(
    { length: Math.round(seconds * sampleRate) },
    (_, i) => 1e-4 * Math.sin(i * i),
  );
  for (const { from, to, hz } of tones) {
    for (let i = Math.round(from * sampleRate); i < to * sampleRate; i += 1) {
      const time = i / sampleRate;
      const edge = Math.min(1, (time - from) / 0.01, (to - time) / 0.01);
      const turn = 2 * Math.PI * hz * (time - from);
      out[i] += 0.2 * edge * (Math.sin(turn) + 0.6 * Math.sin(2 * turn) + 0.4 * Math.sin(3 * turn));
    }
  }
  return out;
};
