import { act, cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { asPitchClass } from '../../src/core/theory/units';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const region = (name: string) => within(screen.getByRole('region', { name }));
const bar = (name: string) => region('Chart').getByRole('listitem', { name });
const current = () =>
  region('Chart')
    .getAllByRole('listitem')
    .find((item) => item.getAttribute('aria-current') === 'true');
const card = (name: 'Now' | 'Next') => within(region('What fits').getByRole('article', { name }));

describe('what a stranger finds', () => {
  it('says the song, the harp and the position in words', () => {
    openPage();
    expect(screen.getByText(/Song in/).closest('p')?.textContent).toBe(
      'Song in G, C harp, 2nd position (cross)',
    );
  });

  it('names every bar by number and chord, and starts at the first', () => {
    openPage();
    expect(region('Chart').getAllByRole('listitem')).toHaveLength(12);
    expect(current()).toBe(bar('Bar 1, G7'));
    expect(bar('Bar 9, D7')).toBeTruthy();
  });

  it('shows what fits now and next, octave by octave', () => {
    openPage();
    const third = card('Now').getByRole('row', { name: /^3 ?B/ });
    expect(third.textContent).toContain('3↓');
    expect(third.textContent).toContain('7↓');
    expect(card('Next').getByRole('row', { name: /^♭7 ?B♭/ }).textContent).toContain('3↓/');
  });

  it('says plainly what the harp cannot give', () => {
    openPage();
    expect(card('Now').getByText(/No B above hole 7, except 10 blow bent a semitone\./)).toBeTruthy();
  });

  it('tells how the third and the seventh move into the next chord', () => {
    openPage();
    expect(card('Next').getByText(/3 of G7 falls to ♭7 of C7/)).toBeTruthy();
  });

  it('has a control for each choice, under its name', () => {
    openPage();
    for (const label of ['Song key', 'Harp key', 'Position', 'Tuning', 'Form', 'Feel', 'Tempo'])
      expect(screen.getByLabelText(label)).toBeTruthy();
  });
});

describe('choosing', () => {
  it('spells another key as a musician does', async () => {
    const { user } = openPage();
    await user.selectOptions(screen.getByLabelText('Song key'), 'F');
    expect(screen.getByText(/Song in/).closest('p')?.textContent).toBe(
      'Song in F, B♭ harp, 2nd position (cross)',
    );
    expect(bar('Bar 2, B♭7')).toBeTruthy();
    expect(card('Now').getByRole('row', { name: /^♭7 ?E♭/ })).toBeTruthy();
  });

  it('changes the form', async () => {
    const { user } = openPage();
    await user.selectOptions(screen.getByLabelText('Form'), 'minor-b');
    expect(bar('Bar 9, E♭7')).toBeTruthy();
  });

  it('adds what a technique reaches', async () => {
    const { user } = openPage();
    const seventh = () => card('Next').getByRole('row', { name: /^♭7 ?B♭/ }).textContent;
    expect(seventh()).not.toContain('6↑○');
    await user.click(screen.getByRole('button', { name: 'Overbends' }));
    expect(seventh()).toContain('6↑○');
  });

  it('writes tab in the style chosen', async () => {
    const { user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Harp' }));
    await user.selectOptions(screen.getByLabelText('Tab'), 'letters');
    expect(card('Now').getByRole('row', { name: /^3 ?B/ }).textContent).toContain('3D');
  });

  it('refuses a tempo that is no number, beside the field, and keeps the old one', async () => {
    const { user } = openPage();
    const field = screen.getByLabelText('Tempo');
    await user.clear(field);
    await user.type(field, 'fast{Enter}');
    expect(screen.getByRole('alert').textContent).toMatch(/“fast” is not a number/);
    expect(field).toHaveProperty('value', '104');
  });

  it('draws the other map', async () => {
    const { user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Keys' }));
    const sounds = region('Harp map').getAllByRole('button', { name: /draw 3/ });
    expect(sounds.map((sound) => sound.getAttribute('aria-label'))).toContain('draw 3: B, 3 of the chord');
  });

  it('lets a sound be heard', async () => {
    const { band, user } = openPage();
    await user.click(region('Harp map').getByRole('button', { name: /^draw 4: D/ }));
    expect(band.asked).toContain('audition lead 74');
  });
});

describe('playing', () => {
  it('plays and stops by button and by space', async () => {
    const { band, user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Play' }));
    expect(screen.getByRole('button', { name: 'Stop' })).toBeTruthy();
    await user.keyboard(' ');
    expect(band.asked.at(-1)).toBe('stop');
  });

  it('moves the current bar with what is heard', async () => {
    const { band, user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Play' }));
    act(() => band.hear(1, 4));
    expect(current()).toBe(bar('Bar 5, C7'));
    expect(card('Now').getByText('Now, bar 5')).toBeTruthy();
    expect(card('Next').getByText('Next, bar 6')).toBeTruthy();
  });

  it('moves by bars and lines with the arrow keys', async () => {
    const { user } = openPage();
    await user.keyboard('{ArrowRight}{ArrowDown}');
    expect(current()).toBe(bar('Bar 6, C7'));
    await user.keyboard('{ArrowLeft}{ArrowUp}');
    expect(current()).toBe(bar('Bar 1, G7'));
  });

  it('repeats the range marked by shift-click, until told otherwise', async () => {
    const { session, user } = openPage();
    const repeat = () => session.store.getState().settings.plan.repeat;
    await user.keyboard('{Shift>}');
    await user.click(within(bar('Bar 4, G7')).getByRole('button'));
    await user.keyboard('{/Shift}');
    expect(repeat()).toEqual({ from: 0, to: 3 });
    await user.click(within(bar('Bar 9, D7')).getByRole('button'));
    expect(repeat()).toBeNull();
  });

  it('begins a shift-clicked range at the bar clicked last, wherever the band is', async () => {
    const { band, session, user } = openPage();
    await user.click(within(bar('Bar 3, G7')).getByRole('button'));
    await user.click(screen.getByRole('button', { name: 'Play' }));
    act(() => band.hear(1, 9));
    await user.keyboard('{Shift>}');
    await user.click(within(bar('Bar 6, C7')).getByRole('button'));
    await user.keyboard('{/Shift}');
    expect(session.store.getState().settings.plan.repeat).toEqual({ from: 2, to: 5 });
  });

  it('marks a range by touch: a finger that rests on one end, then a tap on the other', () => {
    vi.useFakeTimers();
    try {
      const { band, session } = openPage();
      const touch = (name: string, ms: number): void => {
        const button = within(bar(name)).getByRole('button');
        fireEvent.pointerDown(button, { pointerType: 'touch', button: 0 });
        act(() => vi.advanceTimersByTime(ms));
        fireEvent.pointerUp(button, { pointerType: 'touch', button: 0 });
        fireEvent.click(button);
      };
      const repeat = () => session.store.getState().settings.plan.repeat;
      touch('Bar 8, G7', 700);
      expect(repeat()).toBeNull();
      expect(session.store.getState().cursor).toBe(0);
      expect(within(bar('Bar 8, G7')).getByRole('status').textContent).toMatch(/tap the other end/);
      touch('Bar 5, C7', 80);
      expect(repeat()).toEqual({ from: 4, to: 7 });
      touch('Bar 6, C7', 80);
      expect([repeat(), session.store.getState().cursor]).toEqual([{ from: 4, to: 7 }, 5]);
      expect(band.asked).toEqual([]);
    } finally {
      vi.useRealTimers();
    }
  });

  it('cues the last chorus in the last line of the one before', async () => {
    const { band, session, user } = openPage();
    const { plan } = session.store.getState().settings;
    act(() => session.commands.choose({ plan: { ...plan, choruses: 2 } }));
    await user.click(screen.getByRole('button', { name: 'Play' }));
    const said = (index: number, at: number): string => {
      act(() => band.hear(index, at));
      const cue = document.querySelector('.where strong');
      return `${cue?.textContent}${cue?.getAttribute('data-cue') === 'true' ? ', marked' : ''}`;
    };
    expect([said(1, 7), said(1, 8), said(1, 11), said(2, 0)]).toEqual([
      'Chorus 1',
      'Last chorus next, marked',
      'Last chorus next, marked',
      'Last chorus',
    ]);
  });

  it('pauses by key and by button, and says where it goes on', async () => {
    const { band, user } = openPage();
    expect(screen.getByRole('button', { name: 'Pause' }).hasAttribute('disabled')).toBe(true);
    await user.click(screen.getByRole('button', { name: 'Play' }));
    act(() => band.hear(1, 4));
    await user.keyboard('p');
    expect(band.asked.at(-1)).toBe('pause');
    expect(screen.getByRole('button', { name: 'Stop' })).toBeTruthy();
    expect(current()).toBe(bar('Bar 5, C7'));
    await user.click(
      screen.getByRole('button', { name: 'Go on from the beginning of bar 5, without a count-in' }),
    );
    expect(band.asked.at(-1)).toBe('resume');
    await user.keyboard('p ');
    expect(band.asked.slice(-2)).toEqual(['pause', 'stop']);
  });

  it('mutes from the transport, and is heard again when the volume is moved', async () => {
    const { band, user } = openPage();
    const mute = screen.getByRole('button', { name: 'Mute the band' });
    await user.click(mute);
    expect([mute.getAttribute('aria-pressed'), band.sounds.at(-1)?.mix.master]).toEqual(['true', 0]);
    fireEvent.change(screen.getByRole('slider', { name: 'Volume of the band' }), {
      target: { value: '0.4' },
    });
    expect([mute.getAttribute('aria-pressed'), band.sounds.at(-1)?.mix.master]).toEqual(['false', 0.4]);
  });

  it('names the next harp when the key is about to move', async () => {
    const { band, session, user } = openPage();
    act(() =>
      session.commands.choose({
        plan: { ...session.store.getState().settings.plan, keys: { kind: 'fourths' } },
      }),
    );
    await user.click(screen.getByRole('button', { name: 'Play' }));
    act(() => band.hear(1, 11));
    expect(card('Next').getByText('Take the F harp.')).toBeTruthy();
  });

  it('names a section in another key a line ahead, with its position and the harp that would keep the song’s', async () => {
    const { band, user } = openPage({ version: 1, formId: 'strains' });
    await user.click(screen.getByRole('button', { name: 'Play' }));
    act(() => band.hear(1, 23));
    expect(screen.queryByRole('region', { name: 'Next section' })).toBeNull();
    act(() => band.hear(1, 24));
    expect(screen.getByRole('region', { name: 'Next section' }).textContent).toBe(
      'Trio in C1st position (straight) on the C harp, or take the F harp',
    );
  });
});

describe('reading by ear', () => {
  it('has Play within three tabs', async () => {
    const { user } = openPage();
    await user.tab();
    expect(document.activeElement?.textContent).toBe('Skip to Play');
    await user.keyboard('{Enter}');
    // Asked for by a part of its name too: nothing else on the page may be taken for it.
    expect(document.activeElement).toBe(screen.getByRole('button', { name: /Play/ }));
  });

  /** What the live region says from bar to bar over one chorus and the beginning of the next. */
  const announced = async (announcements: 'off' | 'places' | 'chords') => {
    const { band, session, user } = openPage();
    const plan = { ...session.store.getState().settings.plan, turnarounds: 'as written' as const };
    act(() => session.commands.choose({ announcements, plan }));
    await user.click(screen.getByRole('button', { name: 'Play' }));
    const said: string[] = [];
    // One element for good: a reader does not follow a live region that is exchanged.
    const live = screen.getByRole('status', { name: 'Announcements' });
    const region = () => live.textContent ?? '';
    for (const [section, bars] of [
      [1, 12],
      [2, 1],
    ] as const)
      for (let at = 0; at < bars; at += 1) {
        act(() => band.hear(section, at));
        if (region() !== said.at(-1)) said.push(region());
      }
    return said;
  };

  it('is told the chords as they change over one chorus, once a bar', async () => {
    const said = await announced('chords');
    expect(said[0]).toMatch(/Twelve bars.*, G, C harp, Chorus 1, G7$/);
    expect(said.slice(1)).toEqual(['C7', 'G7', 'C7', 'G7', 'D7', 'C7', 'G7', 'D7', 'Chorus 2, G7']);
  });

  it('is told of a choice with the next bar, not within one', async () => {
    const { band, session, user } = openPage();
    act(() => session.commands.choose({ announcements: 'places' }));
    await user.click(screen.getByRole('button', { name: 'Play' }));
    act(() => band.hear(1, 2));
    const region = screen.getByRole('status', { name: 'Announcements' });
    const before = region.textContent;
    act(() => session.commands.chooseSongKey(asPitchClass(9)));
    act(() => band.hear(1, 2));
    expect(region.textContent).toBe(before);
    act(() => band.hear(1, 3));
    expect(region.textContent).toBe('A, D harp');
  });

  it('is told only form, key and chorus where that is chosen, and nothing unasked', async () => {
    const said = await announced('places');
    expect(said[0]).toMatch(/Twelve bars.*, G, C harp, Chorus 1$/);
    expect(said.slice(1)).toEqual(['Chorus 2']);
    cleanup();
    expect(await announced('off')).toEqual(['']);
  });
});

describe('panels', () => {
  it.each([
    ['Harp', 'Put the harp in hand into the case'],
    ['Band', 'New take'],
  ])('opens %s, closes it on Escape and gives the focus back', async (name, inside) => {
    const { user } = openPage();
    const opener = screen.getByRole('button', { name });
    await user.click(opener);
    expect(within(screen.getByRole('region', { name })).getByRole('button', { name: inside })).toBeTruthy();
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('region', { name })).toBeNull();
    expect(document.activeElement).toBe(opener);
  });

  it('mutes a part', async () => {
    const { band, user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Band' }));
    await user.click(screen.getByRole('button', { name: 'Mixer' }));
    await user.click(screen.getByRole('button', { name: 'Mute Drums' }));
    expect(band.sounds.at(-1)?.mix.channels.drums.muted).toBe(true);
  });

  it('gives the cautions for ears, breath and reeds', async () => {
    const { user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Help' }));
    await user.click(screen.getByRole('button', { name: 'Care' }));
    const text = screen.getByRole('region', { name: 'Care' }).textContent;
    for (const word of ['audiologist', 'doctor', 'light-headed', 'not from force', 'teacher'])
      expect(text).toContain(word);
  });
});

describe('bad circumstances', () => {
  it('shows what it could not read of kept settings', () => {
    openPage('{broken');
    expect(screen.getByText(/settings are damaged/)).toBeTruthy();
  });

  it('shows an interruption and lets it be closed', async () => {
    const { band, user } = openPage();
    act(() => band.report({ kind: 'interrupted' }));
    expect(screen.getByText(/sound was interrupted/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Got it' }));
    expect(screen.queryByText(/sound was interrupted/)).toBeNull();
  });
});
