import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { parseSettings, storableSettings } from '../../../src/core/settings/parse-settings';
import type { Settings } from '../../../src/core/settings/settings';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { programOf } from '../../../src/core/song/song-program';
import { tuneFor } from '../../../src/core/song/tune';
import { sectionOf } from '../../helpers/score-events';

const asked = (changes: Partial<Settings>): Settings => ({
  ...DEFAULT_SETTINGS,
  formId: 'standard-turnaround',
  plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0 },
  ...changes,
});

const program = (settings: Settings) => {
  const tune = tuneFor(settings, chartFor(settings, []));
  return { tune, program: programOf({ settings, tune, lastChorus: null, ownCharts: [] }) };
};

const close = (chart: { bars: readonly { chords: readonly { chord: { symbol: string } }[] }[] }): string =>
  chart.bars
    .slice(-2)
    .map(({ chords }) => chords.map(({ chord }) => chord.symbol).join(' '))
    .join(' | ');

describe('the turnarounds of a song', () => {
  it('vary by chorus where nothing lies over the chart, which rests as the form has it', () => {
    const { tune, program: made } = program(asked({}));
    const heard = Array.from({ length: 12 }, (_, i) => close(sectionOf(made, i).chart));
    expect(close(tune.chart)).toBe('G7 | D7');
    expect(new Set(heard).size).toBeGreaterThan(2);
  });

  it('are one under a line, on the stand as in the band', () => {
    const line = { ...DEFAULT_SETTINGS.line, kind: 'guide tones' as const };
    const { tune, program: made } = program(asked({ line }));
    const heard = new Set(Array.from({ length: 6 }, (_, i) => close(sectionOf(made, i).chart)));
    expect([...heard]).toEqual([close(tune.chart)]);
    expect(close(tune.chart)).toBe('G7 | G7 D7');
  });

  it('stay as written where that is asked', () => {
    const plan = { ...DEFAULT_SETTINGS.plan, countInBars: 0, turnarounds: 'as written' } as const;
    const { program: made } = program(asked({ plan }));
    expect(close(sectionOf(made, 3).chart)).toBe('G7 | D7');
  });

  it('are varied in a save from before there was a choice', () => {
    const { turnarounds: _, ...old } = { ...DEFAULT_SETTINGS.plan, ritard: true };
    const { settings, problems } = parseSettings({ ...storableSettings(DEFAULT_SETTINGS), plan: old });
    expect([settings.plan.turnarounds, settings.plan.ritard, problems]).toEqual(['varied', true, []]);
  });
});
