import { describe, expect, it } from 'vitest';
import { soundId } from '../../../../src/core/harp/tab';
import { asSeconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { heardNote } from '../../../helpers/heard-note';
import { soon } from '../../../helpers/soon';

const RATE = 8000;

const open = () => openSession(createKeptValues(() => createFakeStorage({}), new EventTarget()));

/** A session that keeps two minutes while it listens and the band plays. */
const keeping = async () => {
  const opened = open();
  const { commands, microphone, band } = opened;
  commands.choose({ takeMinutes: 2 });
  await commands.listenToMe();
  await commands.play();
  return {
    ...opened,
    sound: (at: number): void =>
      microphone.sound({
        sampleRate: RATE,
        at: asSeconds(at),
        heard: new Int16Array(RATE).fill(1000),
        sent: new Int16Array(RATE).fill(2000),
      }),
    play: (name: string, from: number): void => {
      const { to, ...note } = heardNote([name, from, from + 0.4]);
      microphone.hear({ notes: [{ ...note, to: null }] });
      microphone.hear({ notes: [{ ...note, to }] });
    },
    hear: band.hear,
  };
};

const text = (bytes: readonly number[], from: number, to: number): string =>
  String.fromCharCode(...bytes.slice(from, to));

describe('the last minutes', () => {
  it('are kept only where the player wants them, with their size, and forgotten when asked', async () => {
    const { commands, state, sound } = await keeping();
    expect(state().takes.kept).toBeNull();
    sound(0);
    sound(1);
    expect(state().takes.kept).toEqual({ seconds: 2, bytes: 2 * RATE * 4 });
    commands.forgetPlaying();
    expect(state().takes.kept).toBeNull();
    sound(2);
    commands.choose({ takeMinutes: 0 });
    expect(state().takes.kept).toBeNull();
    sound(3);
    expect(state().takes.kept).toBeNull();
  });

  it('are no more than were asked for', async () => {
    const { state, sound } = await keeping();
    for (let second = 0; second < 130; second += 1) sound(second);
    expect(state().takes.kept?.seconds).toBe(120);
  });

  it('are written under the bars they were played in, and taken away as WAV and MIDI', async () => {
    const { commands, state, sound, play, hear, takes } = await keeping();
    hear(1, 0);
    sound(0);
    play('2D', 0.2);
    hear(1, 1);
    play('3D', 0.6);
    // In the whole of the sound a note is heard that was missed live, and one that was heard is another.
    takes.notes = [heardNote(['2D', 0.2, 0.3]), heardNote(['4B', 0.4, 0.5]), heardNote(["3D'", 0.6, 0.9])];
    await commands.takeUpPlaying();
    const [pass] = state().takes.take?.passes ?? [];
    if (pass === undefined || pass.kind === 'free') throw new Error('It was played to the band');
    expect(
      pass.bars.slice(0, 2).map(({ notes }) => notes.map((each) => each.sound && soundId(each.sound))),
    ).toEqual([['2D', '4B'], ["3D'"]]);
    await commands.saveTakeSound('alone');
    await commands.saveTakeSound('band');
    await commands.saveTakeNotes();
    expect(takes.files.map(({ name, fate }) => [name.replace(/^.*-played/, ''), fate])).toEqual([
      ['.wav', 'saved'],
      ['-with-band.wav', 'saved'],
      ['.mid', 'saved'],
    ]);
    const [wav, , midi] = takes.files;
    expect([text(wav.bytes, 0, 4), wav.bytes.length, text(midi.bytes, 0, 4)]).toEqual([
      'RIFF',
      44 + 2 * RATE,
      'MThd',
    ]);
    commands.deleteTake();
    expect(state().takes.take).toBeNull();
  });

  it('have the notes heard while they were played where they cannot be listened for again', async () => {
    const { commands, state, sound, play, hear, takes } = await keeping();
    hear(1, 0);
    sound(0);
    play('2D', 0.2);
    takes.loadMachine = () => Promise.reject(new Error('not fetched'));
    await commands.takeUpPlaying();
    expect(state().takes.take?.notes).toBe(1);
    expect(state().takes.message?.text).toMatch(/heard while you played/);
  });

  it('say so where there is nothing yet', async () => {
    const { commands, state } = await keeping();
    await commands.takeUpPlaying();
    expect(state().takes.message?.text).toMatch(/Nothing of your playing is kept yet/);
  });

  it('are heard again alone or with the band, which stops for it, and nothing of that is kept', async () => {
    const { commands, state, sound, takes, band } = await keeping();
    sound(0);
    await commands.takeUpPlaying();
    await commands.hearTake('alone');
    expect([state().takes.sounding, band.status().kind]).toEqual(['alone', 'ready']);
    expect(takes.played[0]?.samples[0]).toBeCloseTo(1000 / 32768, 4);
    sound(1);
    expect(state().takes.kept?.seconds).toBe(1);
    takes.endPlaying();
    expect(state().takes.sounding).toBeNull();
    sound(2);
    expect(state().takes.kept?.seconds).toBe(2);
    await commands.hearTake('band');
    commands.stopTake();
    expect(state().takes.sounding).toBeNull();
    expect(band.asked.filter((each) => each === 'give back')).toHaveLength(2);
  });

  it('say why a file could not be written', async () => {
    const { commands, state, sound, takes } = await keeping();
    sound(0);
    await commands.takeUpPlaying();
    takes.refuseWriting({ kind: 'full' });
    await commands.saveTakeSound('alone');
    expect(state().takes.message).toEqual({ tone: 'trouble', text: expect.stringMatching(/no room left/) });
    expect(takes.files[0]?.fate).toBe('discarded');
    expect(state().takes.take).not.toBeNull();
  });
});

describe('a recording', () => {
  const file = new File([new Uint8Array(10)], 'thursday.m4a');

  it('stands for itself until it is said where the first chorus begins', async () => {
    const { commands, state, takes } = open();
    takes.notes = [heardNote(['4D', 2, 2.4]), heardNote(['4B', 3, 3.4])];
    await commands.openRecording(file);
    expect(state().takes.take).toMatchObject({
      source: 'file',
      name: 'thursday.m4a',
      notes: 2,
      withBand: false,
      firstNote: 2,
    });
    expect(state().takes.take?.passes.map(({ kind }) => kind)).toEqual(['free']);
    await commands.placeRecording(2);
    expect(state().takes.take?.begins).toBe(2);
    const [pass] = state().takes.take?.passes ?? [];
    expect(pass?.kind === 'chorus' && pass.report?.heard.hits.length).toBe(2);
    await commands.placeRecording(null);
    expect(state().takes.take?.passes.map(({ kind }) => kind)).toEqual(['free']);
    await commands.saveTakeNotes();
    expect(takes.files[0]?.name).toBe('thursday-played.mid');
  });

  it('says what is wrong with a file, and leaves the take that lies open', async () => {
    const { commands, state, takes } = open();
    await commands.openRecording(file);
    takes.decoded = new Error('Unable to decode audio data');
    await commands.openRecording(new File([], 'letter.txt'));
    expect(state().takes.message?.text).toMatch(/letter\.txt could not be read as sound \(Unable to decode/);
    takes.decoded = { samples: new Float32Array(0), sampleRate: 48_000 };
    await commands.openRecording(new File([], 'empty.wav'));
    expect(state().takes.message?.text).toBe('empty.wav holds no sound.');
    takes.decoded = { samples: { length: 16 * 60 * 10 } as unknown as Float32Array, sampleRate: 10 };
    await commands.openRecording(new File([], 'long.wav'));
    expect(state().takes.message?.text).toMatch(/longer than 15 minutes/);
    expect(state().takes.take?.name).toBe('thursday.m4a');
  });

  it('is not opened where it was cancelled', async () => {
    const { commands, state, takes } = open();
    takes.endless = true;
    const opening = commands.openRecording(file);
    await soon(() => expect(state().takes.work?.what).toMatch(/^Hearing/));
    commands.stopTake();
    await opening;
    expect([state().takes.take, state().takes.work, state().takes.message]).toEqual([null, null, null]);
  });
});

describe('takes that are kept', () => {
  const keptOne = async () => {
    const opened = await keeping();
    const { commands, sound, play, state } = opened;
    sound(0);
    play('4B', 0.2);
    sound(1);
    await commands.takeUpPlaying();
    await commands.keepTake('Thursday');
    return { ...opened, shelf: () => state().takes.shelf ?? [] };
  };

  it('lie in the browser with their sizes, once each, are heard again and brought back', async () => {
    const { commands, shelf, state, takes } = await keptOne();
    expect(shelf()).toEqual([{ id: expect.any(String), name: 'Thursday', seconds: 2, bytes: 2 * RATE * 4 }]);
    await commands.keepTake('Friday');
    expect(state().takes.message?.text).toBe('It is kept already.');
    takes.notes = [];
    await commands.openKeptTake(shelf()[0]?.id ?? '');
    expect(state().takes.take).toMatchObject({ name: 'Thursday', seconds: 2, withBand: true });
    await commands.dropKeptTake(shelf()[0]?.id ?? '');
    expect(shelf()).toEqual([]);
    expect(state().takes.dropped).toBe('Thursday');
    await commands.restoreKeptTake();
    expect(shelf()).toHaveLength(1);
    takes.kept.refuse = { kind: 'full' };
    await commands.dropKeptTake(shelf()[0]?.id ?? '');
    await commands.keepTake('Saturday');
    expect(shelf()).toHaveLength(1);
  });

  it('that cannot be read stay where they are, and that is said; one that is there twice is shown once', async () => {
    const { commands, shelf, takes, notices } = await keptOne();
    const [whole] = [...takes.kept.rows.values()];
    await takes.kept.put([
      { id: 'odd', name: 'Odd', heard: 'no samples', sampleRate: RATE },
      { ...whole, id: 'twin' },
    ]);
    await commands.readKeptTakes();
    expect(shelf()).toHaveLength(1);
    expect(notices()).toContain('1 kept take could not be read and is not shown; nothing was deleted.');
    expect(takes.kept.rows.size).toBe(3);
  });

  it('are deleted whatever they were kept under, and brought back under their own name', async () => {
    const { commands, shelf, takes } = await keptOne();
    const [[own, whole] = []] = [...takes.kept.rows];
    await takes.kept.remove(null);
    await takes.kept.put([
      { ...whole, id: 'of an older version' },
      { ...whole, id: 'and its twin' },
    ]);
    await commands.dropKeptTake(shelf()[0]?.id ?? '');
    expect(shelf()).toEqual([]);
    expect([...takes.kept.rows.keys()]).toEqual([]);
    await commands.restoreKeptTake();
    expect([...takes.kept.rows.keys()]).toEqual([own]);
  });

  it('go into the file with everything where they are wanted, and come out of it without doubles', async () => {
    const { commands, takeAway, takes } = await keptOne();
    const text = (at: number) => new TextDecoder().decode(Uint8Array.from(takeAway.files[at]?.bytes ?? []));
    await commands.saveEverything();
    expect(text(0)).not.toContain('Thursday');
    await commands.saveEverything(true);
    const there = open();
    expect(await there.commands.restoreEverything(text(1), false)).toContain('1 take added.');
    expect(await there.commands.restoreEverything(text(1), false)).toContain('1 take here already.');
    const [row] = [...there.takes.kept.rows.values()];
    const [own] = [...takes.kept.rows.values()];
    expect(row).toEqual(own);
    const damaged = text(1).replace('"name": "Thursday"', '"name": "Thursday", "sampleRate": 1, "x": 1');
    const broken = JSON.parse(damaged);
    broken.shelves.takes = [7, { heard: '%%%', sampleRate: 8000 }, ...broken.shelves.takes];
    expect(await open().commands.restoreEverything(JSON.stringify(broken), false)).toEqual(
      expect.arrayContaining(['1 take added.', '2 of the takes could not be read and were left out.']),
    );
  });
});
