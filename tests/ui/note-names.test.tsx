import { act, cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import { ENTRIES } from '../../src/ui/page/entries';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

/** A note or the root of a chord in English; an A before another word is an article. */
const ENGLISH_NOTE =
  /(?<![A-Za-z\d])(?:A(?! (?!harp|minor|major)\S)|[B-G])[♭♯]?(?=$|[^A-Za-z]|m(?![a-z])|maj|dim|aug|sus)/g;

/** What shows what is typed, keys of the keyboard, and the choice of names itself. */
const ENGLISH_ALWAYS = 'textarea, code, dt, option, .chart-help, .text-box, [data-keys]';

/** Every text of an element and below, names for screen readers and titles too. */
const textsOf = (root: Element): readonly string[] =>
  [root, ...root.querySelectorAll('*')]
    .filter((element) => element.closest(ENGLISH_ALWAYS) === null)
    .flatMap((element) => [
      ...['aria-label', 'title'].map((name) => element.getAttribute(name) ?? ''),
      ...[...element.childNodes]
        .filter(({ nodeType }) => nodeType === Node.TEXT_NODE)
        .map(({ textContent }) => textContent ?? ''),
    ]);

const KEYBOARD_HELP = /^Keys on a note:/;

const notesIn = (root: Element): readonly string[] =>
  textsOf(root).filter((text) => text.search(ENGLISH_NOTE) >= 0 && !KEYBOARD_HELP.test(text));

/** How often each note is named. */
const counts = (root: Element): Readonly<Record<string, number>> => {
  const found: Record<string, number> = {};
  for (const text of textsOf(root))
    for (const [note] of text.matchAll(/(?<![A-Za-z\d])[A-H][♭♯]?(?=$|[^A-Za-z]|m(?![a-z])|sus)/g))
      found[note] = (found[note] ?? 0) + 1;
  return found;
};

const openIn = (noteNames: 'english' | 'do') =>
  openPage(
    storableSettings({
      ...DEFAULT_SETTINGS,
      noteNames,
      harpKey: DEFAULT_SETTINGS.harpKey,
      formId: 'jazz-swing',
      drawing: 'both',
      besideTab: 'both',
      line: { ...DEFAULT_SETTINGS.line, kind: 'guide tones' },
    }),
  );

const stand = (): Element => document.body;

const panel = (): Element => {
  const open = document.querySelector('.panel');
  if (open === null) throw new Error('No panel is open');
  return open;
};

describe('the page in other names', () => {
  it('names no note by its letter on the stand, in any panel, on Stage or on paper, once they are do, re, mi', async () => {
    const { session } = openIn('do');
    act(() => session.commands.keepSong('Wet boots'));
    expect(notesIn(stand())).toEqual([]);
    expect(stand().textContent).toContain('Song in Sol, Do harp');
    for (const { text, pages } of ENTRIES) {
      fireEvent.click(screen.getByRole('button', { name: text }));
      for (const page of pages) {
        if (pages.length > 1)
          fireEvent.click(screen.getAllByRole('button', { name: page.text }).at(-1) as Element);
        expect([page.id, notesIn(panel())]).toEqual([page.id, []]);
      }
    }
    act(() => window.dispatchEvent(new Event('beforeprint')));
    const paper = screen.getByRole('article', { name: 'The song on paper' });
    expect([paper.textContent?.includes('Over Sol7'), notesIn(paper)]).toEqual([true, []]);
    fireEvent.click(screen.getByRole('button', { name: 'Stage' }));
    const stage = await screen.findByRole('region', { name: 'Stage' }, { timeout: 20_000 });
    expect(notesIn(stage)).toEqual([]);
  });

  it('names B and B flat H and B, as often as before, once that is chosen', () => {
    const { session } = openIn('english');
    const { B: naturals = 0, 'B♭': flats = 0, H: none = 0, ...others } = counts(stand());
    expect([naturals > 5, flats > 2, none]).toEqual([true, true, 0]);
    act(() => session.commands.choose({ noteNames: 'german' }));
    expect(counts(stand())).toEqual({ ...others, H: naturals, B: flats });
  });

  it('counts in the key where they are numbers, and leaves keys and harps their letters', () => {
    const { session } = openIn('english');
    act(() => session.commands.choose({ noteNames: 'numbers' }));
    expect(screen.getByRole('button', { name: 'Bar 1, 1⁷: start here' })).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Bar 2, 4⁷: start here' })).toBeTruthy();
    expect(stand().textContent).toContain('Song in G, C harp');
    expect(screen.getAllByRole('button', { name: 'draw 3: 3, 3 of the chord' })).not.toEqual([]);
  });
});
