import { readFileSync } from 'node:fs';
import { parseBuffer } from 'music-metadata';
import { describe, expect, it } from 'vitest';
import { createEncoder } from 'wasm-media-encoders/esnext';
import { createMp3Answers, type Mp3Encoder } from '../../../../src/audio/export/answer-mp3';
import { createAudioCompressor } from '../../../../src/audio/export/compress-audio';
import type { EncodingWorker } from '../../../../src/audio/export/encoding-line';
import { MP3_ENCODING } from '../../../../src/audio/export/mp3-file';
import type { Mp3Order } from '../../../../src/audio/export/mp3-messages';

const WASM = 'node_modules/wasm-media-encoders/wasm/mp3.wasm';
const load = () => createEncoder('audio/mpeg', readFileSync(WASM));

/** A worker whose work is done here; `started` tells it apart from one that never comes up. */
const workerWith = (encoder: () => Promise<Mp3Encoder>, started = true) => {
  const answer = createMp3Answers(encoder);
  const worker = { onmessage: null, onerror: null, ended: false } as {
    onmessage: EncodingWorker<Mp3Order>['onmessage'];
    onerror: EncodingWorker<Mp3Order>['onerror'];
    ended: boolean;
  };
  return Object.assign(worker, {
    postMessage: async (order: Mp3Order) => {
      // The file of the worker could not be had: the browser tells so without a reason.
      if (!started) return void setTimeout(() => worker.onerror?.({ message: '' } as ErrorEvent));
      const data = await answer(order);
      worker.onmessage?.({ data } as MessageEvent);
    },
    terminate: () => {
      worker.ended = true;
    },
  });
};

const TAGS = { title: 'Slow in B♭ “é”', album: 'Village hall', track: { number: 3, of: 6 } };

const openWith = (worker: EncodingWorker<Mp3Order>) => {
  const bytes: number[] = [];
  const compressor = createAudioCompressor({ canRun: () => true, createWorker: () => worker });
  const file = compressor.open({
    encoding: MP3_ENCODING,
    tags: TAGS,
    serial: 1,
    write: async (more) => void bytes.push(...more),
    rewriteStart: async (more) => void bytes.splice(0, more.length, ...more),
  });
  return { compressor, file, bytes };
};

const hum = (frames: number) => Float32Array.from({ length: frames }, (_, at) => 0.3 * Math.sin(at / 20));

describe('an MP3 file', () => {
  it('is offered where workers can compile', async () => {
    const { compressor } = openWith(workerWith(load));
    expect(await compressor.offered()).toContain(MP3_ENCODING);
    const without = createAudioCompressor({ canRun: () => false, createWorker: () => workerWith(load) });
    expect(await without.offered()).toEqual([]);
  });

  it('has tags and a length, to the sample, that an independent reader finds', async () => {
    const worker = workerWith(load);
    const { file, bytes } = openWith(worker);
    for (const frames of [20_000, 1, 30_000]) await file.add(hum(frames), hum(frames));
    await file.end();
    const { common, format } = await parseBuffer(Uint8Array.from(bytes), 'audio/mpeg');
    expect([common.title, common.album, common.track.no]).toEqual([TAGS.title, TAGS.album, 3]);
    expect(format).toMatchObject({ codec: 'MPEG 1 Layer 3', sampleRate: 48000, numberOfChannels: 2 });
    // Whole frames, less what the encoder put around the music: the two delays of the info tag.
    // ffmpeg leaves exactly these samples, by hand.
    const at = String.fromCharCode(...bytes).indexOf('LAME3.100') + 21;
    const [high = 0, middle = 0, low = 0] = bytes.slice(at, at + 3);
    const [delay, padding] = [(high << 4) | (middle >> 4), ((middle & 15) << 8) | low];
    expect(delay).toBe(576);
    expect(Math.round((format.duration ?? 0) * 48_000) - delay - padding).toBe(50_001);
    expect(worker.ended).toBe(true);
  });

  it('fails with the reason where the encoder cannot be had', async () => {
    const missing = async () => Promise.reject(new Error('mp3.wasm: 404'));
    const { file } = openWith(workerWith(missing));
    await expect(file.add(hum(10), hum(10))).rejects.toThrow('mp3.wasm: 404');
    await expect(file.end()).rejects.toThrow('mp3.wasm: 404');
  });

  it('fails instead of waiting for ever where its worker never comes up, or ends midway', async () => {
    const { file } = openWith(workerWith(load, false));
    await expect(file.add(hum(10), hum(10))).rejects.toThrow('could not be started');
    const worker = workerWith(load);
    const other = openWith(worker);
    await other.file.add(hum(10), hum(10));
    worker.onerror?.({ message: 'out of memory' } as ErrorEvent);
    await expect(other.file.end()).rejects.toThrow('out of memory');
  });

  it('can be closed twice, and is not written to afterwards', async () => {
    const { file } = openWith(workerWith(load));
    file.close();
    file.close();
    await expect(file.add(hum(10), hum(10))).rejects.toThrow('closed');
  });
});
