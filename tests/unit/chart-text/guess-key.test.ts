import { describe, expect, it } from 'vitest';
import { FORM_IDS, FORMS } from '../../../src/core/chart/forms';
import { guessKey } from '../../../src/core/chart-text/guess-key';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { keyName, PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { testChart } from '../../helpers/test-charts';

const guess = (text: string): string => {
  const { chart } = readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: 'a' });
  const key = guessKey(chart);
  return key === null ? 'none' : `${key.tonic} ${key.mode}`;
};

describe('the key that chords speak for', () => {
  it.each(FORM_IDS)(
    'is that of the form %s, in every key, or none where it moves through several',
    (form) => {
      const { mode } = FORMS[form];
      const guessed = PITCH_CLASSES.map((key) => guessKey(testChart(form, key)));
      for (const [key, found] of guessed.entries()) {
        if (found === null) continue;
        expect(found).toEqual({ tonic: keyName(PITCH_CLASSES[key] as never, mode), mode });
      }
      expect(new Set(guessed.map((found) => found === null)).size).toBe(1);
    },
  );

  it('is found for nearly every form', () => {
    const found = FORM_IDS.filter((form) => guessKey(testChart(form, 0)) !== null);
    expect(found.length).toBeGreaterThanOrEqual(FORM_IDS.length - 2);
  });

  // Cadences of any handbook of harmony: ii–V–I in major, ii–V–i in minor, I–vi–IV–V.
  it.each([
    ['| Dm7 | G7 | Cmaj7 | Cmaj7 |', 'C major'],
    ['| Dm7b5 | G7 | Cm | Cm |', 'C minor'],
    ['| G | Em | C | D7 |', 'G major'],
    ['| Am | Dm | E7 | Am |', 'A minor'],
    ['| Bbm7 | Ebm7 | F7 | Bbm7 |', 'Bb minor'],
    ['| Eb | Ab | Bb7 | Eb |', 'Eb major'],
    ['| C7 | C7 |', 'none'],
    ['| C | D | E | F# | G# | A# |', 'none'],
  ])('of %s is %s', (text, key) => {
    expect(guess(text)).toBe(key);
  });
});
