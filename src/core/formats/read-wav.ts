/** Reads RIFF/WAVE files ("Multimedia Programming Interface and Data Specifications 1.0", 1991, and its extensions). */

/** Samples of a file, −1 to 1, one array a channel. */
export interface WavSound {
  readonly sampleRate: number;
  readonly channels: readonly Float32Array[];
}

/** What was read, or a sentence that says what is wrong with the file. */
export type WavReading =
  | {
      readonly kind: 'sound';
      readonly sound: WavSound;
      /** Seconds that the file promises but does not hold, as where a copy was broken off. */
      readonly missing: number;
    }
  | { readonly kind: 'wrong'; readonly why: string };

const INTEGER = 1;
const FLOAT = 3;
/** The format is then the first two bytes of a longer name. */
const EXTENSIBLE = 0xfffe;

interface Chunk {
  readonly name: string;
  readonly from: number;
  readonly length: number;
  /** Bytes it promises beyond. */
  readonly missing: number;
}

/** Samples a second that recordings have, and that browsers resample. */
const RATES = { least: 8000, most: 192_000 } as const;

/** From here on a length means that it was not known when the header was written, as of a stream. */
const UNKNOWN_LENGTH = 0x7ffff000;

interface Format {
  readonly code: number;
  readonly channels: number;
  readonly sampleRate: number;
  readonly bits: number;
}

const wrong = (why: string): WavReading => ({ kind: 'wrong', why });

const nameAt = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));

/** More chunks, and more channels, than any recording has: a damaged file may hold millions of empty ones. */
const MOST = { chunks: 1000, channels: 64 } as const;

/** Chunks after the file's own header; the last may be cut short, as where a recorder was stopped hard. */
const chunksOf = (view: DataView): readonly Chunk[] => {
  const chunks: Chunk[] = [];
  for (let at = 12; at + 8 <= view.byteLength && chunks.length < MOST.chunks; ) {
    const told = view.getUint32(at + 4, true);
    const length = Math.min(told, view.byteLength - at - 8);
    const missing = told < UNKNOWN_LENGTH ? told - length : 0;
    chunks.push({ name: nameAt(view, at), from: at + 8, length, missing });
    at += 8 + told + (told % 2);
  }
  return chunks;
};

const formatOf = (view: DataView, { from, length }: Chunk): Format | null => {
  if (length < 16) return null;
  const code = view.getUint16(from, true);
  return {
    code: code === EXTENSIBLE && length >= 26 ? view.getUint16(from + 24, true) : code,
    channels: view.getUint16(from + 2, true),
    sampleRate: view.getUint32(from + 4, true),
    bits: view.getUint16(from + 14, true),
  };
};

type ReadSample = (view: DataView, at: number) => number;

const finite = (value: number): number => (Number.isFinite(value) ? value : 0);

/** How a sample is read, by kind and bits. What is no number counts as silence. */
const READERS: Readonly<Record<string, ReadSample>> = {
  '1/16': (view, at) => view.getInt16(at, true) / 2 ** 15,
  '1/24': (view, at) => (view.getInt8(at + 2) * 2 ** 16 + view.getUint16(at, true)) / 2 ** 23,
  '1/32': (view, at) => view.getInt32(at, true) / 2 ** 31,
  '3/32': (view, at) => finite(view.getFloat32(at, true)),
};

const formatProblem = ({ code, channels, sampleRate }: Format): string | null => {
  if (code !== INTEGER && code !== FLOAT)
    return `its samples are packed in a way that is not read here (format ${code}); save it as plain PCM`;
  if (channels < 1) return 'it has no channel';
  if (channels > MOST.channels)
    return `it has ${channels} channels, more than any recording; its beginning is damaged`;
  return sampleRate < RATES.least || sampleRate > RATES.most
    ? `it says that it has ${sampleRate} samples a second; recordings have ${RATES.least} to ${RATES.most}`
    : null;
};

const readSamples = (view: DataView, format: Format, data: Chunk, read: ReadSample): WavSound => {
  const bytes = format.bits / 8;
  const frame = bytes * format.channels;
  const frames = Math.floor(data.length / frame);
  const channels = Array.from({ length: format.channels }, (_, channel) =>
    Float32Array.from({ length: frames }, (_, i) => read(view, data.from + i * frame + channel * bytes)),
  );
  return { sampleRate: format.sampleRate, channels };
};

/**
 * Reads integer samples of 16, 24 and 32 bits and 32-bit floats, up to 64 channels, at the rates
 * that recordings have. Total: whatever
 * the bytes are, it returns the sound or what is wrong, worded to follow "The file cannot be used: ".
 */
export const readWav = (bytes: Uint8Array): WavReading => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.byteLength < 12 || nameAt(view, 0) !== 'RIFF' || nameAt(view, 8) !== 'WAVE')
    return wrong('it is not a WAV file');
  const chunks = chunksOf(view);
  const about = chunks.find(({ name }) => name === 'fmt ');
  const data = chunks.find(({ name }) => name === 'data');
  const format = about === undefined ? null : formatOf(view, about);
  if (format === null) return wrong('it does not say what its samples are (no "fmt " chunk)');
  const problem = formatProblem(format);
  if (problem !== null) return wrong(problem);
  const read = READERS[`${format.code}/${format.bits}`];
  if (read === undefined)
    return wrong(
      `its samples have ${format.bits} bits; 16, 24 and 32 bits are read, or 32-bit floating point`,
    );
  if (data === undefined) return wrong('it holds no samples (no "data" chunk)');
  const missing = data.missing / ((format.bits / 8) * format.channels * format.sampleRate);
  return { kind: 'sound', sound: readSamples(view, format, data, read), missing };
};

/** All channels as one, their mean. */
export const monoOf = ({ channels }: WavSound): Float32Array => {
  const [first, ...rest] = channels;
  if (first === undefined) return new Float32Array(0);
  if (rest.length === 0) return first;
  return first.map(
    (value, i) => rest.reduce((sum, channel) => sum + (channel[i] ?? 0), value) / channels.length,
  );
};
