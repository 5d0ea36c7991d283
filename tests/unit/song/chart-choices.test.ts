import { describe, expect, it } from 'vitest';
import { asItSays, type OwnChart } from '../../../src/core/chart-text/own-chart';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { withOwnChart } from '../../../src/core/song/chart-choices';
import { songKeyOf, withFittingRepeat } from '../../../src/core/song/tune';

const own = (text: string): OwnChart => ({
  id: 'chart-1',
  name: 'Ferry',
  text,
  tonic: 'C',
  mode: 'major',
  meter: '4/4',
});

describe('a chart that says what it is', () => {
  it('has the name, key and meter of its lines', () => {
    expect(asItSays(own('Title: Lantern Walk\nKey: F#m\nMeter: 3/4\nF#m7'))).toMatchObject({
      name: 'Lantern Walk',
      tonic: 'F#',
      mode: 'minor',
      meter: '3/4',
    });
    expect(asItSays(own('C7'))).toEqual(own('C7'));
  });

  it('brings key, feel, tempo and a held end with it', () => {
    const chosen = withOwnChart(DEFAULT_SETTINGS, own('Key: E\nFeel: swing\nTempo: 999\nTempo: 132\nE7 𝄐'));
    expect(songKeyOf(chosen)).toBe(4);
    expect(chosen).toMatchObject({
      formId: 'chart-1',
      tempo: 132,
      style: { feel: 'swing' },
      plan: { ending: 'held', repeat: null },
    });
    expect(withOwnChart(DEFAULT_SETTINGS, own('Tempo: 400\nC7')).tempo).toBe(280);
  });

  it('changes nothing but the form where it says nothing', () => {
    const { plan } = DEFAULT_SETTINGS;
    expect(withOwnChart(DEFAULT_SETTINGS, own('C7'))).toEqual({
      ...DEFAULT_SETTINGS,
      formId: 'chart-1',
      plan: { ...plan, repeat: null },
    });
    expect(withOwnChart(DEFAULT_SETTINGS, own('Feel: tarantella\nC7')).style).toEqual(DEFAULT_SETTINGS.style);
  });
});

describe('repeated bars', () => {
  it('stay while a form has the last of them, and go with it', () => {
    const { plan } = DEFAULT_SETTINGS;
    const repeating = { ...DEFAULT_SETTINGS, plan: { ...plan, repeat: { from: 8, to: 11 } } };
    expect([11, 12].map((bars) => withFittingRepeat(repeating, bars).plan.repeat)).toEqual([
      null,
      { from: 8, to: 11 },
    ]);
  });
});
