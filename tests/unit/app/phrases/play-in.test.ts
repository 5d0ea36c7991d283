import { afterEach, describe, expect, it } from 'vitest';
import { soundId } from '../../../../src/core/harp/tab';
import { printPhrase } from '../../../../src/core/phrase/print-phrase';
import { quantise } from '../../../../src/core/practice/quantise';
import { asBpm, asSeconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { heardNote } from '../../../helpers/heard-note';

const ended: (() => void)[] = [];
afterEach(() => {
  for (const end of ended.splice(0)) end();
});

/** A session that listens, at 60 beats a minute: a tick lasts 1/480 of a second. */
const listening = async () => {
  const storage = createFakeStorage();
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  const { commands, state, microphone, session } = opened;
  ended.push(session.dispose);
  commands.choose({ tempo: asBpm(60), style: { ...state().settings.style, swing: 1 }, changesWait: false });
  await commands.listenToMe();
  let id = 0;
  /** Hears one hole, or several on one breath: their names, lowest first. */
  const hear = (names: string, from: number, to: number): void => {
    id += 1;
    const [name = '', ...others] = names.split(' ');
    const { sounds } = state().now.tune.harp;
    const named = (wanted: string) => sounds.filter((each) => soundId(each) === wanted);
    const [sound = null] = named(name);
    const note = { ...heardNote([name, from, to]), id, sound, together: others.flatMap(named) };
    microphone.hear({ notes: [{ ...note, to: null }] });
    microphone.hear({ notes: [{ ...note, to: asSeconds(to) }] });
  };
  const tab = (steps: number): string => {
    const { playedIn } = state();
    if (playedIn === null) return '';
    return printPhrase(quantise(playedIn.notes, { ...playedIn, steps }), 'signs');
  };
  return { ...opened, hear, tab };
};

describe('a phrase that is played in', () => {
  it('begins with the first note where no band plays, and is snapped as is wanted, more than once', async () => {
    const { commands, state, hear, tab, pass } = await listening();
    commands.playIn(1);
    expect(state().playedIn).toMatchObject({ phase: 'waiting', length: 1920 });
    hear('2D', 10, 10.9);
    expect(state().playedIn?.phase).toBe('recording');
    hear('3D', 11.05, 11.5);
    hear('4D', 11.62, 12);
    hear('4B', 12.36, 13.9);
    pass();
    expect(state().playedIn?.phase).toBe('done');
    expect(tab(2)).toBe('-2:q -3:e -4 r 4:q.');
    expect(tab(3)).not.toBe(tab(2));
    commands.dropPlayIn();
    expect(state().playedIn).toBeNull();
  });

  it('has chords and splits where they were played', async () => {
    const { commands, hear, tab, pass } = await listening();
    commands.playIn(1);
    hear('4B', 10, 10.9);
    hear('4B 5B 6B', 11, 11.9);
    hear('1D 4D', 12, 12.9);
    hear('2D 3D', 13, 13.9);
    pass();
    expect(tab(2)).toBe('4:q (4 5 6) (-1 -4) (-2 -3)');
  });

  it('begins with the next bar of the band, goes on over the bar line, and ends by itself', async () => {
    const { commands, state, band, hear, tab, pass } = await listening();
    await commands.toggle();
    await expect.poll(() => band.status().kind).toBe('playing');
    band.hear(1, 0);
    commands.playIn(2);
    band.hear(1, 0, 480);
    hear('1B', 1, 2);
    band.hear(1, 1);
    band.hear(1, 1, 20);
    hear('2D', 5, 5.9);
    band.hear(1, 1, 950);
    hear('3D', 7, 7.9);
    band.hear(1, 2);
    band.hear(1, 2, 470);
    hear('4D', 10, 11.9);
    band.hear(1, 3);
    hear('5D', 14, 15);
    pass();
    expect(state().playedIn?.phase).toBe('done');
    expect(tab(2)).toBe('-2:q r -3 r | r -4:h r:q');
  });

  it('is whole where the ear hears ends early, and keeps the rests that were played', async () => {
    const { commands, hear, tab, pass } = await listening();
    commands.playIn(1);
    hear('2D', 10, 10.72);
    hear('3D', 11, 11.7);
    hear('4D', 12, 12.5);
    hear('3D', 13, 13.9);
    pass();
    expect(tab(2)).toBe('-2:q -3 -4:e r -3:q');
  });

  it('is ended early with what there is, and says nothing where nothing was heard', async () => {
    const { commands, state, tab } = await listening();
    commands.playIn(2);
    commands.endPlayIn();
    expect(state().playedIn).toMatchObject({ phase: 'done', notes: [] });
    expect(tab(2)).toBe('r:w | r');
  });
});
