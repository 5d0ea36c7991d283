/** Small audio files by the browser's own encoders (WebCodecs), each in the simplest container players read. */
import { type AudioTags, id3Tag, oggComments } from '../../core/formats/audio-tags';
import { createOggOpusWriter, type OggOpusWriter, OPUS_RATE } from '../../core/formats/ogg-opus';

/** A way to compress that a browser may have. */
export interface Encoding {
  readonly id: 'opus' | 'aac';
  readonly name: string;
  /** Of the file name, without the dot. */
  readonly extension: string;
  readonly mediaType: string;
  readonly sampleRate: number;
  /** Bits a second, about. */
  readonly bitrate: number;
}

export interface CompressionOrder {
  readonly encoding: Encoding;
  readonly tags: AudioTags;
  /** Any whole number; tells streams apart. */
  readonly serial: number;
  /** Takes the next bytes of the file. */
  readonly write: (bytes: Uint8Array) => Promise<void>;
}

/** A compressed file that grows. Every method rejects with the encoder's reason, or with that of `write`. */
export interface CompressedFile {
  /** Both sides of equal length, −1 to 1, at the encoding's sample rate. */
  add(left: Float32Array, right: Float32Array): Promise<void>;
  end(): Promise<void>;
  /** Frees the encoder; idempotent. */
  close(): void;
}

/** The browser’s own audio encoder, where it has one. */
export interface AudioCompressor {
  /** What this browser can encode; empty where it can do nothing. Never rejects. */
  offered(): Promise<readonly Encoding[]>;
  open(order: CompressionOrder): CompressedFile;
}

const CHANNELS = 2;

/** Usual rates of transparent music in stereo (common practice, no source). */
const ENCODINGS: readonly Encoding[] = [
  {
    id: 'opus',
    name: 'Opus in Ogg',
    extension: 'opus',
    mediaType: 'audio/ogg; codecs=opus',
    sampleRate: OPUS_RATE,
    bitrate: 128_000,
  },
  {
    id: 'aac',
    name: 'AAC',
    extension: 'aac',
    mediaType: 'audio/aac',
    sampleRate: 48000,
    bitrate: 160_000,
  },
];

const CODECS: Readonly<Record<Encoding['id'], Pick<AudioEncoderConfig, 'codec' | 'aac' | 'opus'>>> = {
  opus: { codec: 'opus', opus: { format: 'opus' } },
  aac: { codec: 'mp4a.40.2', aac: { format: 'adts' } },
};

const configOf = ({ id, sampleRate, bitrate }: Encoding): AudioEncoderConfig => ({
  ...CODECS[id],
  sampleRate,
  bitrate,
  numberOfChannels: CHANNELS,
});

const isSupported = async (encoding: Encoding): Promise<boolean> => {
  try {
    return (await AudioEncoder.isConfigSupported(configOf(encoding))).supported === true;
  } catch {
    // Browsers that do not know a field of the configuration say so by rejecting.
    return false;
  }
};

/** What a container makes of encoded pieces. */
interface Container {
  /** @param description what the encoder says of its stream, with the first piece only. */
  add(piece: Uint8Array, description: Uint8Array | null): readonly Uint8Array[];
  end(frames: number): readonly Uint8Array[];
}

/** Where an encoder does not say how late it is: the look-ahead of the usual one (6.5 ms), from memory. */
const USUAL_PRE_SKIP = 312;

/** The samples to skip, out of the identification header that encoders describe their stream with (RFC 7845, 5.1). */
const preSkipOf = (description: Uint8Array | null): number => {
  const named = description !== null && String.fromCharCode(...description.subarray(0, 8)) === 'OpusHead';
  return named ? (description[10] ?? 0) + 256 * (description[11] ?? 0) : USUAL_PRE_SKIP;
};

const oggContainer = (tags: AudioTags, serial: number): Container => {
  let writer: OggOpusWriter | null = null;
  const start = (description: Uint8Array | null) =>
    createOggOpusWriter({
      channels: CHANNELS,
      preSkip: preSkipOf(description),
      inputRate: OPUS_RATE,
      serial: serial >>> 0,
      comments: oggComments(tags),
    });
  return {
    add: (piece, description) => {
      if (writer !== null) return [writer.add(piece)];
      writer = start(description);
      return [writer.start(), writer.add(piece)];
    },
    end: (frames) => {
      if (writer !== null) return [writer.end(frames)];
      writer = start(null);
      return [writer.start(), writer.end(frames)];
    },
  };
};

/** ADTS (ISO/IEC 13818-7): frames that each carry their header, so a file is one after another, behind its tag. */
const adtsContainer = (tags: AudioTags): Container => {
  let begun = false;
  return {
    add: (piece) => {
      const synchronised = piece[0] === 0xff && ((piece[1] ?? 0) & 0xf0) === 0xf0;
      if (!synchronised) throw new Error('the AAC encoder gave frames without headers');
      const before = begun ? [] : [id3Tag(tags)];
      begun = true;
      return [...before, piece];
    },
    end: () => [],
  };
};

const bytesOf = (source: AllowSharedBufferSource): Uint8Array =>
  ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength)
    : new Uint8Array(source);

class BrowserEncoder implements CompressedFile {
  private readonly order: CompressionOrder;
  private readonly container: Container;
  private readonly encoder: AudioEncoder;
  private ready: Uint8Array[] = [];
  private frames = 0;
  private trouble: unknown = null;
  private wake: () => void = () => undefined;

  constructor(order: CompressionOrder) {
    this.order = order;
    this.container =
      order.encoding.id === 'opus' ? oggContainer(order.tags, order.serial) : adtsContainer(order.tags);
    this.encoder = new AudioEncoder({
      output: (chunk, metadata) => this.take(chunk, metadata?.decoderConfig?.description ?? null),
      error: (error) => {
        this.trouble ??= error;
        this.wake();
      },
    });
    this.encoder.addEventListener('dequeue', () => this.wake());
    this.encoder.configure(configOf(order.encoding));
  }

  async add(left: Float32Array, right: Float32Array): Promise<void> {
    if (left.length === 0) return;
    const { sampleRate } = this.order.encoding;
    const planes = new Float32Array(left.length * CHANNELS);
    planes.set(left);
    planes.set(right, left.length);
    const data = new AudioData({
      format: 'f32-planar',
      sampleRate,
      numberOfChannels: CHANNELS,
      numberOfFrames: left.length,
      timestamp: Math.round((this.frames / sampleRate) * 1e6),
      data: planes,
    });
    this.frames += left.length;
    try {
      this.encoder.encode(data);
    } finally {
      data.close();
    }
    await this.settle();
    await this.pass([]);
  }

  async end(): Promise<void> {
    await this.encoder.flush();
    this.close();
    await this.pass(this.container.end(this.frames));
  }

  close(): void {
    if (this.encoder.state !== 'closed') this.encoder.close();
    this.wake();
  }

  private take(chunk: EncodedAudioChunk, description: AllowSharedBufferSource | null): void {
    const piece = new Uint8Array(chunk.byteLength);
    chunk.copyTo(piece);
    try {
      this.ready.push(...this.container.add(piece, description && bytesOf(description)));
    } catch (error) {
      this.trouble ??= error;
    }
  }

  /** Waits until the encoder has taken what it was given, so that nothing piles up in it. */
  private async settle(): Promise<void> {
    while (this.encoder.encodeQueueSize > 0 && this.encoder.state === 'configured') {
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
  }

  private async pass(more: readonly Uint8Array[]): Promise<void> {
    if (this.trouble !== null) throw this.trouble;
    const pieces = [...this.ready, ...more];
    this.ready = [];
    const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const piece of pieces) {
      bytes.set(piece, at);
      at += piece.length;
    }
    if (bytes.length > 0) await this.order.write(bytes);
  }
}

/** The encoders of this browser. */
export const createAudioCompressor = (): AudioCompressor => ({
  offered: async () => {
    if (typeof AudioEncoder === 'undefined' || typeof AudioData === 'undefined') return [];
    const supported = await Promise.all(ENCODINGS.map(isSupported));
    return ENCODINGS.filter((_, index) => supported[index]);
  },
  open: (order) => new BrowserEncoder(order),
});
