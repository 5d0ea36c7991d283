import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { PAGES } from '../../src/ui/page/entries';
import { type PagePart, type PartProps, panelOf, VIEWS } from '../../src/ui/page/page-parts';
import { openPage } from '../helpers/open-page';
import { inTurn } from '../helpers/soak';

beforeEach(() => {
  // React reports what a boundary has caught.
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
});
afterEach(() => {
  cleanup();
  for (const restore of restores.splice(0)) restore();
  vi.restoreAllMocks();
});

const restores: (() => void)[] = [];

/** Puts another drawing in the place of a part's own, until the test ends. */
const replacePart = <Given,>(part: PagePart<Given>, Show: PagePart<Given>['Show']): void => {
  const own = part.Show;
  Object.assign(part, { Show });
  restores.push(() => Object.assign(part, { Show: own }));
};

/** Lets a part throw whenever it is drawn. Returns what mends it. */
const breakPart = <Given,>(part: PagePart<Given>): (() => void) => {
  const own = part.Show;
  let broken = true;
  replacePart(part, (given) => {
    if (broken) throw new Error('on purpose');
    return own(given);
  });
  return () => {
    broken = false;
  };
};

const viewNamed = (title: string): PagePart<PartProps> => {
  const view = views.find((each) => each.title === title);
  if (view === undefined) throw new Error(`No view ${title}`);
  return view;
};

const views = Object.values(VIEWS).flat();

const playAndStop = async (user: ReturnType<typeof openPage>['user']): Promise<void> => {
  await user.click(screen.getByRole('button', { name: 'Play' }));
  await user.click(screen.getByRole('button', { name: 'Stop' }));
};

describe.each(inTurn(views, 1))('$title', (view) => {
  it('fails alone, says so, is gone on without, and comes back', async () => {
    const mend = breakPart(view);
    const { user } = openPage();
    const failed = within(screen.getByRole('alert'));
    expect(failed.getByText(`${view.title} cannot be shown.`)).toBeTruthy();
    expect(failed.getByText('What went wrong: on purpose')).toBeTruthy();
    expect(screen.getAllByRole('alert')).toHaveLength(1);
    await user.click(failed.getByRole('button', { name: 'Try again' }));
    expect(screen.getByText(`${view.title} cannot be shown.`)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Go on without it' }));
    expect(screen.queryByRole('alert')).toBeNull();
    await playAndStop(user);
    mend();
    await user.click(screen.getByRole('button', { name: `${view.title}: show it again` }));
    expect(screen.queryByRole('alert')).toBeNull();
    expect(screen.queryByText(/show it again/)).toBeNull();
  });
});

describe.each(inTurn(PAGES, 0))('$title', ({ id, title }) => {
  it('fails alone, says so, and closes', async () => {
    breakPart(panelOf(id));
    // The song panel has no button on a wide page: whatever stands in the head opens panels by this.
    replacePart(viewNamed('The head of the page'), ({ onOpen }) => (
      <button type="button" onClick={() => onOpen(id)}>
        Open it
      </button>
    ));
    const { user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Open it' }));
    expect(screen.getByText(`${title} cannot be shown.`)).toBeTruthy();
    await playAndStop(user);
    await user.click(screen.getByRole('button', { name: 'Go on without it' }));
    expect(screen.queryByRole('alert')).toBeNull();
  });
});

describe('the page', () => {
  it('draws nothing but Play and Stop, Pause and the way to them outside the parts that can fail alone', async () => {
    for (const view of views) breakPart(view);
    const { user } = openPage();
    expect(screen.getAllByRole('alert')).toHaveLength(views.length);
    for (const button of screen.getAllByRole('button', { name: 'Go on without it' }))
      await user.click(button);
    const left = screen
      .getAllByRole('button')
      .map((button) => button.getAttribute('aria-label') ?? button.textContent?.trim());
    expect(left.filter((text) => !text?.endsWith('show it again'))).toEqual(['Play', 'Pause']);
    await playAndStop(user);
  });

  it('tries what failed again with the next choice', async () => {
    const mend = breakPart(viewNamed('What fits'));
    const { user } = openPage();
    mend();
    await user.selectOptions(screen.getByLabelText('Song key'), 'A');
    expect(screen.queryByRole('alert')).toBeNull();
  });
});
