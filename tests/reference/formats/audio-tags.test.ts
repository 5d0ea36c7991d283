import { parseBuffer } from 'music-metadata';
import { describe, expect, it } from 'vitest';
import { id3Tag, oggComments, wavInfo } from '../../../src/core/formats/audio-tags';
import { createOggOpusWriter } from '../../../src/core/formats/ogg-opus';
import { wavHeader } from '../../../src/core/formats/wav';

const TAGS = { title: 'Slow in B♭ “é”', album: 'Village hall', track: { number: 3, of: 6 } };

/** Read by music-metadata, a library of its own. */
const read = async (parts: readonly Uint8Array[], type: string) => {
  const { common } = await parseBuffer(Uint8Array.from(parts.flatMap((part) => [...part])), type);
  return [common.title, common.album, common.track.no];
};

describe('tags, read by an independent library', () => {
  it('of a WAV file, with accidentals as Latin 1 can have them', async () => {
    const info = wavInfo(TAGS);
    const header = wavHeader({ sampleRate: 44100, channels: 2, bits: 16 }, 10, info.length);
    expect(await read([header, new Uint8Array(40), info], 'audio/wav')).toEqual([
      'Slow in Bb "é"',
      'Village hall',
      3,
    ]);
    const alone = wavInfo({ title: 'Even', album: '', track: null });
    expect(alone.length % 2).toBe(0);
  });

  it('of an Opus file', async () => {
    const writer = createOggOpusWriter({
      channels: 2,
      preSkip: 312,
      inputRate: 48000,
      serial: 7,
      comments: oggComments(TAGS),
    });
    // A packet of 20 ms by its first byte: CELT, full band, stereo, one frame (RFC 6716, 3.1).
    const parts = [writer.start(), writer.add(Uint8Array.of(0xfc, 1, 2)), writer.end(960)];
    expect(await read(parts, 'audio/ogg')).toEqual([TAGS.title, TAGS.album, 3]);
  });

  it('of MP3 and AAC files', async () => {
    // MPEG-1 layer III, 128 kbit/s, 44.1 kHz, stereo: frames of 417 bytes (ISO/IEC 11172-3, 2.4.2.3).
    const frame = new Uint8Array(417);
    frame.set([0xff, 0xfb, 0x90, 0x00]);
    expect(await read([id3Tag(TAGS), frame, frame, frame], 'audio/mpeg')).toEqual([
      TAGS.title,
      TAGS.album,
      3,
    ]);
  });
});
