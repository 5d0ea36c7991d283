/**
 * Small audio files, each in the simplest container players read: by the browser's own encoders (WebCodecs), and as MP3
 * by one that is brought along.
 */
import { type AudioTags, id3Tag, oggComments } from '../../core/formats/audio-tags';
import { createOggOpusWriter, type OggOpusWriter, OPUS_RATE } from '../../core/formats/ogg-opus';
import type { AudioCompressor, CompressedFile, CompressionOrder, Encoding } from './compression';
import { MP3_ENCODING, type Mp3Ground, openMp3, workerGround } from './mp3-file';

const CHANNELS = 2;

/** What browsers may encode themselves. */
type OwnEncoding = Encoding & { readonly id: Exclude<Encoding['id'], 'mp3'> };
type OwnOrder = CompressionOrder & { readonly encoding: OwnEncoding };

/** Usual rates of transparent music in stereo (common practice, no source). */
const ENCODINGS: readonly OwnEncoding[] = [
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

const CODECS: Readonly<Record<OwnEncoding['id'], Pick<AudioEncoderConfig, 'codec' | 'aac' | 'opus'>>> = {
  opus: { codec: 'opus', opus: { format: 'opus' } },
  aac: { codec: 'mp4a.40.2', aac: { format: 'adts' } },
};

const configOf = ({ id, sampleRate, bitrate }: OwnEncoding): AudioEncoderConfig => ({
  ...CODECS[id],
  sampleRate,
  bitrate,
  numberOfChannels: CHANNELS,
});

const isSupported = async (encoding: OwnEncoding): Promise<boolean> => {
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
  private readonly order: OwnOrder;
  private readonly container: Container;
  private readonly encoder: AudioEncoder;
  private ready: Uint8Array[] = [];
  private frames = 0;
  private trouble: unknown = null;
  private wake: () => void = () => undefined;

  constructor(order: OwnOrder) {
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

const offeredByBrowser = async (): Promise<readonly Encoding[]> => {
  if (typeof AudioEncoder === 'undefined' || typeof AudioData === 'undefined') return [];
  const supported = await Promise.all(ENCODINGS.map(isSupported));
  return ENCODINGS.filter((_, index) => supported[index]);
};

const isOwn = (order: CompressionOrder): order is OwnOrder => order.encoding.id !== 'mp3';

/** The encoders of this browser, and the one that is brought along where it can run. */
export const createAudioCompressor = (mp3: Mp3Ground = workerGround): AudioCompressor => ({
  offered: async () => [...(await offeredByBrowser()), ...(mp3.canRun() ? [MP3_ENCODING] : [])],
  open: (order) => (isOwn(order) ? new BrowserEncoder(order) : openMp3(order, mp3)),
});
