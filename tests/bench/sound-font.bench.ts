import { bench, describe } from 'vitest';
import { openSoundFont } from '../../src/audio/soundfont/soundfont';
import { findSoundFontFlaw } from '../../src/core/formats/sound-font';
import { hzOf } from '../../src/core/theory/temperament';
import { asMidi } from '../../src/core/theory/units';
import { bandSoundFont } from '../helpers/sound-font';

const file = bandSoundFont();
const font = await openSoundFont(file.slice().buffer);
const note = (midi: number) => ({
  midi: asMidi(midi),
  hz: hzOf(asMidi(midi)),
  velocity: 80,
  sampleRate: 48_000,
  seed: 1,
});

describe('a SoundFont', () => {
  bench('looked through for flaws', () => {
    findSoundFontFlaw(file);
  });
  bench('opened', async () => {
    await openSoundFont(file.slice().buffer);
  });
});

describe('a note of a SoundFont, its model included', () => {
  bench('that dies away: piano', () => {
    font.render('piano', note(60));
  });
  bench('that is held: organ', () => {
    font.render('organ', note(60));
  });
  bench('that is struck: snare', () => {
    font.render('sticks', note(38));
  });
});
