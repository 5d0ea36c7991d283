import { act, cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { FORM_IDS } from '../../src/core/chart/forms';
import type { OwnChart } from '../../src/core/chart-text/own-chart';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import type { Settings } from '../../src/core/settings/settings';
import { chartFor } from '../../src/core/song/chosen-chart';
import { chordsByTime, PAPER, type PrintLoad, planPrint } from '../../src/core/song/print-plan';
import { tuneFor } from '../../src/core/song/tune';
import { createKeptValues } from '../../src/storage/kept-values';
import type { PrintedLine } from '../../src/ui/print/print-chart';
import { PrintPage } from '../../src/ui/print/print-page';
import { SessionProvider } from '../../src/ui/state/session-context';
import { openSession } from '../helpers/fake-session';
import { createFakeStorage } from '../helpers/fake-storage';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const own = (text: string): OwnChart => ({
  id: 'chart-1',
  name: 'Thursday',
  text,
  tonic: 'G',
  mode: 'major',
  meter: '4/4',
});

const print = (change: Partial<Settings> = {}, charts: readonly OwnChart[] = [], line?: PrintedLine) => {
  const settings = { ...DEFAULT_SETTINGS, ...change };
  const tune = tuneFor(settings, chartFor(settings, charts));
  const { session } = openSession(createKeptValues(() => createFakeStorage(), window));
  render(
    <SessionProvider session={session}>
      <PrintPage settings={settings} tune={tune} line={line} />
    </SessionProvider>,
  );
  return within(screen.getByRole('article', { name: 'The song on paper' }));
};

const drawing = (name: string): readonly string[] =>
  [...screen.getByRole('img', { name }).querySelectorAll('text')].map(({ textContent }) => textContent);

describe('the song on paper', () => {
  it('is there only while it is printed', () => {
    openPage();
    const paper = () => screen.queryByRole('article', { name: 'The song on paper' });
    expect(paper()).toBeNull();
    act(() => window.dispatchEvent(new Event('beforeprint')));
    expect(paper()).not.toBeNull();
    act(() => window.dispatchEvent(new Event('afterprint')));
    expect(paper()).toBeNull();
  });

  it('says song, harp and position', () => {
    const paper = print();
    expect(paper.getByRole('heading', { level: 1 }).textContent).toBe(
      'Twelve bars, quick change with turnaround',
    );
    expect(paper.getByText('Song in G, C harp, 2nd position (cross)')).toBeTruthy();
    expect(paper.getByText('Shuffle, 4/4, 104 beats a minute')).toBeTruthy();
  });

  it('has every bar of an own chart, in the song’s key', () => {
    const paper = print({ formId: 'chart-1', harpKey: DEFAULT_SETTINGS.harpKey, position: 3 }, [
      own('G6 | Am7 D7'),
    ]);
    expect(paper.getByRole('heading', { level: 1 }).textContent).toBe('Thursday');
    const bars = within(paper.getAllByRole('list')[0] as HTMLElement).getAllByRole('listitem');
    expect(bars.map(({ textContent }) => textContent)).toEqual(['1D6', '2Em7A7']);
  });

  it('tells chord tones on the harp by their degrees', () => {
    print();
    const texts = drawing('Over C7, on the harp').join(' ');
    expect(texts).toMatch(/^blow draw bends 1 2 3 4 5 6 7 8 9 10 R C D 3 E 5 G 5 G B ♭7 B♭ /);
  });

  it('draws only what the player reaches', () => {
    const technique = { drawBends: false, blowBends: false, overbends: false, off: [] };
    print({ technique });
    expect(drawing('Over C7, on the harp')).not.toContain('♭7');
    expect(screen.queryByText(/Dashed/)).toBeNull();
    cleanup();
    print({ technique: { ...technique, overbends: true } });
    expect(drawing('Over C7, on the harp')).toContain('○♭7');
    expect(screen.getByText(/Dotted, ○: overbend/)).toBeTruthy();
  });

  it('lays the chosen scale out as tab, and does without where none is chosen', () => {
    const paper = print();
    const runs = within(
      paper.getByRole('heading', { name: /Minor blues in G/ }).parentElement as HTMLElement,
    ).getAllByRole('list');
    expect([...(runs[0]?.querySelectorAll('b') ?? [])].map(({ textContent }) => textContent)).toEqual([
      '2↓',
      '3↓/',
      '4↑',
      '4↓/',
      '4↓',
      '5↓',
      '6↑',
    ]);
    cleanup();
    expect(print({ layer: 'none' }).queryByRole('heading', { level: 2 })).toBeNull();
    expect(screen.getByText('All notes')).toBeTruthy();
  });

  it('puts a line as tab under its bars', () => {
    const line = { name: 'a line of guide tones', tabs: Array.from({ length: 12 }, (_, i) => `${i + 1}↓`) };
    const paper = print({}, [], line);
    const bars = within(paper.getAllByRole('list')[0] as HTMLElement).getAllByRole('listitem');
    expect(bars.map(({ textContent }) => textContent).slice(0, 2)).toEqual(['1G71↓', '2C72↓']);
    expect(paper.getByText(/Under the bars: a line of guide tones/)).toBeTruthy();
  });

  it('names the chords there was no room to draw', () => {
    print({ formId: 'jazz-bebop' });
    expect(screen.getByText(/Not drawn: E7\./)).toBeTruthy();
  });
});

describe('the layout of the sheet', () => {
  const load = (change: Partial<PrintLoad> = {}): PrintLoad => ({
    bars: 12,
    tabbed: false,
    combs: [
      { above: 1, below: 3 },
      { above: 1, below: 2 },
      { above: 1, below: 3 },
      { above: 1, below: 4 },
    ],
    holes: 10,
    scaleRuns: 2,
    ...change,
  });

  it('draws a three-chord blues and its scale large, two to a line, holes in line', () => {
    expect(planPrint(load())).toMatchObject({
      chartColumns: 1,
      combColumns: 2,
      named: true,
      combLines: [
        { combs: [0, 1], above: 1, below: 3 },
        { combs: [2, 3], above: 1, below: 4 },
      ],
    });
  });

  it('sets long charts in two columns', () => {
    expect([planPrint(load({ bars: 40 })).chartColumns, planPrint(load({ bars: 41 })).chartColumns]).toEqual([
      1, 2,
    ]);
  });

  it('keeps the scale when chords must go, and never makes lines too small to read', () => {
    for (const bars of [1, 4, 12, 16, 24, 40, 64, 128]) {
      for (const tabbed of [false, true]) {
        for (const chords of [1, 3, 8, 20]) {
          const combs = Array.from({ length: chords + 1 }, () => ({ above: 3, below: 4 }));
          const plan = planPrint(load({ bars, tabbed, combs, scaleRuns: 3 }));
          const drawn = plan.combLines.flatMap((line) => line.combs);
          if (drawn.length > 0) expect(drawn.at(-1)).toBe(chords);
          expect(plan.rowHeight).toBeGreaterThanOrEqual(7);
          const rows = Math.ceil(bars / (4 * plan.chartColumns));
          expect(rows * plan.rowHeight).toBeLessThan(PAPER.height);
        }
      }
    }
  });

  it('takes the chords that sound longest first', () => {
    const settings = { ...DEFAULT_SETTINGS, formId: 'standard' };
    const symbols = chordsByTime(chartFor(settings, [])).map(({ symbol }) => symbol);
    expect(symbols).toEqual(['G7', 'C7', 'D7']);
  });

  it.each(FORM_IDS)('finds room for the harp under %s', (formId) => {
    print({ formId });
    expect(screen.getAllByRole('img').length).toBeGreaterThanOrEqual(4);
  });
});
