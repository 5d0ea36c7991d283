import { afterEach, describe, expect, it } from 'vitest';
import { midiMelodies } from '../../../../src/core/melody/midi-melody';
import { onHarp } from '../../../../src/core/phrase/phrase';
import { printPhrase } from '../../../../src/core/phrase/print-phrase';
import { readPhrase } from '../../../../src/core/phrase/read-phrase';
import { findKept } from '../../../../src/core/phrasebook/kept-phrase';
import { STARTER_CALLS, STARTER_EXERCISES } from '../../../../src/core/phrasebook/starter-set';
import { typedCalls } from '../../../../src/core/song/leads';
import { elementAt } from '../../../../src/core/theory/element-at';
import { asBpm, asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';

const ended: (() => void)[] = [];
afterEach(() => {
  for (const end of ended.splice(0)) end();
});

const open = (storage = createFakeStorage()) => {
  const { saver, files } = createFakeTakeAway();
  const melodies = { read: async (bytes: Uint8Array) => midiMelodies(bytes) };
  const opened = openSession(
    createKeptValues(() => storage, new EventTarget()),
    { phrases: { melodies, saver } },
  );
  ended.push(opened.session.dispose);
  return {
    storage,
    files,
    ...opened,
    names: () => opened.state().phrasebook.phrases.map(({ name }) => name),
  };
};

const { phrase: PHRASE } = readPhrase("-2:q -3' -3 4 | -2:w", '4/4');
const { phrase: OTHER } = readPhrase('-2:w', '4/4');

describe('the library', () => {
  it('keeps phrases over visits, copies and changes them, and brings back what was taken out', () => {
    const { commands, names, state, storage } = open();
    const id = commands.keepPhrase({ name: 'Hail on the roof', phrase: PHRASE, level: 2 });
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
    commands.keepPhrase({ name: 'Hail on the roof', phrase: PHRASE, level: 2 });
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

  it('travels in a file of its own: what is there already stays, what is damaged is refused by number and name', async () => {
    const { commands, files } = open();
    commands.keepPhrase({
      name: 'Hail on the roof',
      phrase: PHRASE,
      level: 2,
      tags: ['rain'],
      words: 'Softly.',
    });
    commands.keepPhrase({ name: 'Sun on the roof', phrase: OTHER, level: 1 });
    await commands.savePhrases();
    const text = new TextDecoder().decode(Uint8Array.from(files[0]?.bytes ?? []));
    const there = open();
    expect(await there.commands.openPhrases(text)).toEqual(['2 phrases added.']);
    expect(there.state().phrasebook.phrases[0]).toMatchObject({
      phrase: PHRASE,
      tags: ['rain'],
      words: 'Softly.',
    });
    expect(await there.commands.openPhrases(text)).toEqual(['2 phrases were here already.']);
    const damaged = JSON.parse(text);
    damaged.phrases.splice(1, 0, 7, { name: 'Fog', phrase: { meter: '4/4', notes: [{ at: 'x' }] } });
    expect(await open().commands.openPhrases(JSON.stringify(damaged))).toEqual([
      '2 phrases added.',
      'Phrase 2 of 4 has no notes that can be read: left out.',
      'Phrase 3 of 4 (“Fog”) has no notes that can be read: left out.',
    ]);
    expect(await there.commands.openPhrases('{')).toEqual([expect.stringContaining('not JSON')]);
    expect(await there.commands.openPhrases('{"kind":"songs"}')).toEqual([
      expect.stringContaining('no phrases'),
    ]);
  });

  it('saves a phrase as MIDI and finds the same melody in it', async () => {
    const { commands, files, state } = open();
    await commands.savePhraseMidi('Hail on the roof', PHRASE);
    expect(files[0]).toMatchObject({ name: 'hail-on-the-roof.mid', fate: 'saved' });
    const read = await commands.readMelodies(Uint8Array.from(files[0]?.bytes ?? []));
    const { harp } = state().tune;
    const keys = onHarp(PHRASE, harp).notes.flatMap(({ sounds }) => sounds.map(({ pitch }) => pitch));
    const [melody] = typeof read === 'string' ? [] : read;
    expect(melody?.notes.flatMap(({ key }) => (key === null ? [] : [key]))).toEqual(keys);
    expect(await commands.readMelodies(new Uint8Array(3))).toContain('no MIDI file');
  });

  it('passes the exercise on the stand on as a file that opens it whole elsewhere', async () => {
    const { commands, files, state } = open();
    const exercise = elementAt(STARTER_EXERCISES, 4);
    commands.openExercise(exercise);
    commands.choose({ harpKey: asPitchClass(5) });
    await commands.saveExercise('Thursday, slow');
    expect(files[0]).toMatchObject({ name: 'thursday-slow.json', fate: 'saved' });
    const text = new TextDecoder().decode(Uint8Array.from(files[0]?.bytes ?? []));
    const there = open();
    expect(await there.commands.openSongText(text)).toEqual([]);
    expect(there.state().book.linked?.name).toBe('Thursday, slow');
    there.commands.takeLinkedSong(true);
    const { trade, partner, formId, tempo, harpKey, classLevels } = state().settings;
    expect(there.state().settings).toMatchObject({ trade, partner, formId, tempo, harpKey, classLevels });
    expect(await there.commands.openSongText('[]')).toEqual([expect.stringContaining('no exercise')]);
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

const textOf = (file: { readonly bytes: ArrayLike<number> } | undefined): string =>
  new TextDecoder().decode(Uint8Array.from(file?.bytes ?? []));

describe('exercises', () => {
  const withOne = () => {
    const opened = open();
    const { commands, state } = opened;
    commands.choose({ trade: { on: true, calls: '-2:w' }, harpKey: asPitchClass(5), tempo: asBpm(70) });
    commands.keepExercise({ name: ' Thursday ', tags: ['slow'], words: 'Breathe out.' });
    const [kept] = state().phrasebook.exercises;
    return { ...opened, id: kept?.id ?? '', list: () => state().phrasebook.exercises };
  };

  it('are kept from the stand, named, tagged, copied, and put on it again whole, over visits', () => {
    const { commands, id, list, state, storage } = withOne();
    expect(list()[0]).toMatchObject({ name: 'Thursday', tags: ['slow'], words: 'Breathe out.' });
    commands.duplicateExercise(id);
    commands.duplicateExercise('first-evening');
    expect(list().map(({ name }) => name)).toEqual(['Thursday', 'Thursday 2', 'First evening']);
    expect(list()[2]?.choices).toMatchObject({ tempo: 76, trade: { on: true }, formId: 'standard' });
    commands.changeExercise(id, { name: '', tags: ['slow', 'rain'] });
    commands.choose({ trade: { on: false, calls: '' }, harpKey: asPitchClass(0), tempo: asBpm(120) });
    const again = open(storage);
    again.commands.openKeptExercise(id);
    expect(again.state().settings).toMatchObject({
      trade: { on: true, calls: '-2:w' },
      harpKey: 5,
      tempo: 70,
    });
    expect(again.state().phrasebook.exercises[0]).toMatchObject({ name: 'Thursday', tags: ['slow', 'rain'] });
    expect(findKept(state().phrasebook.exercises, 'RAIN breathe')).toHaveLength(1);
  });

  it('have versions, and come back when they were taken out', () => {
    const { commands, id, list, state } = withOne();
    commands.keepExerciseAgain(id);
    expect(list()[0]?.earlier).toEqual([]);
    commands.choose({ tempo: asBpm(90) });
    commands.keepExerciseAgain(id);
    expect(list()[0]?.choices.tempo).toBe(90);
    commands.openEarlierExercise(id, 0);
    expect(state().settings.tempo).toBe(70);
    commands.keepExerciseAgain(id);
    expect(list()[0]?.earlier).toHaveLength(1);
    expect(list()[0]?.choices.tempo).toBe(70);
    commands.dropExercise(id);
    expect(list()).toEqual([]);
    // What was taken out is of one kind only.
    commands.restorePhrase();
    expect(list()).toEqual([]);
    commands.restoreExercise();
    expect(list()[0]).toMatchObject({ name: 'Thursday', earlier: [expect.stringContaining('"tempo":90')] });
  });

  it('travel in a file of their own and in the one with everything, a chart of one’s own with them', async () => {
    const { commands, files, list, takeAway } = withOne();
    const chart = {
      ...{ id: 'chart-7', name: 'Wet Boots', text: 'C | F | G | C', tonic: 'C', mode: 'major', meter: '4/4' },
    };
    expect(await commands.openExercises('{')).toEqual([expect.stringContaining('not JSON')]);
    await commands.saveExercises();
    expect(files[0]).toMatchObject({ name: 'exercises.json', fate: 'saved' });
    const file = JSON.parse(textOf(files[0]));
    file.exercises.push(7, { id: 'x', name: 'On boots', chart, choices: { formId: chart.id } });
    const there = open();
    expect(await there.commands.openExercises(JSON.stringify(file))).toEqual([
      '2 exercises added.',
      'Exercise 2 of 3 has no choices that can be read: left out.',
    ]);
    expect(await there.commands.openExercises(JSON.stringify(file))).toEqual([
      '2 exercises were here already.',
      'Exercise 2 of 3 has no choices that can be read: left out.',
    ]);
    there.commands.openKeptExercise(there.state().phrasebook.exercises[1]?.id ?? '');
    expect(there.state().settings.formId).toBe('chart-7');
    expect(there.state().ownCharts[0]?.name).toBe('Wet Boots');
    await commands.saveEverything();
    const everything = open();
    expect(await everything.commands.restoreEverything(textOf(takeAway.files[0]), false)).toEqual([
      '1 exercise added.',
    ]);
    expect(everything.state().phrasebook.exercises).toEqual(list());
  });
});
