import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { transpose } from '../../../src/core/chart/build-chart';
import type { Chart } from '../../../src/core/chart/chart';
import { excerpt } from '../../../src/core/chart/excerpt';
import { onceBars } from '../../../src/core/chart/once';
import { printChart } from '../../../src/core/chart-text/print-chart';
import { type ChartReading, readChart } from '../../../src/core/chart-text/read-chart';
import { transposeText } from '../../../src/core/chart-text/transpose-text';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const OPTIONS = { tonic: 'C', mode: 'major', meter: '4/4', title: 'Own' } as const;

const read = (text: string): ChartReading => readChart(text, OPTIONS);

const bars = ({ bars: each }: Chart): string =>
  each.map(({ chords }) => chords.map(({ chord }) => chord.symbol).join(' ')).join(' | ');

const played = (text: string): string => bars(read(text).chart);

const said = (text: string): readonly string[] => read(text).problems.map(({ what }) => what);

describe('repeats and endings', () => {
  it.each([
    ['|: C | F :| x3', 'C | F | C | F | C | F'],
    ['|: C :|x3 F', 'C | C | C | F'],
    ['|: C :| 3x\nF', 'C | C | C | F'],
    ['|: C :| (x3) F', 'C | C | C | F'],
    ['|: C |1 F :|2 G | Am', 'C | F | C | G | Am'],
    ['|: C [1 F :| [2 G || Am', 'C | F | C | G | Am'],
    ['|: C |1. F :|2. G | Am |', 'C | F | C | G | Am'],
    ['|: C |1,3 F :|2,4 G :| Am', 'C | F | C | G | C | F | C | G | Am'],
    ['|: C |[1-3] F :|[4] G || Am', 'C | F | C | F | C | F | C | G | Am'],
    ['|: C | [1,2 F :|\n| [3 G ||\n| Am', 'C | F | C | F | C | G | Am'],
    ['C || F | G :| Am', 'C | F | G | F | G | Am'],
    ['|: C | F :| |: G :| || |: Am :|', 'C | F | C | F | G | G | Am | Am'],
    ['||: C | F :||: G :|| Am', 'C | F | C | F | G | G | Am'],
  ])('%s', (text, expected) => {
    expect(played(text)).toBe(expected);
    expect(said(text)).toEqual([]);
  });

  // ABC notation standard 2.1, §4.8 and §4.9 (repeat and first/second ending symbols), notes as chords.
  it('goes back as the standard says where no |: stands', () => {
    expect(played('C | F |1 G7 :|2 C |]')).toBe('C | F | G7 | C | F | C');
  });

  it('takes numbers at a bar for chords where no ending can be', () => {
    expect(played('| 1 | 4 | 1 | 5 |')).toBe('C7 | F7 | C7 | G7');
    expect(played('|1 4|6m 5/7|b7|')).toBe('C7 F7 | Am G7/B | Bb7');
  });
});

describe('the road', () => {
  it.each([
    ['C | F | Fine | G | D.C. al Fine', 'C | F | G | C | F'],
    ['C | F Fine | G D.C.', 'C | F | G | C | F'],
    ['|: C |1 F :|2 G Fine || Am | D.C. al Fine', 'C | F | C | G | Am | C | G'],
    ['C | Segno F | G Fine | Am D.S. al Fine', 'C | F | G | Am | F | G'],
  ])('%s', (text, expected) => {
    expect(played(text)).toBe(expected);
    expect(said(text)).toEqual([]);
  });

  // MusicXML 4.0, the `sound` element's segno, coda, tocoda and dalsegno: Gm, 𝄋 Cm7, F7 To Coda, D7 D.S. al Coda, 𝄌 G5.
  it('goes to the sign and on to the coda as a MusicXML player does', () => {
    expect(played('Gm | 𝄋 Cm7 | F7 To Coda | D7 D.S. al Coda | Coda: G5')).toBe(
      'Gm | Cm7 | F7 | D7 | Cm7 | F7 | G5',
    );
    expect(played('Gm\n𝄋 Cm7 | F7 to 𝄌 | D7 D.S. al 𝄌\n𝄌 G5')).toBe('Gm | Cm7 | F7 | D7 | Cm7 | F7 | G5');
  });

  it('says where it leads nowhere', () => {
    expect(said('C | D.S. al Fine')).toEqual([
      '"D.S. al Fine" goes to a sign that is not there; it goes to the beginning.',
    ]);
    expect(said('C To Coda | F D.C. al Coda')).toEqual([
      '"To Coda" goes to a coda that is not there; what follows is played.',
    ]);
  });
});

describe('sections', () => {
  const TUNE = '[A] C | F\n[B] Am | Dm\n';

  it.each([
    ['', 'C | F | Am | Dm'],
    ['Order: A A B A', 'C | F | C | F | Am | Dm | C | F'],
    ['Order: AABA', 'C | F | C | F | Am | Dm | C | F'],
    ['Order: A, then B twice, A', 'C | F | Am | Dm | Am | Dm | C | F'],
    ['Order: A three times and B', 'C | F | C | F | C | F | Am | Dm'],
    ['Order: (A B) x2', 'C | F | Am | Dm | C | F | Am | Dm'],
    ['Order: A2 B', 'C | F | C | F | Am | Dm'],
    ['[A]', 'C | F | Am | Dm | C | F'],
  ])('with %j', (order, expected) => {
    expect(played(TUNE + order)).toBe(expected);
  });

  // ABC notation standard 2.1, §3.1.9 `P:A2B.A` (parts): the order is A A B A.
  it('plays parts in the order of the standard’s example', () => {
    expect(played('Order: A2B.A\n[A] Dm | A7\n[B] Gm | Dm')).toBe('Dm | A7 | Dm | A7 | Gm | Dm | Dm | A7');
  });

  it('counts bars within a section as it is played', () => {
    const { chart } = read('Intro: C\n[A] |: F | G :|\nOrder: Intro A A');
    expect(chart.bars.map(({ place }) => `${place?.section} ${(place?.bar ?? 0) + 1}`)).toEqual([
      'Intro 1',
      ...['A 1', 'A 2', 'A 3', 'A 4'],
      ...['A 1', 'A 2', 'A 3', 'A 4'],
    ]);
    expect(read('C | F').chart.bars[0]).not.toHaveProperty('place');
  });

  it('reads a section in a key of its own, and keeps it under way to other keys', () => {
    const { chart, problems } = read('Key: C\n[A] I | IV\n[Trio]\nKey: F\nI | V7\n[A]');
    expect(problems).toEqual([]);
    expect(bars(chart)).toBe('C7 | F7 | F7 | C7 | C7 | F7');
    expect(chart.bars.map(({ key }) => key?.tonic)).toEqual([
      undefined,
      undefined,
      'F',
      'F',
      undefined,
      undefined,
    ]);
    expect(bars(transpose(chart, 2))).toBe('D7 | G7 | G7 | D7 | D7 | G7');
    expect(transpose(chart, 2).bars[2]?.key).toEqual({ tonic: 'G', mode: 'major' });
  });

  it('says what an order leaves out or does not know', () => {
    expect(said(`${TUNE}Order: A C A`)).toEqual([
      'The order does not name section B, so it is kept but not played.',
      'No section is called "C", so the order goes on without it.',
    ]);
    expect(read(`${TUNE}Order: A`).unplayed.map(({ text }) => text)).toEqual(['Am', 'Dm']);
    expect(said(`${TUNE}Order: A B\nC D.C.`)).toContain(
      'The order says what is played when, so "D.C." is not followed.',
    );
  });

  it('takes a letter in a box for a section and a chord for a chord', () => {
    expect(read('[Am] F').bars[0]?.status).not.toBe('read');
    expect(read('[A] F').chart.bars).toHaveLength(1);
  });
});

describe('lines that say something', () => {
  it('set title, key, meter, feel and tempo and take no time', () => {
    const { chart, says, problems } = read(
      'Title: Lantern Walk\nKey: F#m\nMeter: 12/8\nFeel: Slow 12/8\nTempo: ♩. = 63\ni | iv',
    );
    expect(problems).toEqual([]);
    expect(says).toMatchObject({ title: 'Lantern Walk', feel: 'Slow 12/8', tempo: 63 });
    expect(chart).toMatchObject({ title: 'Lantern Walk', tonic: 'F#', mode: 'minor' });
    expect(chart.meter.name).toBe('12/8');
    expect(bars(chart)).toBe('F#m7 | Bm7');
  });

  it('are explained where they cannot be used', () => {
    expect(said('Key: H\nTempo: fast\nC')).toEqual(['"Key: H" says no key.', '"Tempo: fast" says no tempo.']);
    expect(said('Tempo: 90\nTempo: 80\nC')).toEqual([
      '"Tempo: 80" says what a line before it has said, so it is left out.',
    ]);
  });

  it('say that the last bar is held', () => {
    expect(read('C | F 𝄐').says.fermata).toBe(true);
    expect(read('C 𝄐 | F').says.fermata).toBe(false);
  });

  it('move with the text', () => {
    expect(transposeText(read('Key: C\n[A] C7\n[B]\nKey: Eb\nEb7'), 2).text).toBe(
      'Key: D\n[A] D7\n[B]\nKey: F\nF7',
    );
  });
});

describe('rests and strokes of the band', () => {
  const doing = (text: string): string =>
    read(text)
      .chart.bars.map(({ chords }) =>
        chords
          .map(({ chord, band, length }) => `${chord.symbol} ${band ?? 'plays'} ${length / 480}`)
          .join(', '),
      )
      .join(' | ');

  it.each([
    ['C7 | N.C. | F7', 'C7 plays 4 | C7 rest 4 | F7 plays 4'],
    ['C7 N.C.', 'C7 plays 2, C7 rest 2'],
    ['C7 | N.C. | / / / / | F7', 'C7 plays 4 | C7 rest 4 | C7 rest 4 | F7 plays 4'],
    ['C7! | F7! / / C7 | G7', 'C7 stop 4 | F7 stop 3, C7 plays 1 | G7 plays 4'],
    ['C7! C7!', 'C7 stop 2, C7 stop 2'],
    ['N.C. | C7', 'C7 rest 4 | C7 plays 4'],
  ])('%s', (text, expected) => {
    expect(doing(text)).toBe(expected);
    expect(said(text)).toEqual([]);
    expect(read(printChart(read(text).chart)).chart).toEqual(read(text).chart);
  });
});

/** A tune as a tree, unfolded by what it means and written as text: the other way round than reading it. */
interface Stretch {
  readonly bars: readonly string[];
  readonly times: number;
  readonly endings: readonly (readonly string[])[];
}

const SYMBOLS = ['C7', 'F7', 'G7', 'Am7', 'Dm7', 'Bb7'] as const;
const someBars = fc.array(fc.constantFrom(...SYMBOLS), { minLength: 1, maxLength: 4 });
const stretch: fc.Arbitrary<Stretch> = fc.record({
  bars: someBars,
  times: fc.integer({ min: 1, max: 4 }),
  endings: fc.oneof(fc.constant([]), fc.array(someBars, { minLength: 2, maxLength: 3 })),
});
const tune = fc.record({
  sections: fc.array(fc.array(stretch, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 4 }),
  order: fc.array(fc.nat({ max: 3 }), { maxLength: 6 }),
});

const unfold = ({ bars: own, times, endings }: Stretch): readonly string[] =>
  endings.length > 0
    ? endings.flatMap((ending) => [...own, ...ending])
    : Array.from({ length: times }, () => own).flat();

const write = ({ bars: own, times, endings }: Stretch): string => {
  if (endings.length > 0) {
    const parts = endings.map(
      (ending, i) => `[${i + 1} ${ending.join(' | ')} ${i + 1 < endings.length ? ':|' : '||'}`,
    );
    return `|: ${own.join(' | ')} | ${parts.join(' ')}`;
  }
  return times === 1
    ? `| ${own.join(' | ')} ||`
    : `|: ${own.join(' | ')} :| ${times === 2 ? '' : `x${times}`}`;
};

/** Beats before the first bar: fewer than a bar has. */
const pickUps = fc.oneof(
  fc.constant([]),
  fc.array(fc.constantFrom(...SYMBOLS, '/', 'N.C.'), { minLength: 1, maxLength: 3 }),
);

const TWELVE = Array.from({ length: 12 }, (_, i) => i);

describe('unfolding', () => {
  it(
    'gives the bars that the tune’s own tree gives, keeps the text, prints what reads back the same, and moves round twelve fifths',
    () => {
      fc.assert(
        fc.property(tune, fc.boolean(), pickUps, ({ sections, order }, hasIntro, pickUp) => {
          const turns = order.filter((each) => each < sections.length);
          const names = [hasIntro ? 'Intro' : 'D', 'A', 'B', 'C'];
          const text = sections.map((each, i) => `[${names[i]}]\n${each.map(write).join('\n')}`).join('\n');
          const heads = [
            ...(turns.length === 0 ? [] : [`Order: ${turns.map((each) => names[each]).join(' ')}`]),
            ...(pickUp.length === 0 ? [] : [`Pick-up: ${pickUp.join(' ')}`]),
          ];
          const said = [...heads, text].join('\n');
          const played = turns.length === 0 ? [...sections.keys()] : turns;
          const wanted = played.map((each) => (sections[each] ?? []).flatMap(unfold));
          const { chart, source } = read(said);
          expect(source).toBe(said);
          expect(bars(chart)).toBe(wanted.flat().slice(0, 256).join(' | '));
          const goesOn = hasIntro ? played.findIndex((each) => each !== 0) : 0;
          const once = wanted.slice(0, Math.max(0, goesOn)).flat().length;
          expect(onceBars(chart)).toBe(once < 256 ? once : 0);
          expect((chart.pickUp?.length ?? 0) / 480).toBe(pickUp.length);
          // As text: comparing values of some hundred bars takes ten times as long as making them.
          const whole = JSON.stringify(chart);
          expect(JSON.stringify(read(printChart(chart)).chart) === whole).toBe(true);
          const some = excerpt(chart, 0, 32);
          const round = TWELVE.reduce((moved) => transpose(moved, 7), some);
          expect(JSON.stringify(round) === JSON.stringify(some)).toBe(true);
        }),
        { numRuns: soakRuns(300) },
      );
    },
    SOAK_TIMEOUT,
  );
});
