import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { parseSettings, storableSettings } from '../../../src/core/settings/parse-settings';
import type { Settings } from '../../../src/core/settings/settings';
import { parseTempo } from '../../../src/core/settings/tempo';
import { anySettings } from '../../helpers/settings-arbitraries';

const FIELDS = Object.keys(DEFAULT_SETTINGS) as (keyof Settings)[];

describe('parseSettings', () => {
  it('reads back what it stored, whatever was chosen', () => {
    fc.assert(
      fc.property(anySettings, (settings) => {
        const stored: unknown = JSON.parse(JSON.stringify(storableSettings(settings)));
        expect(parseSettings(stored)).toEqual({ settings, problems: [] });
      }),
      { numRuns: 300 },
    );
  });

  it('is tried with other values than the usual ones for every field', () => {
    const samples = fc.sample(anySettings, { numRuns: 50, seed: 1 });
    const usual = (field: keyof Settings): boolean =>
      samples.every((each) => JSON.stringify(each[field]) === JSON.stringify(DEFAULT_SETTINGS[field]));
    expect(FIELDS.filter(usual)).toEqual([]);
  });

  it.each(FIELDS)('loses no other field when %s is foreign, and names it', (field) => {
    const { settings, problems } = parseSettings({
      ...storableSettings(DEFAULT_SETTINGS),
      [field]: { odd: true },
    });
    expect(settings).toEqual(DEFAULT_SETTINGS);
    expect(problems).toHaveLength(1);
  });

  it('keeps what it knows of a newer version and says so', () => {
    const { settings, problems } = parseSettings({ version: 99, harpKey: 5, hologram: true });
    expect(settings.harpKey).toBe(5);
    expect(problems.join()).toMatch(/newer version/);
  });

  it.each([null, 3, 'text', [], true])('takes the usual settings for %j and says so', (input) => {
    const { settings, problems } = parseSettings(input);
    expect(settings).toEqual(DEFAULT_SETTINGS);
    expect(problems).toHaveLength(1);
  });

  it('puts a backward range the right way round', () => {
    const plan = { ...DEFAULT_SETTINGS.plan, repeat: { from: 7, to: 4 } };
    expect(parseSettings({ plan }).settings.plan.repeat).toEqual({ from: 4, to: 7 });
  });

  it('keeps a range of the last bars that the longest chart has', () => {
    const text = Array.from({ length: 300 }, () => 'C7').join('|');
    const { chart } = readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: '' });
    const to = chart.bars.length - 1;
    const plan = { ...DEFAULT_SETTINGS.plan, repeat: { from: to - 3, to } };
    expect(parseSettings({ plan })).toEqual({ settings: { ...DEFAULT_SETTINGS, plan }, problems: [] });
  });

  it('never throws and always gives whole settings', () => {
    const field = fc.constantFrom(...FIELDS, 'version');
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.dictionary(field, fc.anything())), (input) => {
        expect(Object.keys(parseSettings(input).settings).sort()).toEqual([...FIELDS].sort());
      }),
      { numRuns: 500 },
    );
  });
});

describe('parseTempo', () => {
  it.each([
    ['104', 104],
    [' 72.5 ', 72.5],
    ['72,5', 72.5],
    ['40', 40],
    ['280', 280],
  ])('reads “%s”', (typed, tempo) => {
    expect(parseTempo(typed)).toBe(tempo);
  });

  it('quotes what it could not read', () => {
    expect(parseTempo('fast')).toMatch(/^“fast” is not a number/);
  });

  it.each(['0x50', '0b1010000', '0o120', '1e2', 'Infinity', '', '1.2.3', '8 0'])(
    'takes no “%s” for a number',
    (typed) => {
      expect(parseTempo(typed)).toBe(
        `“${typed}” is not a number. Type a tempo from 40 to 280 beats a minute.`,
      );
    },
  );
});
