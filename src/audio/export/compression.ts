import type { AudioTags } from '../../core/formats/audio-tags';

/** A way to compress that a browser may have. */
export interface Encoding {
  readonly id: 'opus' | 'aac' | 'mp3';
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
  /** Writes over the first bytes of the file, no more than were written at first. */
  readonly rewriteStart: (bytes: Uint8Array) => Promise<void>;
}

/** A compressed file that grows. Every method rejects with the encoder's reason, or with that of `write` and `rewriteStart`. */
export interface CompressedFile {
  /** Both sides of equal length, −1 to 1, at the encoding's sample rate. */
  add(left: Float32Array, right: Float32Array): Promise<void>;
  end(): Promise<void>;
  /** Frees the encoder; idempotent. */
  close(): void;
}

/** What compresses audio: the browser’s own encoders, where it has any, and one that is brought along. */
export interface AudioCompressor {
  /** What can be made here; empty where it can do nothing. Never rejects. */
  offered(): Promise<readonly Encoding[]>;
  open(order: CompressionOrder): CompressedFile;
}
