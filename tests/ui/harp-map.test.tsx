import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import type { MarkedSound } from '../../src/core/harp/mark-sounds';
import { asCents, asMidi, asPitchClass } from '../../src/core/theory/units';
import { routeOf } from '../../src/ui/path-route';
import { plainName, soundName } from '../../src/ui/sound-name';
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
  it.each([
    [64, 'Db', 'E'],
    [71, 'Gb', 'B'],
    [69, 'Eb', 'A'],
    [65, 'F#', 'F'],
    [70, 'Eb', 'Bb'],
  ])('spells %i in %s as %s', (pitch, tonic, name) => {
    expect(plainName(pitch, tonic)).toBe(name);
  });

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
