import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import type { MarkedSound } from '../../src/core/fit/mark-sounds';
import { asCents, asMidi, asPitchClass } from '../../src/core/theory/units';
import { routeOf } from '../../src/ui/controls/path-route';
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
    expect(soundName({ sound, chordTone, scaleTone: null, blue: false, inReach: true }, 'C')).toBe('Bbb');
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
      blue: false,
      inReach: true,
    };
    expect(soundName(mark, 'C')).toBe('A');
  });
});

describe('the way of a line', () => {
  const place = (id: string, left: number, top: number) => ({
    id,
    left,
    right: left + 60,
    top,
    bottom: top + 26,
  });

  it('keeps to the gaps of the comb', () => {
    const from = place('2D', 66, 100);
    const to = place('3B', 132, 40);
    expect(routeOf([from, to], { row: 6, column: 6 })).toBe('M96 129 H129 V69 H162');
  });

  it('runs straight on the Keys drawing, and not at all between one place and itself', () => {
    const at = place('2D', 0, 0);
    expect(routeOf([at, place('3D', 60, 26)], null)).toBe('M30 13 L90 39');
    expect(routeOf([at, at], null)).toBe('');
  });
});
