import { afterEach, describe, expect, it } from 'vitest';
import { printPhrase } from '../../../../src/core/phrase/print-phrase';
import { readPhrase } from '../../../../src/core/phrase/read-phrase';
import { STARTER_CALLS, STARTER_EXERCISES } from '../../../../src/core/phrasebook/starter-set';
import { typedCalls } from '../../../../src/core/song/leads';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const ended: (() => void)[] = [];
afterEach(() => {
  for (const end of ended.splice(0)) end();
});

const open = (storage = createFakeStorage()) => {
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  ended.push(opened.session.dispose);
  return { storage, ...opened, names: () => opened.state().phrasebook.phrases.map(({ name }) => name) };
};

const { phrase: PHRASE } = readPhrase("-2:q -3' -3 4 | -2:w", '4/4');
const { phrase: OTHER } = readPhrase('-2:w', '4/4');

describe('the library', () => {
  it('keeps phrases over visits, copies and changes them, and brings back what was taken out', () => {
    const { commands, names, state, storage } = open();
    const id = commands.keepPhrase('Hail on the roof', PHRASE, 2);
    commands.duplicatePhrase(id);
    commands.changePhrase(id, { phrase: OTHER, name: 'Sun on the roof' });
    expect(names()).toEqual(['Sun on the roof', 'Hail on the roof 2']);
    expect(state().phrasebook.phrases[0]).toMatchObject({ phrase: OTHER, earlier: [PHRASE], position: 2 });
    commands.dropPhrase(id);
    expect(names()).toEqual(['Hail on the roof 2']);
    commands.restorePhrase();
    expect(open(storage).names().toSorted()).toEqual(['Hail on the roof 2', 'Sun on the roof']);
  });

  it('travels in the one file with everything, and what is damaged in it is said piece by piece', async () => {
    const { commands, takeAway } = open();
    commands.keepPhrase('Hail on the roof', PHRASE, 2);
    await commands.saveEverything();
    const [file] = takeAway.files;
    const text = new TextDecoder().decode(Uint8Array.from(file?.bytes ?? []));
    const there = open();
    expect(await there.commands.restoreEverything(text, false)).toEqual(['1 phrase added.']);
    expect(there.names()).toEqual(['Hail on the roof']);
    const damaged = text.replace('"phrases": [', '"phrases": [ 7,');
    expect(await open().commands.restoreEverything(damaged, false)).toEqual([
      '1 phrase added.',
      'One of the phrases could not be read and was left out.',
    ]);
  });

  it('puts exercises and single calls on the stand as they are', () => {
    const { commands, state } = open();
    for (const exercise of STARTER_EXERCISES) {
      commands.openExercise(exercise);
      const { settings } = state();
      expect(settings).toMatchObject({
        formId: exercise.formId,
        tempo: exercise.tempo,
        partner: exercise.partner,
      });
      expect(settings.trade.on).toBe(true);
      const read = typedCalls(settings, '4/4');
      expect(read.flatMap(({ problems }) => problems)).toEqual([]);
      expect(read.map(({ phrase }) => printPhrase(phrase, 'signs'))).toEqual(
        STARTER_CALLS.filter(({ name }) => exercise.calls.includes(name)).map(({ phrase }) =>
          printPhrase(phrase, 'signs'),
        ),
      );
    }
    const [call] = STARTER_CALLS;
    commands.callWith([call?.id ?? '']);
    expect(state().settings.trade.calls).toBe('-2:q -2 -3:h | -2 r');
  });

  it('plays a phrase alone, and not over the band', () => {
    const { commands, band, pass } = open();
    commands.hearPhrase(OTHER);
    pass();
    expect(band.asked).toEqual([expect.stringContaining('audition lead')]);
  });
});
