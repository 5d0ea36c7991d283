import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SessionState } from '../../../src/app/session/session-state';
import { sectionAt } from '../../../src/core/arranger/section-at';
import type { OwnChart } from '../../../src/core/chart-text/own-chart';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { parseSettings, storableSettings } from '../../../src/core/settings/parse-settings';
import type { Settings } from '../../../src/core/settings/settings';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { leadsOf, lineFor, tradingFor } from '../../../src/core/song/leads';
import { programOf, soundOf } from '../../../src/core/song/song-program';
import { type Tune, tuneFor, withFittingRepeat } from '../../../src/core/song/tune';
import { restingViews } from '../../../src/core/song/views';
import { openSession } from '../../helpers/fake-session';
import { createFakeTabs } from '../../helpers/fake-tabs';
import { poisoned } from '../../helpers/poisoned-store';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const OWN: OwnChart = {
  id: 'chart-1',
  name: 'Hall evening',
  text: 'G7 | C7 Cm7 | G6 | D7',
  tonic: 'G',
  mode: 'major',
  meter: '4/4',
};

const row = (holes: number, first: number) => Array.from({ length: holes }, (_, i) => first + 3 * i);

/** Three good stores, so that mutations start from every branch: a stranger's, a busy one, one with other reeds. */
const BASES = [
  storableSettings(DEFAULT_SETTINGS),
  storableSettings({
    ...DEFAULT_SETTINGS,
    formId: OWN.id,
    line: { kind: 'chord tones', pace: 2, taste: 'even', seed: 3, heard: true },
    plan: { ...DEFAULT_SETTINGS.plan, repeat: { from: 1, to: 3 }, intro: 'pickup' },
    trade: { on: true, calls: '4 5 6' },
  }),
  storableSettings({
    ...DEFAULT_SETTINGS,
    tuning: { id: 'own', name: 'Twelve', blow: row(12, 0), draw: row(12, 2) },
    intonation: { cents: { blow: Array(12).fill(2), draw: Array(12).fill(-4) } },
    valved: [1, 12],
  }),
];

const tuneOf = (settings: Settings): Tune => tuneFor(settings, chartFor(settings, [OWN]));

const AT_REST = openSession(createFakeTabs().open()).state();

const stateOf = (settings: Settings, tune: Tune): SessionState => ({
  ...AT_REST,
  ...restingViews(tune, 0),
  settings,
  tune,
  ownCharts: [OWN],
});

const hold = (runs: number, check: (settings: Settings) => void): void => {
  fc.assert(
    fc.property(poisoned(BASES), (stored) => check(parseSettings(stored).settings)),
    { numRuns: runs },
  );
};

describe('whatever the storage gives back as settings', () => {
  it.each([
    [{ version: 1, intonation: { cents: { blow: [], draw: [] } } }, /cents/],
    [
      { tuning: 'lost', intonation: { cents: { blow: Array(12).fill(1), draw: Array(12).fill(1) } } },
      /cents/,
    ],
    [{ valved: [3, 12] }, /valves above hole 10/],
  ])('%j is read, and what had to go is said', (stored, words) => {
    const { settings, problems } = parseSettings(stored);
    expect(problems.join(' ')).toMatch(words);
    expect(tuneOf(settings).harp.reeds).toHaveLength(20);
  });

  it('it is read', { timeout: SOAK_TIMEOUT }, () => {
    hold(soakRuns(), (settings) => {
      if (!(settings.tempo > 0)) throw new Error('No settings came of it');
    });
  });

  it('it can be stored and read again without a problem', { timeout: SOAK_TIMEOUT }, () => {
    hold(soakRuns(10), (settings) => {
      const { problems } = parseSettings(storableSettings(settings));
      if (problems.length > 0) throw new Error(problems.join(' '));
    });
  });

  it('harp and fit can be worked out', { timeout: SOAK_TIMEOUT }, () => {
    hold(soakRuns(50), (settings) => {
      const { harp, fit, chart } = tuneOf(settings);
      expect(harp.reeds).toHaveLength(2 * settings.tuning.blow.length);
      expect(fit.bars).toHaveLength(chart.bars.length);
    });
  });

  it('program, sound, line and calls can be worked out', { timeout: SOAK_TIMEOUT }, () => {
    hold(soakRuns(400), (settings) => {
      const tune = tuneOf(settings);
      const fitting = withFittingRepeat(settings, tune.chart.bars.length);
      const state = stateOf(fitting, tune);
      const program = programOf(state);
      expect(sectionAt(program, 0)?.chart.bars.length).toBeGreaterThan(0);
      expect(soundOf(state).mix.master).toBe(settings.mix.master);
      lineFor(settings, tune.chart, tune.harp);
      tradingFor(settings, { chart: tune.chart, harp: tune.harp, chorus: 0 });
      expect(leadsOf(settings, [OWN])).toEqual(program.leads);
    });
  });
});
