import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RESTING_SOUND } from '../../../../src/audio/band/resting-sound';
import { gainInLayer, LAYERS, layerOf, nameOfKey, soundKeyFor } from '../../../../src/audio/bank/sound-key';
import type { PartId } from '../../../../src/core/score/score';
import { asCents, asHz } from '../../../../src/core/theory/units';

const key = (
  part: PartId,
  changes: Partial<{ pitch: number; velocity: number; stroke: number }> = {},
  sound = RESTING_SOUND,
) => soundKeyFor({ part, pitch: 60, velocity: 80, stroke: 0, ...changes }, sound);

describe('velocity layers', () => {
  it('bring every velocity to its level: the square of velocity', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 127 }), (velocity) => {
        const layer = layerOf(velocity);
        expect(LAYERS[layer] ** 2 * gainInLayer(velocity, layer, 'piano')).toBeCloseTo(velocity ** 2, 6);
      }),
    );
  });

  it('never raise a layer by more than 5 dB', () => {
    for (let velocity = 1; velocity <= 127; velocity += 1) {
      expect(20 * Math.log10(gainInLayer(velocity, layerOf(velocity), 'piano'))).toBeLessThan(5.1);
    }
  });
});

describe('the sound of a note', () => {
  it.each<[PartId, string]>([
    ['drums', 'sticks'],
    ['bass', 'upright-bass'],
    ['chords', 'piano'],
    ['lead', 'harmonica'],
    ['click', 'click'],
  ])('of %s is played by %s', (part, voice) => {
    expect(key(part).voice).toBe(voice);
  });

  it.each<[string, PartId, number, number]>([
    ['four strokes of a drum', 'drums', 6, 2],
    ['four of a string', 'bass', 7, 3],
    ['one of a click', 'click', 7, 0],
  ])('takes turns with %s', (_, part, stroke, turn) => {
    expect(key(part, { stroke }).stroke).toBe(turn);
  });

  it('comes from the player’s own file in the parts that use it', () => {
    const sound = { ...RESTING_SOUND, own: { source: 2, parts: ['bass', 'drums', 'click'] as const } };
    const sources = (['bass', 'drums', 'chords', 'lead', 'click'] as const).map(
      (part) => key(part, {}, sound).source,
    );
    expect(sources).toEqual([2, 2, undefined, undefined, undefined]);
    expect(key('drums', { stroke: 3 }, sound).stroke).toBe(0);
    expect(nameOfKey(key('bass', {}, sound))).not.toBe(nameOfKey(key('bass')));
  });

  it('follows the temperament where there is a pitch', () => {
    const offsets = Array.from({ length: 12 }, (_, pitchClass) => asCents(pitchClass === 0 ? -14 : 0));
    const tuned = { ...RESTING_SOUND, temperament: { reference: asHz(442), offsets } };
    expect(1200 * Math.log2(key('chords', {}, tuned).hz / key('chords').hz)).toBeCloseTo(
      1200 * Math.log2(442 / 440) - 14,
      6,
    );
    expect(nameOfKey(key('drums', {}, tuned))).toBe(nameOfKey(key('drums')));
  });
});
