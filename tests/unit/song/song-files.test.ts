import { describe, expect, it } from 'vitest';
import type { Chart } from '../../../src/core/chart/chart';
import type { FeelId } from '../../../src/core/feels/feels';
import type { PartId } from '../../../src/core/score/score';
import { DEFAULT_MIX, DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { type Channel, type Mix, openParts } from '../../../src/core/settings/mix';
import type { Settings } from '../../../src/core/settings/settings';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { leadSheetOf } from '../../../src/core/song/lead-sheet';
import { fileStem, songTitle, soundingParts } from '../../../src/core/song/song-files';
import { eachSongSection } from '../../../src/core/song/song-sections';
import { tuneFor } from '../../../src/core/song/tune';
import { ENGLISH } from '../../../src/core/theory/note-names';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';
import { testProgram } from '../../helpers/test-charts';

const settingsWith = (changes: Partial<Settings>, feel: FeelId = 'shuffle'): Settings => ({
  ...DEFAULT_SETTINGS,
  ...changes,
  style: { ...DEFAULT_SETTINGS.style, feel },
});
/** The song key is a fifth above the harp's in second position. */
const harp = (song: number) => ({ harpKey: asPitchClass(song + 5) });
const tuneOf = (settings: Settings, changes: Partial<Chart> = {}) =>
  tuneFor(settings, { ...chartFor(settings, []), ...changes });

describe('names of files and songs', () => {
  it.each<[Partial<Settings>, FeelId, string, string]>([
    [harp(7), 'shuffle', 'shuffle-g-104bpm', 'Shuffle in G'],
    [harp(10), 'shuffle', 'shuffle-b-flat-104bpm', 'Shuffle in B♭'],
    [harp(6), 'swing', 'swing-f-sharp-104bpm', 'Swing in F♯'],
    [{ ...harp(0), formId: 'minor-b' }, 'minor-slow', 'minor-slow-c-minor-104bpm', 'in C minor'],
    [{ ...harp(7), tempo: asBpm(61.6) }, 'slow-12-8', 'slow-12-8-g-62bpm', 'in G'],
  ])('%o, %s: %s', (changes, feel, stem, title) => {
    const settings = settingsWith(changes, feel);
    expect(fileStem(settings, tuneOf(settings))).toBe(stem);
    expect(songTitle(settings, tuneOf(settings), ENGLISH)).toContain(title);
  });

  it.each([
    ['Hall closes at ten', 'hall-closes-at-ten-g-104bpm'],
    ['  Thé à la crème / take #2  ', 'the-a-la-creme-take-2-g-104bpm'],
    ['…', 'shuffle-g-104bpm'],
    ['../../etc', 'etc-g-104bpm'],
  ])('a song the player named “%s”', (title, stem) => {
    const settings = settingsWith({ formId: 'own-1' });
    const tune = tuneOf(settings, { title });
    expect(fileStem(settings, tune)).toBe(stem);
    expect(songTitle(settings, tune, ENGLISH)).toBe(title);
  });

  it('names the part of a file that holds one alone', () => {
    const settings = settingsWith({});
    expect(fileStem(settings, tuneOf(settings), 'bass')).toBe('shuffle-g-104bpm-bass');
  });
});

const mixWith = (changes: Partial<Record<PartId, Partial<Channel>>>): Mix => {
  const channel = (part: PartId) => ({ ...DEFAULT_MIX.channels[part], ...changes[part] });
  return {
    ...DEFAULT_MIX,
    channels: {
      drums: channel('drums'),
      bass: channel('bass'),
      chords: channel('chords'),
      second: channel('second'),
      lead: channel('lead'),
      click: channel('click'),
    },
  };
};

describe('which parts are in a file', () => {
  it.each<[string, Parameters<typeof mixWith>[0], string]>([
    ['all but the click, which rests', {}, 'drums bass chords second lead'],
    ['without what is muted', { bass: { muted: true } }, 'drums chords second lead'],
    ['a solo alone', { bass: { solo: true } }, 'bass'],
    ['a solo with the click', { bass: { solo: true }, click: { muted: false } }, 'bass click'],
    ['not a solo that is muted', { bass: { solo: true, muted: true } }, ''],
  ])('%s', (_, changes, parts) => {
    expect(openParts(mixWith(changes)).join(' ')).toBe(parts);
  });

  it('leaves out parts that have nothing to play', () => {
    const sections = [
      ...eachSongSection(testProgram('shuffle', { plan: { sounding: 'drums' } }), {
        choruses: 1,
        countIn: false,
        ending: false,
      }),
    ];
    expect(soundingParts(mixWith({}), sections)).toEqual(['drums']);
  });
});

const elements = (xml: string, name: string): readonly string[] =>
  [...xml.matchAll(new RegExp(`<${name}[^>]*>([^<]*)</${name}>`, 'g'))].map(([, text = '']) => text);

describe('the lead sheet', () => {
  const settings = settingsWith({ ...harp(7), formId: 'standard' });
  const xml = leadSheetOf(settings, tuneOf(settings));

  it('is called after the song and says which harp', () => {
    expect(elements(xml, 'work-title')).toEqual(['Shuffle in G']);
    expect(elements(xml, 'words')).toContain('C harp, 2nd position (cross)');
  });

  // C harp: B is 3 draw and 7 draw, F is 2 draw bent two and 5 draw; E is 2 blow, B♭ is 3 draw bent one.
  it('gives third and seventh as tab in the player’s style where the chord changes', () => {
    const tab = elements(xml, 'words').filter((words) => words.startsWith('3rd'));
    expect(tab).toEqual(['3rd 3↓  7th 5↓', '3rd 2↑  7th 3↓/', '3rd 3↓  7th 5↓', ...tab.slice(3)]);
    expect(tab).toHaveLength(6);
    const letters = leadSheetOf({ ...settings, tabStyle: 'letters' }, tuneOf(settings));
    expect(elements(letters, 'words')).toContain("3rd 2B  7th 3D'");
  });

  it.each<[FeelId, string]>([
    ['shuffle', '2:1 eighth'],
    ['second-line', '16th'],
    ['rock', ''],
    ['slow-12-8', ''],
  ])('marks the swing of %s as “%s”', (feel, expected) => {
    const felt = settingsWith({}, feel);
    const text = leadSheetOf(felt, tuneOf(felt));
    const [first, second, type] = ['first', 'second', 'swing-type'].map((name) => elements(text, name)[0]);
    expect(type === undefined ? '' : `${first}:${second} ${type}`).toContain(expected);
    if (expected === '') expect(type).toBeUndefined();
  });

  it('still is a sheet when no technique reaches the thirds', () => {
    const bare = settingsWith({
      technique: { drawBends: false, blowBends: false, overbends: false, off: [] },
    });
    expect(elements(leadSheetOf(bare, tuneOf(bare)), 'root-step').length).toBeGreaterThan(0);
  });
});
