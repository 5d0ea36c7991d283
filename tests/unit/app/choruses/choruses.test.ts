import { describe, expect, it } from 'vitest';
import { asSeconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createFakeLog } from '../../../helpers/fake-log';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { heardNote } from '../../../helpers/heard-note';

const open = (ladder: Partial<ReturnType<ReturnType<typeof openSession>['state']>['settings']['ladder']>) => {
  const opened = openSession(
    createKeptValues(() => createFakeStorage(), new EventTarget()),
    {
      log: createFakeLog().device,
    },
  );
  const { commands, state } = opened;
  const { plan, ladder: usual } = state().settings;
  commands.choose({ plan: { ...plan, choruses: null, countInBars: 0, intro: 'none' } });
  commands.choose({ ladder: { ...usual, ...ladder }, tempo: state().settings.tempo });
  commands.typeTempo('96');
  return opened;
};

/** Lets the end of a chorus and the first bar of the next be heard. */
const pass = ({ band }: ReturnType<typeof open>, chorus: number) => {
  band.hear(chorus, 0);
  band.hear(chorus, 11);
  band.hear(chorus + 1, 0);
};

describe('the tempo ladder on the stand', () => {
  it('climbs by a count of choruses while the band plays', async () => {
    const opened = open({ by: 'count', every: 2, step: 6 });
    await opened.commands.play();
    const tempos = [0, 1, 2, 3].map((chorus) => {
      pass(opened, chorus);
      return opened.state().settings.tempo;
    });
    expect(tempos).toEqual([96, 102, 102, 108]);
  });

  it('climbs where the player says that a chorus was clean, and a second word takes the place of the first', async () => {
    const opened = open({ by: 'clean', step: 4 });
    const { commands, state } = opened;
    await commands.play();
    pass(opened, 0);
    expect(state().settings.tempo).toBe(96);
    commands.markChorus('clean');
    expect(state().settings.tempo).toBe(100);
    commands.markChorus('trouble');
    expect(state().settings.tempo).toBe(94);
    pass(opened, 1);
    commands.markChorus('clean');
    expect(state().settings.tempo).toBe(98);
  });

  it('climbs where the ear heard a clean chorus, half-steps back after trouble, and stays where little was played', async () => {
    const opened = open({ by: 'clean', step: 4 });
    const { commands, band, microphone, state } = opened;
    await commands.listenToMe();
    await commands.play();
    let id = 0;
    const play = (name: string): void => {
      const begun = { ...heardNote([name, id, id]), id, to: null };
      id += 1;
      microphone.hear({ notes: [begun] });
      microphone.hear({ notes: [{ ...begun, to: asSeconds(id - 0.5) }] });
    };
    /** A chorus with so many notes in its first bar, which is of the home chord: G, of which 3 draw is the third. */
    const chorus = (number: number, names: readonly string[]): number => {
      band.hear(number, 0);
      names.forEach(play);
      band.hear(number, 11);
      band.hear(number + 1, 0);
      return state().settings.tempo;
    };
    const times = (count: number, name: string) => Array.from({ length: count }, () => name);
    expect(chorus(0, times(10, '3D'))).toBe(100);
    expect(state().choruses.last).toMatchObject({ outcome: 'clean', bySelf: false });
    // A flat over G7 is of neither chord nor scale.
    expect(chorus(1, times(10, "3D'''"))).toBe(98);
    expect(chorus(2, times(2, '3D'))).toBe(98);
    expect(state().log.entries[0]?.laps.map(({ tempo, judged, clean }) => [tempo, judged, clean])).toEqual([
      [96, 1, 1],
      [100, 1, 0],
      [98, 0, 0],
    ]);
  });

  it('does not count a chorus that was broken off, and begins anew with the next Play', async () => {
    const opened = open({ by: 'count', every: 1, step: 6 });
    await opened.commands.play();
    opened.band.hear(0, 5);
    opened.band.hear(1, 0);
    opened.commands.stop();
    expect(opened.state().settings.tempo).toBe(96);
    expect(opened.state().choruses.last).toBeNull();
  });

  it('is written into the log by what the player said', async () => {
    const opened = open({ by: 'clean', step: 4 });
    await opened.commands.play();
    pass(opened, 0);
    opened.commands.markChorus('clean');
    opened.commands.markChorus('fair');
    const [entry] = opened.state().log.entries;
    expect(entry?.laps).toEqual([{ tempo: 96, choruses: 1, clean: 1, judged: 1 }]);
  });
});

describe('playing from memory', () => {
  it('fades chorus by chorus, comes back when asked, and is all there at rest', async () => {
    const opened = open({ by: 'off' });
    const { commands, state } = opened;
    commands.choose({ fromMemory: true });
    await commands.play();
    pass(opened, 0);
    pass(opened, 1);
    expect(state().choruses.fade).toBe('all tones');
    commands.showAgain();
    expect(state().choruses.fade).toBe('nothing');
    pass(opened, 2);
    expect(state().choruses.fade).toBe('one tone');
    commands.markChorus('trouble');
    expect(state().choruses.fade).toBe('nothing');
    pass(opened, 3);
    commands.stop();
    expect(state().choruses.fade).toBe('nothing');
  });
});
