import { act, cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { abcMelody } from '../../src/core/melody/abc-melody';
import { createKeptValues } from '../../src/storage/kept-values';
import { PhrasesPanel } from '../../src/ui/panels/phrases/phrases-panel';
import { SessionProvider } from '../../src/ui/state/session-context';
import { openSession } from '../helpers/fake-session';
import { createFakeStorage } from '../helpers/fake-storage';
import { createFakeTakeAway } from '../helpers/fake-take-away';

afterEach(cleanup);

const openPanel = async () => {
  const melodies = {
    read: async (bytes: Uint8Array) => {
      const melody = abcMelody(new TextDecoder().decode(bytes));
      return typeof melody === 'string' ? melody : [melody];
    },
  };
  const { saver } = createFakeTakeAway();
  const opened = openSession(
    createKeptValues(() => createFakeStorage(), window),
    { phrases: { melodies, saver } },
  );
  const panel = <PhrasesPanel onClose={() => undefined} />;
  await act(async () => render(<SessionProvider session={opened.session}>{panel}</SessionProvider>));
  const tab = () => screen.getByRole<HTMLTextAreaElement>('textbox', { name: 'Tab' });
  return { ...opened, tab, user: userEvent.setup() };
};

describe('writing a phrase', () => {
  it('is one phrase as tab and as a grid: by button, by key, and back', async () => {
    const { tab, user } = await openPanel();
    await user.type(tab(), '-2:q -3');
    const notes = () =>
      screen.getAllByRole('button', { name: /^Note/ }).map((note) => note.getAttribute('aria-label'));
    expect(notes()).toEqual([
      'Note 1: 2 draw, bar 1, beat 1, 1 beat',
      'Note 2: 3 draw, bar 1, beat 2, 1 beat',
    ]);
    await user.click(screen.getByRole('button', { name: /^Note 2/ }));
    await user.keyboard('.{ArrowRight}{Shift>}{ArrowRight}{/Shift}a');
    expect(tab().value).toBe("-2:q r:e -3':q. -3' r:h.+e");
    await user.keyboard('{Control>}z{/Control}{Control>}z{/Control}');
    await user.click(screen.getByRole('button', { name: 'Redo' }));
    expect(tab().value).toBe("-2:q r:e -3':q. r:q");
    await user.click(screen.getByRole('button', { name: 'Delete' }));
    expect(tab().value).toBe('-2:q r:h.');
  });

  it('is kept with tags and found by them', async () => {
    const { tab, user, state } = await openPanel();
    await user.type(tab(), '-2:w');
    const [name] = screen.getAllByRole('textbox', { name: 'Name' });
    await user.type(name ?? tab(), 'Hail on the roof');
    await user.type(screen.getByRole('textbox', { name: /^Tags/ }), 'rain, slow');
    await user.click(screen.getByRole('button', { name: 'Keep the phrase' }));
    expect(state().phrasebook.phrases[0]).toMatchObject({ name: 'Hail on the roof', tags: ['rain', 'slow'] });
    await user.type(screen.getByRole('searchbox', { name: /^Find by name/ }), 'slow');
    const headings = screen.getAllByRole('heading', { level: 4 }).map(({ textContent }) => textContent);
    expect(headings.filter((each) => each === 'Hail on the roof')).toHaveLength(1);
    expect(headings).not.toContain('Coat hooks');
  });

  it('takes the tab of a melody from a file, for the harp that plays it best', async () => {
    const { tab, user } = await openPanel();
    await user.click(screen.getByText('From a melody: note names, or a file'));
    const input = screen.getByLabelText('File with a melody: MIDI, ABC or MusicXML');
    await user.upload(input, new File(["X:1\nT:Gate\nL:1/4\nK:C\nc e g c'|"], 'gate.abc'));
    expect(await screen.findByText('“Gate” was read.')).toBeTruthy();
    const [best] = screen.getAllByText(/harp, .*position/);
    expect(best?.textContent).toBe('C harp, 1st position (straight)');
    await user.click(screen.getAllByRole('button', { name: /^Take this tab/ })[0] ?? input);
    expect(tab().value).toBe('4:q 5 6 7');
    await user.upload(input, new File(['nothing'], 'x.abc'));
    expect(await screen.findByText(/no ABC tune/)).toBeTruthy();
  });
});

describe('exercises', () => {
  it('are kept from the stand, changed, deleted and brought back', async () => {
    const { user, state } = await openPanel();
    await user.click(screen.getByText('Exercises'));
    await user.click(screen.getByText('Keep what is on the stand as an exercise'));
    await user.type(screen.getByRole('textbox', { name: 'Name of the exercise' }), 'Thursday');
    await user.click(screen.getByRole('button', { name: 'Keep the exercise' }));
    expect(state().phrasebook.exercises.map(({ name }) => name)).toEqual(['Thursday']);
    await user.click(screen.getByRole('button', { name: 'Change Thursday' }));
    const tags = screen.getAllByRole('textbox', { name: /^Its tags/ }).at(-1);
    await user.type(tags ?? document.body, 'rain, slow');
    await user.click(screen.getByRole('button', { name: 'Keep the change' }));
    await user.type(screen.getByRole('searchbox', { name: /^Find an exercise/ }), 'rain');
    expect(screen.queryByRole('button', { name: 'Put “First evening” on the stand' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Delete Thursday' }));
    expect(state().phrasebook.exercises).toEqual([]);
    await user.click(screen.getByRole('button', { name: 'Bring it back' }));
    expect(state().phrasebook.exercises[0]).toMatchObject({ name: 'Thursday', tags: ['rain', 'slow'] });
  });
});
