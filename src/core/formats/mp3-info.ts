/**
 * The first frame of an MP3 file of constant bit rate: it holds no sound but says how long the file is and how many
 * samples the encoder put before and behind the music, so that players show the right length and leave them out.
 * Layout: ISO/IEC 11172-3, 2.4.1 (frame), and the info tag of LAME, revision 1 (encoder, delays, checksum).
 */

/** What is said of a file: MPEG-1 layer III in stereo at 48 kHz and 192 kbit/s, the one kind that is made here. */
export interface Mp3Length {
  /** Bytes of all frames with sound. */
  readonly bytes: number;
  /** Samples of music a channel. */
  readonly samples: number;
}

/** Samples of a frame (ISO/IEC 11172-3, 2.4.2.1). */
const FRAME_SAMPLES = 1152;
/** 144 × 192 000 / 48 000 (ISO/IEC 11172-3, 2.4.3.1): at this rate every frame is as long as every other. */
export const MP3_FRAME_BYTES = 576;
/** MPEG-1, layer III, no checksum; 192 kbit/s, 48 kHz; joint stereo (ISO/IEC 11172-3, 2.4.2.3). */
const HEADER = [0xff, 0xfb, 0xb4, 0x44];
/** Header and side information of stereo (ISO/IEC 11172-3, 2.4.1.7); the tag stands behind it. */
const TAG_AT = 36;
/** Samples the encoder puts before the music (`ENCDELAY` of LAME 3.100). */
const ENCODER_DELAY = 576;
/** Frames, bytes, places and quality are all given. */
const ALL_FIELDS = 15;
const PLACES = 100;
/** Where the fields of the encoder begin, and where their checksum stands, from the beginning of the frame. */
const ENCODER_AT = 156;
const CHECKSUM_AT = 190;
/** Players look for this name before they believe the delays: it is the encoder that is brought along. */
const ENCODER = 'LAME3.100';
/** Revision 1 of the tag in the upper half, constant bit rate in the lower. */
const REVISION_AND_METHOD = 0x11;

/** CRC-16 (x^16 + x^15 + x^2 + 1, lowest bit first, from 0), as the tag has it. */
const checksum = (bytes: Uint8Array): number => {
  let sum = 0;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xa001 : sum >>> 1;
  }
  return sum;
};

/** The frame; `null` as long as the length is not known gives one of the same size that says nothing. */
export const mp3InfoFrame = (length: Mp3Length | null): Uint8Array => {
  const frame = new Uint8Array(MP3_FRAME_BYTES);
  frame.set(HEADER);
  if (length === null) return frame;
  const view = new DataView(frame.buffer);
  const text = (at: number, letters: string): void =>
    frame.set(
      Array.from(letters, (letter) => letter.charCodeAt(0)),
      at,
    );
  const frames = Math.round(length.bytes / MP3_FRAME_BYTES);
  const padding = Math.max(0, Math.min(0xfff, frames * FRAME_SAMPLES - ENCODER_DELAY - length.samples));
  text(TAG_AT, 'Info');
  view.setUint32(TAG_AT + 4, ALL_FIELDS);
  view.setUint32(TAG_AT + 8, frames);
  view.setUint32(TAG_AT + 12, length.bytes + MP3_FRAME_BYTES);
  for (let place = 0; place < PLACES; place += 1)
    view.setUint8(TAG_AT + 16 + place, Math.floor((place * 256) / PLACES));
  text(ENCODER_AT, ENCODER);
  view.setUint8(ENCODER_AT + 9, REVISION_AND_METHOD);
  view.setUint32(ENCODER_AT + 20, (192 << 24) | (ENCODER_DELAY << 12) | padding);
  view.setUint32(ENCODER_AT + 28, length.bytes + MP3_FRAME_BYTES);
  view.setUint16(CHECKSUM_AT, checksum(frame.subarray(0, CHECKSUM_AT)));
  return frame;
};
