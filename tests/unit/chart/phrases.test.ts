/** Where phrases begin and end. Lines of four bars and halves of eight: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import type { FormId } from '../../../src/core/chart/forms';
import { phrasesOf } from '../../../src/core/chart/phrases';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { asPitchClass } from '../../../src/core/theory/units';

const SIGNS = { nothing: '.', phrase: 'p', stretch: 's', chorus: 'c' } as const;

const endsOf = (bars: Parameters<typeof phrasesOf>[0]): string =>
  phrasesOf(bars)
    .map(({ ends }) => SIGNS[ends])
    .join('');

const form = (id: FormId) => buildChart({ form: id, key: asPitchClass(7), meter: '4/4' }).bars;

const typed = (text: string) => {
  const { chart } = readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Typed' });
  if (chart === null) throw new Error('The test’s chart cannot be read');
  return chart.bars;
};

describe('phrases', () => {
  it.each([
    ['standard', '...p...p...c'],
    ['eight-circle', '...p...c'],
    ['sixteen-a', '...p...s...p...c'],
    ['twenty-four', '...p...s...p...s...p...c'],
    ['strains', `...p...p...s${'...p...s'.repeat(5)}...p...c`],
  ] as const)('of %s end with its lines', (id, ends) => {
    expect(endsOf(form(id))).toBe(ends);
  });

  it('are counted from the beginning of every section, whatever stands before it', () => {
    const text = '[Intro]\nG7 | D7\n[A]\nG7 | C7 | G7 | D7 | G7 | D7\n[B]\nC7 | C7 | G7 | G7 | D7';
    expect(endsOf(typed(text))).toBe('.s...p.s....c');
  });

  it('begin anew with a section that is played again, and call it by its name', () => {
    const text = 'Order: A A B A\n[A]\nG7 | C7 | G7 | D7\n[B]\nC7 | C7 | D7 | D7';
    const phrases = phrasesOf(typed(text));
    expect(endsOf(typed(text))).toBe('...s...s...s...c');
    expect([0, 4, 8, 12].map((bar) => phrases[bar]?.name)).toEqual(['A', 'A', 'B', 'A']);
    expect([0, 4, 8, 12].map((bar) => phrases[bar]?.stretch)).toEqual([0, 1, 2, 3]);
  });

  it('have no bar of their own: one that is left over goes with the phrase before it', () => {
    expect(endsOf(Array.from({ length: 9 }, () => ({})))).toBe('...p....c');
    expect(endsOf(Array.from({ length: 10 }, () => ({})))).toBe('...p...p.c');
    expect(endsOf([{}])).toBe('c');
  });
});
