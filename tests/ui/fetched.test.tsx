import { act, cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { Suspense, useState } from 'react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Boundary } from '../../src/ui/controls/boundary';
import { createFetched, type Fetched } from '../../src/ui/state/fetched';

/** What React reports: what a boundary has caught, and what it warns of. */
let reported: readonly unknown[][] = [];
beforeEach(() => {
  reported = vi.spyOn(console, 'error').mockImplementation(() => undefined).mock.calls;
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const Part = ({ part }: { readonly part: Fetched<string> }) => <p>{part.read()}</p>;

interface BarRef {
  draw: (bar: number) => void;
}

/** Something beside the part that is drawn anew by itself. */
const Bar = ({ bar }: { readonly bar: BarRef }) => {
  const [shown, show] = useState(1);
  bar.draw = show;
  return <p>bar {shown}</p>;
};

/** A page with a part that is fetched by `load`, and Play outside it. */
const open = async (load: () => Promise<string>) => {
  const part = createFetched(load);
  await act(async () => {
    render(
      <>
        <button type="button">Play</button>
        <Boundary part="The mixer" onFailed={part.forgetFailure}>
          <Suspense fallback={<p>One moment</p>}>
            <Part part={part} />
          </Suspense>
        </Boundary>
      </>,
    );
  });
  return { part, user: userEvent.setup() };
};

describe('a part that is fetched', () => {
  it('is waited for, and drawn when it is here', async () => {
    let arrive: (text: string) => void = () => undefined;
    await open(() => new Promise((resolve) => (arrive = resolve)));
    expect(screen.getByText('One moment')).toBeTruthy();
    await act(async () => arrive('faders'));
    expect(screen.getByText('faders')).toBeTruthy();
    expect(screen.queryByText('One moment')).toBeNull();
  });

  it('draws what it waited for without a warning of React, whatever else was drawn meanwhile', async () => {
    let arrive: (text: string) => void = () => undefined;
    const part = createFetched<string>(() => new Promise((resolve) => (arrive = resolve)));
    const bar: BarRef = { draw: () => undefined };
    await act(async () => {
      render(
        <>
          <Bar bar={bar} />
          <Suspense>
            <Part part={part} />
          </Suspense>
        </>,
      );
    });
    await act(async () => bar.draw(2));
    await act(async () => arrive('faders'));
    expect(screen.getByText('faders')).toBeTruthy();
    expect(reported).toEqual([]);
  });

  it('is drawn without a wait when it was fetched before', async () => {
    const part = createFetched(async () => 'faders');
    await part.fetch();
    render(<Part part={part} />);
    expect(screen.getByText('faders')).toBeTruthy();
  });

  it('says in words that it could not be fetched, and fetches anew when asked to try again', async () => {
    const load = vi.fn<() => Promise<string>>();
    load.mockRejectedValueOnce(new TypeError('no answer')).mockResolvedValueOnce('faders');
    const { user } = await open(load);
    const alert = screen.getByRole('alert');
    expect(alert.textContent).toContain('The mixer could not be fetched.');
    expect(alert.textContent).toContain('What went wrong: no answer');
    expect(alert.textContent).not.toContain('fault of this program');
    expect(screen.getByRole('button', { name: 'Play' })).toBeTruthy();
    expect(load).toHaveBeenCalledTimes(1);
    await act(() => user.click(screen.getByRole('button', { name: 'Try again' })));
    expect(await screen.findByText('faders')).toBeTruthy();
    expect(load).toHaveBeenCalledTimes(2);
  });

  it('is not fetched twice while it is on its way or here', async () => {
    const load = vi.fn(async () => 'faders');
    const part = createFetched(load);
    expect(await Promise.all([part.fetch(), part.fetch()])).toEqual(['faders', 'faders']);
    part.forgetFailure();
    await part.fetch();
    expect(load).toHaveBeenCalledTimes(1);
  });

  it('says when it is here, once, and to nobody who has left', async () => {
    const part = createFetched(async () => 'A mixer');
    const [stays, left] = [vi.fn(), vi.fn()];
    part.onHere(stays);
    part.onHere(left)();
    expect(part.here()).toBeNull();
    await part.fetch();
    await part.fetch();
    expect([part.here(), stays.mock.calls.length, left.mock.calls.length]).toEqual(['A mixer', 1, 0]);
  });
});
