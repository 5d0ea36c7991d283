import { describe, expect, it } from 'vitest';
import { createSoundCache } from '../../../../src/audio/bank/sound-cache';
import type { SoundKey } from '../../../../src/audio/bank/sound-key';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asMidi } from '../../../../src/core/theory/units';

const key = (midi: number, changes: Partial<SoundKey> = {}): SoundKey => ({
  voice: 'piano',
  midi: asMidi(midi),
  hz: hzOf(asMidi(midi)),
  layer: 1,
  stroke: 0,
  ...changes,
});

const cacheWith = (keys: readonly SoundKey[], capacity = 1000) => {
  const cache = createSoundCache<string>(capacity);
  for (const each of keys)
    cache.add({ key: each, samples: String(each.midi), bytes: 100, loop: null, release: 0.1 });
  return cache;
};

describe('finding a sound', () => {
  it.each<[string, SoundKey, readonly SoundKey[], number | null, number]>([
    ['the very one', key(60), [key(59), key(60)], 60, 1],
    ['another stroke before another layer', key(60), [key(60, { layer: 0 }), key(60, { stroke: 1 })], 60, 1],
    ['another layer before another key', key(60), [key(61), key(60, { layer: 0 })], 60, 1],
    ['the nearest key, at its own speed', key(60), [key(55), key(62)], 62, 2 ** (-2 / 12)],
    [
      'the file’s own sound a key away before the built-in one',
      key(60, { source: 3 }),
      [key(60), key(61, { source: 3 })],
      61,
      2 ** (-1 / 12),
    ],
    [
      'the built-in one before the file’s own two keys away',
      key(60, { source: 3 }),
      [key(60), key(62, { source: 3 })],
      60,
      1,
    ],
    ['nothing farther than a fifth', key(60), [key(68)], null, 1],
    ['nothing of another voice', key(60), [key(60, { voice: 'guitar' })], null, 1],
    ['no other piece of a kit', key(38, { voice: 'sticks' }), [key(40, { voice: 'sticks' })], null, 1],
  ])('finds %s', (_, asked, there, midi, rate) => {
    const found = cacheWith(there).find(asked);
    expect(found?.sound.key.midi ?? null).toBe(midi);
    if (found) expect(found.rate).toBeCloseTo(rate, 6);
  });

  it('says whether another sound stands in', () => {
    const cache = cacheWith([key(60)]);
    expect(cache.find(key(60))?.exact).toBe(true);
    expect(cache.find(key(61))?.exact).toBe(false);
  });
});

describe('memory', () => {
  it('gives up what was used longest ago', () => {
    const cache = cacheWith([key(50), key(70), key(90)], 300);
    cache.find(key(50));
    cache.add({ key: key(30), samples: '', bytes: 100, loop: null, release: 0 });
    expect([50, 70, 90, 30].map((midi) => cache.has(key(midi)))).toEqual([true, false, true, true]);
    expect(cache.bytes()).toBe(300);
  });

  it('keeps what is protected', () => {
    const cache = cacheWith([key(50), key(70)], 200);
    cache.protect([key(50)]);
    cache.add({ key: key(30), samples: '', bytes: 100, loop: null, release: 0 });
    expect([50, 70, 30].map((midi) => cache.has(key(midi)))).toEqual([true, false, true]);
  });

  it('counts a sound that comes twice once', () => {
    expect(cacheWith([key(50), key(50)]).bytes()).toBe(100);
  });

  it('tells what it gives up, once', () => {
    const told: string[] = [];
    const cache = createSoundCache<string>(250, (samples) => told.push(samples));
    for (const midi of [60, 61, 62, 63])
      cache.add({ key: key(midi), samples: String(midi), bytes: 100, loop: null, release: 0.1 });
    expect(told).toEqual(['60', '61']);
  });
});
