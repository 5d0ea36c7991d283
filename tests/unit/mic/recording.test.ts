import { describe, expect, it } from 'vitest';
import { soundId } from '../../../src/core/harp/tab';
import { createBlockRecorder } from '../../../src/mic/block-recorder';
import { hearThrough } from '../../../src/mic/hear-through';
import type { SoundBlock } from '../../../src/mic/microphone';
import { harpSamples } from '../../helpers/harp-recording';
import { C_HARP } from '../../helpers/heard-note';

const RATE = 48_000;
const BLOCK = 256;

describe('the sound handed on', () => {
  it('is about a second at a time, without a gap, both sides of the same moments, and what is left at the end', () => {
    const told: SoundBlock[] = [];
    const recorder = createBlockRecorder((block) => told.push(block));
    const blocks = 400;
    const take = (i: number): void =>
      recorder.take(
        {
          at: i * BLOCK,
          heard: new Float32Array(BLOCK).fill(i / 1000),
          sent: new Float32Array(BLOCK).fill(-i / 1000),
        },
        RATE,
      );
    take(0);
    expect(told).toEqual([]);
    recorder.record(true);
    for (let i = 1; i <= blocks; i += 1) take(i);
    recorder.record(false);
    take(blocks + 1);
    expect(told.map(({ heard }) => heard.length)).toEqual([188 * BLOCK, 188 * BLOCK, 24 * BLOCK]);
    expect(told.map(({ at }) => at)).toEqual([1, 189, 377].map((block) => (block * BLOCK) / RATE));
    expect([told[1]?.heard[0], told[1]?.sent[0]]).toEqual([
      Math.round(0.189 * 32768),
      -Math.round(0.189 * 32768),
    ]);
  });

  it('is clipped, not turned over, where it is too loud', () => {
    const told: SoundBlock[] = [];
    const recorder = createBlockRecorder((block) => told.push(block));
    recorder.record(true);
    recorder.take({ at: 0, heard: Float32Array.of(1.5, -1.5), sent: Float32Array.of(1, -1) }, RATE);
    recorder.record(false);
    expect([...(told[0]?.heard ?? []), ...(told[0]?.sent ?? [])]).toEqual([32767, -32768, 32767, -32768]);
  });
});

describe('a recording heard through', () => {
  it('gives each of its notes once, and says how far it has come', () => {
    const samples = harpSamples(
      [
        { midi: 74, from: 0.3, to: 0.8 },
        { midi: 72, from: 1.9, to: 2.4 },
      ],
      3,
    );
    const shares: number[] = [];
    const sounds: string[] = [];
    hearThrough({ samples, sampleRate: RATE, choice: { harp: C_HARP } }, (share, notes) => {
      shares.push(share);
      sounds.push(...notes.map(({ sound }) => (sound === null ? '?' : soundId(sound))));
    });
    expect(sounds).toEqual(['4D', '4B']);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  });
});
