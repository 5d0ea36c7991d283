import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../../src/core/settings/defaults';
import { heldWords } from '../../../../src/core/song/held-choices';
import { ENGLISH } from '../../../../src/core/theory/note-names';
import { asBpm, asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const open = () => {
  const storage = createFakeStorage();
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  return { ...opened, kept: () => JSON.parse(storage.getItem('combshed.settings') ?? '{}') };
};

const D_KEY = asPitchClass(2);

/** In the first chorus, with changes that wait. */
const openWaiting = async () => {
  const opened = open();
  opened.commands.choose({ changesWait: true });
  await opened.commands.play();
  opened.band.hear(1, 4);
  return opened;
};

describe('undoing choices', () => {
  it('takes back and makes again, names what it was, and keeps the outcome', () => {
    const { commands, state, kept } = open();
    commands.nudgeTempo(2);
    commands.chooseForm('standard');
    commands.undoChoice();
    expect([state().settings.formId, state().taken]).toEqual([DEFAULT_SETTINGS.formId, 'Undone: form']);
    commands.undoChoice();
    expect([state().settings.tempo, kept().tempo]).toEqual([104, 104]);
    commands.undoChoice();
    commands.redoChoice();
    expect([state().settings.tempo, kept().tempo, state().taken]).toEqual([106, 106, 'Made again: tempo']);
  });

  it('undoes a drag at once, but choices apart one by one', () => {
    const { commands, state, pass } = open();
    for (const master of [0.6, 0.5, 0.4]) commands.setMaster(master);
    pass();
    commands.setMaster(0.2);
    commands.undoChoice();
    expect(state().settings.mix.master).toBe(0.4);
    commands.undoChoice();
    expect(state().settings.mix.master).toBe(DEFAULT_SETTINGS.mix.master);
  });

  it('tells a playing band', async () => {
    const { commands, band } = open();
    await commands.play();
    band.hear(1, 0);
    commands.chooseSongKey(D_KEY);
    commands.undoChoice();
    expect(band.programs.map(({ chart }) => chart.key)).toEqual([7, 2, 7]);
  });
});

describe('changes that wait for the next chorus', () => {
  it('leave what is heard alone, tell the band from which chorus, and say what waits', async () => {
    const { commands, state, band, kept } = await openWaiting();
    commands.chooseSongKey(D_KEY);
    commands.typeTempo('120');
    expect([state().tune.chart.key, state().settings.tempo, state().now.tune.chart.key]).toEqual([7, 104, 7]);
    expect(band.programs.at(-1)).toMatchObject({
      chart: { key: 7 },
      tempo: 104,
      later: { from: 1, program: { chart: { key: 2 }, tempo: 120 } },
    });
    const { waiting } = state();
    expect(waiting && heldWords(waiting.held, waiting.tune, ENGLISH)).toBe('D on a G harp, tempo 120');
    expect([kept().tempo, kept().harpKey]).toEqual([120, 7]);
  });

  it('show the next harp on the bar before, and come with the first bar of the chorus', async () => {
    const { commands, state, band } = await openWaiting();
    commands.chooseSongKey(D_KEY);
    commands.choosePosition(1);
    band.hear(1, 11);
    expect([state().next?.tune.harp.key, state().next?.tune.position, state().now.tune.position]).toEqual([
      7, 1, 2,
    ]);
    band.hear(2, 0);
    expect([state().waiting, state().tune.chart.key, state().now.tune.position]).toEqual([null, 7, 1]);
    expect(band.programs.at(-1)?.later).toBeUndefined();
  });

  it.each([
    ['taken back', 'keepAsIs', 104],
    ['undone', 'undoChoice', 104],
    ['wanted now', 'changeNow', 120],
  ] as const)('can be %s', async (_, command, tempo) => {
    const { commands, state, band, kept } = await openWaiting();
    commands.typeTempo('120');
    commands[command]();
    expect([state().waiting, state().settings.tempo, kept().tempo]).toEqual([null, tempo, tempo]);
    expect(band.programs.at(-1)).toMatchObject({ tempo });
    expect(band.programs.at(-1)?.later).toBeUndefined();
  });

  it('hold when the band stops, and where no chorus follows only then', async () => {
    const { commands, state, band } = await openWaiting();
    commands.chooseForm('standard');
    commands.stop();
    expect([state().waiting, state().settings.formId]).toEqual([null, 'standard']);

    commands.choose({ plan: { ...state().settings.plan, choruses: 1, ending: 'stop' } });
    await commands.play();
    band.hear(1, 0);
    commands.typeTempo('90');
    expect([state().waiting?.from, state().settings.tempo, band.programs.at(-1)?.later]).toEqual([
      null,
      104,
      undefined,
    ]);
    commands.stop();
    expect(state().settings.tempo).toBe(90);
  });

  it('let everything else be changed at once, and a feel that waits keep its own choices', async () => {
    const { commands, state } = await openWaiting();
    commands.chooseFeel('swing');
    commands.choose({ look: 'night', reference: DEFAULT_SETTINGS.reference });
    commands.setMaster(0.3);
    expect([state().settings.look, state().settings.mix.master, state().settings.style.feel]).toEqual([
      'night',
      0.3,
      'shuffle',
    ]);
    expect(state().waiting?.settings.style.feel).toBe('swing');
  });

  it('leave repeated bars until the form that does not have them comes', async () => {
    const { commands, state, band } = await openWaiting();
    commands.repeat({ from: 8, to: 11 });
    band.hear(1, 0);
    commands.chooseForm('eight-v-second');
    expect(state().settings.plan.repeat).toEqual({ from: 8, to: 11 });
    band.hear(2, 0);
    expect([state().settings.formId, state().settings.plan.repeat]).toEqual(['eight-v-second', null]);
  });

  it('do not wait while the band rests, nor where the player has not asked for it', async () => {
    const { commands, state, band } = open();
    await commands.play();
    band.hear(1, 4);
    commands.choose({ tempo: asBpm(90) });
    expect([state().settings.tempo, state().waiting]).toEqual([90, null]);
    commands.stop();
    commands.choose({ changesWait: true });
    commands.choose({ tempo: asBpm(100) });
    expect([state().settings.tempo, state().waiting]).toEqual([100, null]);
  });
});
