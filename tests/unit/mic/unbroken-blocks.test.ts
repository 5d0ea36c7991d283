import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { RICHTER } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';
import type { EarBlock } from '../../../src/mic/ear-messages';
import { createEarServer } from '../../../src/mic/ear-server';
import type { HeardReport } from '../../../src/mic/microphone';
import { createUnbrokenBlocks } from '../../../src/mic/unbroken-blocks';
import { harpSamples } from '../../helpers/harp-recording';

const RATE = 48_000;
const BLOCK = 256;
const ones = (): Float32Array => new Float32Array(BLOCK).fill(1);

/** What comes of blocks that were stamped so. */
const handedOn = (stamps: readonly number[]): readonly EarBlock[] => {
  const blocks: EarBlock[] = [];
  const take = createUnbrokenBlocks((block) => blocks.push(block));
  for (const at of stamps) take({ at, heard: ones(), sent: ones() });
  return blocks;
};

describe('blocks of the microphone in one row', () => {
  it('puts silence where samples were left out', () => {
    const [first, gap, last] = handedOn([4096, 5376]);
    expect([first?.at, gap?.at, last?.at]).toEqual([4096, 4352, 5376]);
    expect([gap?.heard.length, gap?.sent.length]).toEqual([1024, 1024]);
    expect([...(gap?.heard ?? []), ...(gap?.sent ?? [])].every((sample) => sample === 0)).toBe(true);
  });

  it('goes on counting where the clock stands still or is read too early', () => {
    // As Chromium 150 stamped them once: 650 368 four times, then the frame it would have come to anyway.
    const stamps = [650_240, 650_368, 650_368, 650_368, 650_368, 651_520, 651_904];
    expect(handedOn(stamps).map(({ at }) => at)).toEqual(
      Array.from({ length: 7 }, (_, i) => 650_240 + BLOCK * i),
    );
  });

  it('keeps notes in time for the ear behind it', () => {
    const samples = harpSamples([{ midi: 74, from: 0.3, to: 0.8 }], 1);
    const reports: HeardReport[] = [];
    const server = createEarServer(RATE, (report) => reports.push(report));
    server.choose({ harp: buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 }) });
    const take = createUnbrokenBlocks(server.take);
    // The first block, then 1024 samples are lost of the clock's time.
    take({ at: 0, heard: new Float32Array(BLOCK), sent: new Float32Array(BLOCK) });
    for (let at = 0; at + BLOCK <= samples.length; at += BLOCK) {
      const heard = samples.subarray(at, at + BLOCK);
      take({ at: at + BLOCK + 1024, heard, sent: new Float32Array(BLOCK) });
    }
    const [note] = reports.flatMap(({ notes }) => notes);
    expect(note?.from).toBeCloseTo(0.3 + (BLOCK + 1024) / RATE, 2);
  });
});
