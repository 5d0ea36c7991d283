import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import {
  neededBends,
  SET_WARM_UPS,
  setWarmUp,
  type WarmUpSong,
} from '../../../src/core/practice/warm-up-set';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';

const ALL_BENDS = { drawBends: true, blowBends: true, overbends: false, off: [] };

const harpIn = (key: number) => buildHarp({ tuning: TUNINGS[0], key: asPitchClass(key), octave: 0 });

/** A twelve-bar in second position on a harp. */
const song = (name: string, key: number, tempo = 96): WarmUpSong => ({
  name,
  harpName: `harp ${key}`,
  spec: {
    chart: buildChart({ form: 'standard', key: asPitchClass((key + 7) % 12), meter: '4/4' }),
    harp: harpIn(key),
    technique: ALL_BENDS,
    tempo: asBpm(tempo),
    swing: 1,
    tabStyle: 'signs',
    seed: 1,
  },
});

const SET = [song('Wet Boots', 0), song('Ferry at Noon', 5, 160), song('Slow Gate', 0, 60)];

describe('the bends a song needs', () => {
  it('are those that give chord tones which natural notes lack at that height', () => {
    // G7, C7 and D7 on a C harp want F4 (2D''), B♭4 (3D') and F♯4 (2D'), which no reed has; A♭4 (3D''') and D♭4 (1D')
    // are in none of them (layout of the harp: Wikibooks, "Harmonica/Layouts"; tones of the chords by definition).
    const { chart, harp } = song('x', 0).spec;
    const low = neededBends(chart, harp, ALL_BENDS).map(soundId);
    expect(low).toEqual(expect.arrayContaining(["2D''", "3D'", "2D'"]));
    expect(low).not.toContain("3D'''");
    expect(low).not.toContain("1D'");
  });

  it('are none where bends are off', () => {
    const { chart, harp } = song('x', 0).spec;
    expect(neededBends(chart, harp, { ...ALL_BENDS, drawBends: false, blowBends: false })).toEqual([]);
  });
});

describe('the warm-up for a set', () => {
  it.each(SET_WARM_UPS)('lasts about %i minutes', (minutes) => {
    const steps = setWarmUp({ songs: SET, minutes, silent: false });
    const seconds = steps.reduce((sum, { step }) => sum + step.seconds, 0);
    expect(seconds).toBeGreaterThan(minutes * 60 * 0.85);
    expect(seconds).toBeLessThan(minutes * 60 * 1.1);
  });

  it('takes each harp once, in the order of the set, and says which to take', () => {
    const steps = setWarmUp({ songs: SET, minutes: 10, silent: false });
    const songs = steps.map(({ song: index }) => index).filter((each, i, all) => each !== all[i - 1]);
    expect(songs).toEqual([0, 1, 0]);
    expect(steps.map(({ step }) => step.title)).toContain('Take the harp 5');
    const bends = steps.find(({ step }) => /Bends for Ferry/.test(step.title))?.step;
    expect(bends?.tempo).toBe(110);
    const played = (bends?.cues ?? []).flatMap(({ sound }) => (sound === null ? [] : [soundId(sound)]));
    const { chart, harp, technique } = song('', 5).spec;
    expect(neededBends(chart, harp, technique).map(soundId)).toEqual(expect.arrayContaining(played));
    expect(played.length).toBeGreaterThan(3);
  });

  it('makes no sound in a dressing room, and goes through every song in its own tempo', () => {
    const steps = setWarmUp({ songs: SET, minutes: 5, silent: true });
    expect(steps.every(({ step }) => step.band === null && step.lead.length === 0)).toBe(true);
    const said = steps.map(({ step }) => step.instruction).join(' ');
    expect(said).toMatch(/96 beats.*160 beats.*60 beats/);
  });

  it('leaves out the last of more harps than there is time for, and is nothing for an empty set', () => {
    const many = Array.from({ length: 12 }, (_, key) => song(`Song ${key}`, key));
    const steps = setWarmUp({ songs: many, minutes: 5, silent: false });
    const harps = new Set(steps.map(({ song: index }) => index));
    expect(harps.has(0)).toBe(true);
    expect(harps.size).toBeLessThan(12);
    expect(setWarmUp({ songs: [], minutes: 5, silent: true })).toEqual([]);
  });
});
