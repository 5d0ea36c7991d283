import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import type { MarkedSound } from '../../src/core/fit/mark-sounds';
import { asCents, asMidi, asPitchClass } from '../../src/core/theory/units';
import { soundName } from '../../src/ui/controls/sound-name';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const map = () => within(screen.getByRole('region', { name: 'Harp map' }));

describe('a picked note', () => {
  it.each(['pressed again', 'left with Escape'])(
    'is let go when %s, and the scale comes back',
    async (how) => {
      const { user } = openPage();
      const draw2 = map().getByRole('button', { name: /^draw 2: G/ });
      await user.click(draw2);
      expect(map().queryByText('minor blues in G')).toBeNull();
      if (how === 'pressed again') await user.click(draw2);
      else await user.keyboard('{Escape}');
      expect(map().queryByText(/392\.0 Hz/)).toBeNull();
      expect(map().getByText('minor blues in G')).toBeTruthy();
    },
  );

  it('stays when another way to the same pitch is pressed', async () => {
    const { user } = openPage();
    await user.click(map().getByRole('button', { name: /^draw 2: G/ }));
    await user.click(map().getByRole('button', { name: /^blow 3: G/ }));
    expect(map().getByText(/392\.0 Hz/)).toBeTruthy();
  });
});

describe('a sound of the Keys drawing', () => {
  it('shows how deep it is bent, beside its degree', () => {
    openPage({ version: 1, drawing: 'keys' });
    expect(map().getByRole('button', { name: /^draw 2, bent two/ }).textContent).toContain('↓//♭7');
    expect(map().getByRole('button', { name: /^draw 5: F/ }).textContent).not.toContain('/');
  });

  it('shows its expected cents when they are asked for', () => {
    openPage({ version: 1, drawing: 'keys', showCents: true, intonation: 'just-second' });
    expect(map().getByRole('button', { name: /^draw 5: F/ }).textContent).toContain('−29');
  });
});

describe('names on the map', () => {
  it('calls a chord tone what the chord calls it, double flat or not, in name and tooltip', () => {
    const sound = {
      hole: 6,
      breath: 'draw',
      technique: 'natural',
      bend: 0,
      pitch: asMidi(81),
      cents: asCents(0),
    } as const;
    const chordTone = { degree: 'bb7', name: 'Bbb', pitchClass: asPitchClass(9) };
    expect(soundName({ sound, chordTone, scaleTone: null, blueTone: null, inReach: true }, 'C')).toBe('Bbb');
  });

  it.each([
    ['C7♭9 in E flat', 10, /^blow 5: E,/, 'E5', 'octave E', 'F♭'],
    ['C♯7♭9 in E', 5, /^draw 5: E♯,/, 'E♯5', 'octave E♯', 'F'],
  ])(
    'spells %s by the chord, wherever the page names its tones',
    async (_, position, pill, title, grip, wrong) => {
      const stored = {
        version: 1,
        harpKey: 0,
        position,
        formId: 'jazz-bebop',
        drawing: 'keys',
        layer: 'none',
      };
      const { user, page, session } = openPage(stored);
      act(() => session.commands.moveTo(7));
      const third = map().getByRole('button', { name: pill });
      expect(third.title).toBe(title);
      await user.click(third);
      expect(map().getByText(new RegExp(`^${title}, `))).toBeTruthy();
      const together = screen.getByRole('region', { name: 'Chords and octaves on the harp' });
      expect(together.textContent).toContain(`${grip}.`);
      const named = [map().getByText(/ Hz:/), together, screen.getByRole('article', { name: 'Now' })];
      const words = named.flatMap((each) => each.textContent?.match(/[A-G][♭♯]?(?![a-z♭♯])/g) ?? []);
      expect(words).not.toContain(wrong);
      page.unmount();
    },
  );

  it('writes no double flat for a tone whose chord spells one', () => {
    const mark: MarkedSound = {
      sound: {
        hole: 6,
        breath: 'draw',
        technique: 'natural',
        bend: 0,
        pitch: asMidi(81),
        cents: asCents(0),
      },
      chordTone: null,
      scaleTone: { degree: 'bb7', name: 'Bbb', pitchClass: asPitchClass(9) },
      blueTone: null,
      inReach: true,
    };
    expect(soundName(mark, 'C')).toBe('A');
  });
});

describe('the drawings', () => {
  const drawn = () =>
    [...screen.getByRole('region', { name: 'Harp map' }).querySelectorAll('.drawing')].map((each) =>
      each.getAttribute('data-kind'),
    );

  it('can both be shown side by side, and say which is chosen', async () => {
    const { user } = openPage();
    expect(drawn()).toEqual(['comb']);
    await user.click(map().getByRole('button', { name: 'Both' }));
    expect(drawn()).toEqual(['comb', 'keys']);
    expect(map().getByRole('button', { name: 'Both' }).getAttribute('aria-pressed')).toBe('true');
  });

  it('marks a note picked in one of them in the other too', async () => {
    const { user } = openPage({ version: 1, drawing: 'both' });
    const [draw2] = map().getAllByRole('button', { name: /^draw 2: G/ });
    await user.click(draw2 as HTMLElement);
    const marked = map()
      .getAllByRole('button', { name: /^blow 3: G/ })
      .map((pill) => pill.dataset.picked);
    expect(marked).toEqual(['true', 'true']);
  });

  it('names black keys by the chord', () => {
    openPage({ version: 1, drawing: 'keys', harpKey: 10 });
    expect(map().getByRole('button', { name: 'Piano key E♭5' }).textContent).toBe('E♭');
  });

  const columns = (id: string) =>
    map()
      .getAllByRole('button', { name: /^(blow|draw) \d/ })
      .filter((pill) => pill.dataset.sound === id)
      .map((pill) => pill.style.gridColumn);

  it.each(['comb', 'keys'])('of a mirrored harp have the low notes on the right: %s', (drawing) => {
    openPage({ version: 1, drawing, mirrored: true });
    expect(columns('1D')).toEqual(['11']);
    expect(columns('10D')).toEqual(['2']);
  });

  it('are mirrored and have their hole numbers in large print from the Harp panel', async () => {
    const { user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Harp' }));
    await user.click(screen.getByRole('checkbox', { name: 'Low notes on the right' }));
    await user.click(screen.getByRole('checkbox', { name: 'Hole numbers in large print' }));
    expect(columns('1D')).toEqual(['11']);
    expect(document.querySelector('.drawing')?.getAttribute('data-large-holes')).toBe('true');
  });
});

describe('looking up', () => {
  const field = () => map().getByRole('textbox', { name: 'Look up' });
  const words = () => screen.queryByRole('region', { name: 'Looked up' })?.textContent ?? null;

  it('shows a chord on the harp in hand, in both drawings and in words, and goes back at Escape', async () => {
    const { user, session } = openPage({ version: 1, harpKey: 7, drawing: 'both' });
    await user.type(field(), 'Abm');
    expect(words()).toContain('A♭m on the G harp');
    expect(words()).toContain('C♭');
    expect(words()).toMatch(/A♭ ?$|in A♭/);
    expect(map().getAllByRole('button', { name: /: C♭, ♭3 of the chord/ }).length).toBeGreaterThan(1);
    expect(session.store.getState().settings.formId).toBe('quick-change-turnaround');
    await user.keyboard('{Escape}');
    expect(words()).toBeNull();
    expect(document.activeElement).not.toBe(field());
    expect(map().queryByRole('button', { name: /C♭/ })).toBeNull();
  });

  it('shows a scale by its degrees', async () => {
    const { user } = openPage();
    await user.type(field(), 'D dorian');
    expect(map().getByRole('button', { name: 'draw 5: F, ♭3 of the scale' })).toBeTruthy();
    await user.click(map().getByRole('button', { name: 'Back to the song' }));
    expect(words()).toBeNull();
  });

  it('says what it cannot read, and leaves the song on the map', async () => {
    const { user } = openPage();
    await user.type(field(), 'xyz');
    expect(map().getByRole('status').textContent).toContain('“xyz” is no chord or scale known here.');
    expect(field().getAttribute('aria-invalid')).toBe('true');
    expect(map().getByRole('button', { name: /^draw 2: G, root of the chord/ })).toBeTruthy();
  });

  it('works while the band plays, whose keys a typed letter is not', async () => {
    const { user, session } = openPage();
    await user.click(screen.getByRole('button', { name: 'Play' }));
    await user.type(field(), 'F7 ');
    expect(session.store.getState().status.kind).toBe('playing');
    expect(words()).toContain('F7 on the C harp');
  });
});
