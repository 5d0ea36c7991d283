import { afterEach, describe, expect, it, vi } from 'vitest';
import { createAudioCompressor } from '../../../../src/audio/export/compress-audio';
import type { Encoding } from '../../../../src/audio/export/compression';
import { id3Tag, titleOnly } from '../../../../src/core/formats/audio-tags';

/** What the fake encoder does with each piece it is given. */
interface Script {
  readonly supported: readonly string[];
  readonly piece: () => Uint8Array;
  /** Breaks at this piece, from 0. */
  readonly breaksAt?: number;
}

const stub = ({ supported, piece, breaksAt }: Script) => {
  const encoders: FakeEncoder[] = [];
  class FakeEncoder extends EventTarget {
    static async isConfigSupported({ codec }: { codec: string }) {
      if (codec === 'mp4a.40.2' && !supported.includes(codec)) throw new TypeError('unknown');
      return { supported: supported.includes(codec) };
    }
    state = 'unconfigured';
    encodeQueueSize = 0;
    configured: unknown = null;
    private given = 0;
    constructor(readonly callbacks: { output: (chunk: unknown) => void; error: (error: Error) => void }) {
      super();
      encoders.push(this);
    }
    configure(config: unknown) {
      this.state = 'configured';
      this.configured = config;
    }
    encode() {
      this.encodeQueueSize += 1;
      const number = this.given;
      this.given += 1;
      setTimeout(() => {
        if (number === breaksAt) {
          this.state = 'closed';
          this.callbacks.error(new Error('the encoder broke'));
          return;
        }
        this.encodeQueueSize -= 1;
        const bytes = piece();
        this.callbacks.output({ byteLength: bytes.length, copyTo: (to: Uint8Array) => to.set(bytes) });
        this.dispatchEvent(new Event('dequeue'));
      });
    }
    async flush() {}
    close() {
      this.state = 'closed';
    }
  }
  class FakeData {
    close() {}
  }
  vi.stubGlobal('AudioEncoder', FakeEncoder);
  vi.stubGlobal('AudioData', FakeData);
  return encoders;
};

afterEach(() => vi.unstubAllGlobals());

const ADTS = Uint8Array.of(0xff, 0xf1, 0x4c, 0x80);
const SECOND = new Float32Array(48_000);

const openWith = async (script: Script, id: Encoding['id']) => {
  const encoders = stub(script);
  const compressor = createAudioCompressor();
  const encoding = (await compressor.offered()).find((offered) => offered.id === id);
  if (!encoding) throw new Error(`${id} was not offered`);
  const bytes: number[] = [];
  const file = compressor.open({
    encoding,
    tags: titleOnly('Take'),
    serial: 7,
    write: async (more) => void bytes.push(...more),
    rewriteStart: async (more) => void bytes.splice(0, more.length, ...more),
  });
  return { file, bytes, encoders };
};

describe('what is offered', () => {
  it('is nothing where the browser has no encoders', async () => {
    expect(await createAudioCompressor().offered()).toEqual([]);
  });

  it.each([
    [['opus'], ['opus']],
    [
      ['opus', 'mp4a.40.2'],
      ['opus', 'aac'],
    ],
    [[], []],
  ])('is what the browser says of %j', async (supported, ids) => {
    stub({ supported, piece: () => ADTS });
    expect((await createAudioCompressor().offered()).map(({ id }) => id)).toEqual(ids);
  });
});

describe('AAC', () => {
  const supported = ['mp4a.40.2'];

  it('is asked for with headers, and its frames follow one another', async () => {
    const { file, bytes, encoders } = await openWith({ supported, piece: () => ADTS }, 'aac');
    await file.add(SECOND, SECOND);
    await file.add(SECOND, SECOND);
    await file.end();
    expect(bytes).toEqual([...id3Tag(titleOnly('Take')), ...ADTS, ...ADTS]);
    expect(encoders[0]).toMatchObject({
      state: 'closed',
      configured: { codec: 'mp4a.40.2', aac: { format: 'adts' }, sampleRate: 48000, numberOfChannels: 2 },
    });
  });

  it('is refused without headers, as no player could read it', async () => {
    const { file, bytes } = await openWith({ supported, piece: () => Uint8Array.of(0x21, 0x10) }, 'aac');
    await expect(file.add(SECOND, SECOND)).rejects.toThrow(/frames without headers/);
    expect(bytes).toEqual([]);
  });
});

describe('Opus', () => {
  const opus = { supported: ['opus'], piece: () => Uint8Array.of(0xfc, 1, 2, 3) };

  it('is an Ogg stream with the title', async () => {
    const { file, bytes } = await openWith(opus, 'opus');
    await file.add(SECOND, SECOND);
    await file.end();
    const text = String.fromCharCode(...bytes);
    expect(text.match(/OggS/g)).toHaveLength(3);
    expect(text).toContain('OpusHead');
    expect(text).toContain('TITLE=Take');
  });

  it('is a whole file even without sound', async () => {
    const { file, bytes } = await openWith(opus, 'opus');
    await file.add(new Float32Array(0), new Float32Array(0));
    await file.end();
    expect(String.fromCharCode(...bytes).match(/OggS/g)).toHaveLength(3);
  });

  it('tells when the encoder breaks instead of waiting for ever', async () => {
    const { file } = await openWith({ ...opus, breaksAt: 1 }, 'opus');
    await file.add(SECOND, SECOND);
    await expect(file.add(SECOND, SECOND)).rejects.toThrow('the encoder broke');
  });

  it('can be closed twice', async () => {
    const { file, encoders } = await openWith(opus, 'opus');
    file.close();
    file.close();
    expect(encoders[0]?.state).toBe('closed');
  });
});
