import { expect, it } from 'vitest';
import type { Program } from '../../../../src/core/arranger/program';
import { sectionAt } from '../../../../src/core/arranger/section-at';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createSession } from '../../../helpers/create-session';
import { createFakeBand } from '../../../helpers/fake-band';
import { createFakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';

const open = () => {
  const band = createFakeBand();
  const played: Program[] = [];
  let seed = 100;
  const session = createSession({
    band: {
      ...band,
      play: (program, sound, fromBar) => {
        played.push(program);
        return band.play(program, sound, fromBar);
      },
    },
    kept: createKeptValues(() => createFakeStorage(), new EventTarget()),
    newSeed: () => {
      seed += 1;
      return seed;
    },
    later: () => () => {},
    takeAway: createFakeTakeAway(),
    ownSounds: createFakeOwnSounds(),
  });
  return { session, played };
};

const firstChorus = (program: Program): string => JSON.stringify(sectionAt(program, 1)?.score.events);

it('every Play is a take of its own, and what was heard is the take that is kept', async () => {
  const { session, played } = open();
  for (let i = 0; i < 3; i += 1) {
    await session.commands.play();
    expect(session.store.getState().settings.style.seed).toBe(played.at(-1)?.style.seed);
    session.commands.stop();
  }
  expect(new Set(played.map(firstChorus)).size).toBe(3);
});

it('with the same take every Play is the same, note for note', async () => {
  const { session, played } = open();
  session.commands.choose({ sameTake: true });
  for (let i = 0; i < 2; i += 1) {
    await session.commands.play();
    session.commands.stop();
  }
  expect(new Set(played.map(firstChorus)).size).toBe(1);
});

it('a take that comes with Play is no choice: undoing lays back what the player chose, and redoing stays', async () => {
  const { session } = open();
  const { commands, store } = session;
  commands.typeTempo('90');
  await commands.play();
  commands.stop();
  commands.undoChoice();
  expect(store.getState().settings.tempo).toBe(104);
  await commands.play();
  commands.stop();
  commands.redoChoice();
  expect(store.getState().settings.tempo).toBe(90);
});
