import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Sound } from '../../../src/core/harp/harp';
import { soundId, spokenTab, TAB_STYLES, tab, tabGroup } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';

const HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const sound = (id: string): Sound => {
  const found = HARP.sounds.find((each) => soundId(each) === id);
  if (found === undefined) throw new Error(`no sound ${id}`);
  return found;
};

describe('tab', () => {
  it.each([
    ['4B', '4', '4B', '4↑', 'blow 4'],
    ['4D', '-4', '4D', '4↓', 'draw 4'],
    ["4D'", "-4'", "4D'", '4↓/', 'draw 4, bent one semitone'],
    ["3D'''", "-3'''", "3D'''", '3↓///', 'draw 3, bent three semitones'],
    ["10B''", "10''", "10B''", '10↑//', 'blow 10, bent two semitones'],
    ['6OB', '6o', '6OB', '6↑○', 'blow 6, overblow'],
    ['7OD', '-7o', '7OD', '7↓○', 'draw 7, overdraw'],
  ])('%s is written %s, %s, %s and spoken "%s"', (id, signs, letters, arrows, spoken) => {
    const each = sound(id);
    expect([tab(each, 'signs'), tab(each, 'letters'), tab(each, 'arrows')]).toEqual([signs, letters, arrows]);
    expect(spokenTab(each)).toBe(spoken);
  });

  it('writes every sound of a harp differently in every style', () => {
    for (const { id: style } of TAB_STYLES) {
      expect(new Set(HARP.sounds.map((each) => tab(each, style))).size).toBe(HARP.sounds.length);
    }
    expect(new Set(HARP.sounds.map(spokenTab)).size).toBe(HARP.sounds.length);
  });

  it('brackets a chord', () => {
    expect(tabGroup([sound('2D'), sound('3D'), sound('4D')], 'signs')).toBe('(-2 -3 -4)');
  });
});
