import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { FEEL_IDS, type FeelId } from '../../../src/core/feels/feels';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';
import { inBar, partOf, sectionOf, sectionsOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

const symbols = (section: ReturnType<typeof sectionOf>): string =>
  section.chart.bars.map((bar) => bar.chords.map((span) => span.chord.symbol).join(' ')).join(' | ');

describe('count-in', () => {
  it('clicks every beat with an accent on 1, shows the coming chord, and is heard from the sticks too', () => {
    const section = sectionOf(testProgram('shuffle', { plan: { countInBars: 2 } }), 0);
    expect(section.kind).toBe('count-in');
    expect(symbols(section)).toBe('G7 | G7');
    expect(section.barNumbers).toEqual([null, null]);
    expect(partOf(section, 'click').map(({ at, pitch }) => [at, pitch])).toEqual([
      ...[0, 480, 960, 1440].map((at) => [at, at === 0 ? 76 : 77]),
      ...[1920, 2400, 2880, 3360].map((at) => [at, at === 1920 ? 76 : 77]),
    ]);
    expect(partOf(section, 'drums').map(({ at, pitch }) => [at, pitch])).toEqual(
      [0, 960, 1920, 2400, 2880, 3360].map((at) => [at, 37]),
    );
  });

  it('counts four dotted quarters in 12/8', () => {
    const section = sectionOf(testProgram('slow-12-8', { plan: { countInBars: 1 } }), 0);
    expect(partOf(section, 'click').map(({ at }) => at)).toEqual([0, 720, 1440, 2160]);
  });

  it('between passes leads into the next key and tempo', () => {
    const plan: Partial<Plan> = {
      repeat: { from: 4, to: 5 },
      countBetween: true,
      keys: { kind: 'fourths' },
      tempo: { kind: 'alternate', slow: asBpm(60) },
    };
    const section = sectionOf(testProgram('shuffle', { plan }), 1);
    expect([section.kind, section.chorus, symbols(section), section.tempo]).toEqual([
      'count-in',
      1,
      'F7',
      [{ at: 0, bpm: 108 }],
    ]);
  });
});

describe('intro', () => {
  it.each<[Plan['intro'], string]>([
    ['turnaround', 'D7 | C7 | G7 | D7'],
    ['pickup', 'G7 | D7'],
    ['drums', 'G7 | G7 | G7 | G7'],
  ])('%s plays %s', (intro, expected) => {
    const section = sectionOf(testProgram('shuffle', { plan: { intro } }), 0);
    expect([section.kind, symbols(section)]).toEqual(['intro', expected]);
    expect(section.barNumbers.every((number) => number === null)).toBe(true);
  });

  it('turns a form that rests at home to the five chord', () => {
    const section = sectionOf(
      testProgram('shuffle', { chart: testChart('standard'), plan: { intro: 'turnaround' } }),
      0,
    );
    expect(symbols(section)).toBe('D7 | C7 | G7 | D7');
  });

  it('of drums alone has nothing else but the click', () => {
    const section = sectionOf(testProgram('swing', { plan: { intro: 'drums' } }), 0);
    expect(new Set(section.score.events.map(({ part }) => part))).toEqual(new Set(['drums', 'click']));
  });
});

describe('a chorus', () => {
  it('numbers its bars and plays the plan tempo', () => {
    const section = sectionOf(testProgram('straight'), 2);
    expect([section.kind, section.chorus, section.last]).toEqual(['chorus', 2, false]);
    expect(section.barNumbers).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(section.tempo).toEqual([{ at: 0, bpm: 112 }]);
  });

  it('can start at any bar, with the rest of the chorus unchanged', () => {
    const program = testProgram('shuffle', { style: { chords: 'organ' } });
    const whole = sectionOf(program, 1);
    const late = sectionOf(program, 1, 5);
    const from = whole.chart.bars[5]?.at ?? 0;
    expect(late.barNumbers).toEqual([5, 6, 7, 8, 9, 10, 11]);
    expect(late.chart.bars[0]?.at).toBe(0);
    const moved = whole.score.events.filter((e) => e.at >= from).map((e) => ({ ...e, at: e.at - from }));
    expect(late.score.events).toEqual(expect.arrayContaining(moved));
    expect(late.score.events.length - moved.length).toBeLessThanOrEqual(5);
  });

  it('of a range plays those bars and aims its last bar at the first again', () => {
    const section = sectionOf(testProgram('swing', { plan: { repeat: { from: 8, to: 9 } } }), 0);
    expect([symbols(section), section.barNumbers]).toEqual(['D7 | C7', [8, 9]]);
    const last = partOf(section, 'bass').at(-1);
    expect([1, 2, 5, 7]).toContain(Math.abs((last?.pitch ?? 0) - 38));
  });

  it.each([
    [{ repeat: { from: 3, to: 12 } }, 0, 'Repeat needs 0 <= from <= to <= 11, got 3 to 12'],
    [{ repeat: { from: 5, to: 4 } }, 0, 'got 5 to 4'],
    [{}, 12, 'fromBar must be a whole number from 0 to 11, got 12'],
    [{ repeat: { from: 2, to: 4 } }, 3, 'fromBar must be a whole number from 0 to 2, got 3'],
    [{}, -1, 'got -1'],
  ] as const)('refuses %j from bar %s', (plan, fromBar, message) => {
    expect(() => sectionAt(testProgram('shuffle', { plan }), 0, fromBar)).toThrow(message);
  });

  it('aims its bass at the first root of the next chorus, whatever its key', () => {
    for (const keys of [
      [7, 0],
      [7, 1],
      [7, 6],
    ]) {
      const plan = { keys: { kind: 'list' as const, keys: keys.map(asPitchClass) } };
      const program = testProgram('swing', { plan });
      const approach = partOf(sectionOf(program, 0), 'bass').at(-1)?.pitch ?? 0;
      const target = partOf(sectionOf(program, 1), 'bass')[0]?.pitch ?? 0;
      expect(target % 12).toBe(keys[1]);
      expect([1, 2, 5, 7]).toContain(Math.abs(target - approach));
    }
  });
});

describe('the last chorus', () => {
  const last = (ending: Plan['ending'], ritard = false) =>
    sectionsOf(
      testProgram('shuffle', { chart: testChart('standard'), plan: { choruses: 1, ending, ritard } }),
    );

  it.each<[Plan['ending'], string, number]>([
    ['cadence', 'G7 | D7 Ab7', 2],
    ['held', 'G7 | D7', 2],
    ['stop', 'G7 | G7', 1],
  ])('closes with a %s: %s', (ending, close, count) => {
    const sections = last(ending);
    expect(sections).toHaveLength(count);
    expect(symbols(sections[0] ?? sectionOf(testProgram('shuffle'), 0)).endsWith(close)).toBe(true);
    expect(sections.map((section) => section.last)).toEqual(count === 2 ? [false, true] : [true]);
  });

  it('is followed by one bar of the home chord, held by all, under a slow beat', () => {
    const ending = last('held')[1];
    if (ending === undefined) throw new Error('No ending');
    expect([ending.kind, symbols(ending)]).toEqual(['ending', 'G7']);
    expect(partOf(ending, 'bass').map(({ at, length, pitch }) => [at, length >= 1800, pitch % 12])).toEqual([
      [0, true, 7],
    ]);
    expect(partOf(ending, 'chords').every(({ at, length }) => at === 0 && length >= 1800)).toBe(true);
    const bpm = ending.tempo[0]?.bpm ?? 0;
    expect((ending.chart.meter.beats * 60) / bpm).toBeGreaterThanOrEqual(2.4);
  });

  it('stops on the first beat of its last bar and leaves the rest silent', () => {
    const section = last('stop')[0];
    if (section === undefined) throw new Error('No chorus');
    const notes = section.score.events.filter(({ part, at }) => part !== 'click' && at >= 11 * 1920);
    expect(notes.length).toBeGreaterThan(0);
    expect(notes.every(({ at, length }) => at === 11 * 1920 && length <= 960)).toBe(true);
  });

  it('slows down beat by beat through its last two bars', () => {
    const steps = last('cadence', true)[0]?.tempo ?? [];
    expect(steps[0]).toEqual({ at: 0, bpm: 108 });
    expect(steps[1]?.at).toBe(10 * 1920);
    expect(steps).toHaveLength(9);
    const bpms = steps.map(({ bpm }) => bpm);
    expect(bpms).toEqual(bpms.toSorted((a, b) => b - a));
    expect(bpms.at(-1)).toBeCloseTo(108 * 0.72, 0);
    expect(
      sectionOf(testProgram('shuffle', { plan: { choruses: 1, ritard: true } }), 0, 11).tempo[0]?.bpm,
    ).toBeLessThan(108);
  });

  it('of a repeated range just ends', () => {
    const sections = sectionsOf(
      testProgram('shuffle', { plan: { choruses: 2, repeat: { from: 0, to: 3 } } }),
    );
    expect(sections.map((section) => [symbols(section), section.last])).toEqual([
      ['G7 | G7 | G7 | G7', false],
      ['G7 | G7 | G7 | G7', true],
    ]);
  });
});

describe('practice controls', () => {
  it('drop-outs silence whole bars, counted on through the choruses, and cut what rings into them', () => {
    const program = testProgram('slow-12-8', { plan: { dropOut: { play: 5, rest: 2 } } });
    for (const chorus of [0, 1, 2]) {
      const section = sectionOf(program, chorus);
      for (const [index, bar] of section.chart.bars.entries()) {
        const silent = (chorus * 12 + index) % 7 >= 5;
        const sounding = section.score.events.filter(
          (e) => e.at < bar.at + bar.length && e.at + e.length > bar.at,
        );
        expect([chorus, index, sounding.length === 0]).toEqual([chorus, index, silent]);
      }
    }
  });

  it('drop-outs count the bars of a repeated range', () => {
    const plan = { repeat: { from: 4, to: 6 }, dropOut: { play: 2, rest: 2 } };
    const heard = [0, 1, 2, 3].map((pass) => {
      const section = sectionOf(testProgram('shuffle', { plan }), pass);
      return section.chart.bars
        .map((_, bar) => (inBar(section, bar, 'drums').length > 0 ? 'x' : '.'))
        .join('');
    });
    expect(heard.join('')).toBe('xx..xx..xx..');
  });

  it.each<[Plan['sounding'], string[]]>([
    ['band', ['bass', 'chords', 'click', 'drums']],
    ['click', ['click']],
    ['drums', ['click', 'drums']],
    ['bass', ['bass', 'click']],
  ])('%s sounds %j', (sounding, parts) => {
    const section = sectionOf(testProgram('shuffle', { plan: { sounding } }), 0);
    expect([...new Set(section.score.events.map(({ part }) => part))].sort()).toEqual(parts);
    expect(partOf(section, 'click')).toHaveLength(48);
  });

  it.each<[Plan['arc'], string, string]>([
    ['trade fours', 'bbbbddddbbbb', 'ddddbbbbdddd'],
    ['trade twos', 'bbddbbddbbdd', 'bbddbbddbbdd'],
  ])('%s: band and drums take turns from the second chorus', (arc, second, third) => {
    const turns = (chorus: number) => {
      const section = sectionOf(testProgram('swing', { plan: { arc } }), chorus);
      return section.chart.bars
        .map((_, bar) => (inBar(section, bar, 'bass').filter(({ at }) => at > 0).length === 0 ? 'd' : 'b'))
        .join('');
    };
    expect([turns(0), turns(1), turns(2)]).toEqual(['bbbbbbbbbbbb', second, third]);
  });
});

describe('stop-time', () => {
  const hitTicks = (feel: FeelId, stopTime: 'first four bars' | 'whole chorus', bar: number) => {
    const section = sectionOf(testProgram(feel, { style: { stopTime } }), 1);
    return [...inBar(section, bar, 'bass'), ...inBar(section, bar, 'chords')].map(({ at }) => at);
  };

  it.each(FEEL_IDS)('in %s strikes on 1 (and at most once more) in the first four bars only', (feel) => {
    for (const bar of [0, 1, 2, 3]) {
      const ticks = new Set<number>(hitTicks(feel, 'first four bars', bar));
      expect(ticks.has(0)).toBe(true);
      expect(ticks.size).toBeLessThanOrEqual(2);
    }
    expect(new Set(hitTicks(feel, 'whole chorus', 9)).size).toBeLessThanOrEqual(2);
  });

  it('leaves the hand on the cymbal silent', () => {
    const section = sectionOf(testProgram('shuffle', { style: { stopTime: 'whole chorus' } }), 0);
    expect(partOf(section, 'drums').filter(({ pitch }) => pitch === 42 || pitch === 51)).toEqual([]);
  });
});

describe('the breathing arc', () => {
  const loudness = (feel: FeelId, seed: number) =>
    [0, 2, 5].map((chorus) => {
      const section = sectionOf(testProgram(feel, { style: { seed }, plan: { arc: 'breathe' } }), chorus);
      const events = section.score.events.filter(({ part }) => part !== 'click');
      return events.reduce((sum, { velocity }) => sum + velocity * velocity, 0);
    });

  it.each(FEEL_IDS)('%s starts sparse and grows: chorus 3 has more than the first, chorus 6 most', (feel) => {
    for (const seed of [1, 2, 3]) {
      const [sparse = 0, full = 0, fullest = 0] = loudness(feel, seed);
      expect(full).toBeGreaterThan(sparse);
      expect(fullest).toBeGreaterThan(sparse * 1.1);
    }
  });
});
