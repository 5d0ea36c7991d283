import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const captions = (name: 'Now' | 'Next'): readonly (string | null)[] =>
  within(screen.getByRole('article', { name }))
    .getAllByRole('table')
    .map((table) => table.querySelector('caption')?.textContent ?? null);

it('reads two chords of a crowded bar at once, and names all of them', () => {
  const { session } = openPage();
  const { commands } = session;
  act(() => {
    commands.newChart();
    commands.editChart({ text: '| G G7/B C C#dim7 | G C D7 G |' });
    commands.saveChart();
  });
  const head = within(screen.getByRole('article', { name: 'Now' })).getByRole('banner', { hidden: true });
  expect(head.querySelectorAll('.chord')).toHaveLength(4);
  expect(captions('Now')).toEqual(['G', 'G7/B']);
  expect(captions('Next')).toEqual(['G', 'C']);
});

it('sets a pick-up over the first bar, marks an introduction, and says that the band rests where no chord comes', () => {
  const { session } = openPage();
  const { commands } = session;
  act(() => {
    commands.newChart();
    commands.editChart({ text: 'Pick-up: D7 /\n[Intro] G7 | N.C.\n[A] G7 | G7' });
    commands.saveChart();
  });
  expect(within(screen.getByRole('article', { name: 'Next' })).getByText('The band rests.')).toBeTruthy();
  const chart = within(screen.getByRole('region', { name: 'Chart' }));
  expect(chart.getByText('Pick-up: D7, 2 beats')).toBeTruthy();
  expect(chart.getByText('Intro 1×')).toBeTruthy();
});
