import { describe, expect, it } from 'vitest';
import { titleOnly, wavInfo } from '../../../../src/core/formats/audio-tags';
import { asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createSession } from '../../../helpers/create-session';
import { createFakeBand } from '../../../helpers/fake-band';
import { createFakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { createFakeStorage } from '../../../helpers/fake-storage';
import {
  createFakeTakeAway,
  FAKE_ENCODING,
  FAKE_PIECE,
  FAKE_PIECES,
  type FakeFile,
} from '../../../helpers/fake-take-away';
import { notesOf, readMidi } from '../../../helpers/midi-reading';

const noLater = () => () => {};
const open = () => {
  const band = createFakeBand();
  const takeAway = createFakeTakeAway();
  const kept = createKeptValues(() => createFakeStorage(), new EventTarget());
  const { store, commands } = createSession({
    band,
    kept,
    newSeed: () => 77,
    later: noLater,
    takeAway,
    ownSounds: createFakeOwnSounds(),
  });
  const state = () => store.getState().takeAway;
  const plan = () => store.getState().settings.plan;
  return { band, takeAway, store, commands, state, plan };
};

const fates = (files: readonly FakeFile[]) => files.map(({ name, fate }) => `${name} ${fate}`);
const tracksOf = (file: FakeFile | undefined) => readMidi(Uint8Array.from(file?.bytes ?? [])).tracks;
const headerOf = (file: FakeFile | undefined) => {
  const view = new DataView(Uint8Array.from(file?.bytes ?? []).buffer);
  return {
    rate: view.getUint32(24, true),
    bits: view.getUint16(34, true),
    data: view.getUint32(40, true),
    size: view.byteLength,
  };
};

describe('MIDI', () => {
  it('is handed over with a name from the song, and said to be', async () => {
    const { takeAway, commands, state } = open();
    await commands.saveMidi();
    expect(fates(takeAway.files)).toEqual(['shuffle-g-104bpm.mid saved']);
    expect(state()).toMatchObject({
      job: null,
      message: { tone: 'note', text: 'shuffle-g-104bpm.mid is in your downloads.' },
    });
  });

  it('has three choruses when the plan goes on until stopped, otherwise the plan’s or the chosen number', async () => {
    const { takeAway, commands, plan } = open();
    await commands.saveMidi();
    commands.choose({ plan: { ...plan(), choruses: 2 } });
    await commands.saveMidi();
    commands.chooseTakeAway({ choruses: 1 });
    await commands.saveMidi();
    const choruses = takeAway.files.map((file) =>
      tracksOf(file)[0]?.events.filter((event) => event.type === 'marker' && /^Chorus/.test(event.text)),
    );
    expect(choruses.map((markers) => markers?.length)).toEqual([3, 2, 1]);
  });

  it('leaves count-in and ending away when asked', async () => {
    const { takeAway, commands } = open();
    commands.chooseTakeAway({ countIn: false, ending: false });
    await commands.saveMidi();
    const markers = tracksOf(takeAway.files[0])[0]?.events.flatMap((event) =>
      event.type === 'marker' ? [event.text] : [],
    );
    expect(markers).toContain('Chorus 3');
    expect(markers).not.toContain('Count-in');
    expect(markers).not.toContain('Ending');
  });

  it('has the parts that are not muted', async () => {
    const { takeAway, commands } = open();
    commands.setChannel('bass', { muted: true });
    await commands.saveMidi();
    const names = tracksOf(takeAway.files[0]).map(({ name }) => name);
    expect(names).toContain('Drums');
    expect(names).not.toContain('Bass');
    expect(notesOf(tracksOf(takeAway.files[0])[1]).length).toBeGreaterThan(0);
  });

  it('is the song as it was when asked for, and not affected by a wish for an ending', async () => {
    const { band, takeAway, commands } = open();
    await commands.play();
    band.hear(1, 0);
    commands.lastTime(true);
    const saving = commands.saveMidi();
    commands.chooseSongKey(asPitchClass(9));
    await saving;
    expect(fates(takeAway.files)).toEqual(['shuffle-g-104bpm.mid saved']);
    const [conductor] = tracksOf(takeAway.files[0]);
    const markers = conductor?.events.flatMap((event) => (event.type === 'marker' ? [event.text] : []));
    expect(markers).toContain('G7');
    expect(markers).toContain('Chorus 3');
  });
});

describe('audio', () => {
  it('is a WAV file of the chosen form, its header made good at the end', async () => {
    const { takeAway, commands } = open();
    commands.chooseTakeAway({ sampleRate: 48000, bits: 24 });
    await commands.saveAudio();
    const [file] = takeAway.files;
    expect(fates(takeAway.files)).toEqual(['shuffle-g-104bpm.wav saved']);
    const data = FAKE_PIECE * FAKE_PIECES * 6;
    const info = wavInfo(titleOnly('Shuffle in G')).length;
    expect(headerOf(file)).toEqual({ rate: 48000, bits: 24, data, size: 44 + data + info });
    expect(file?.bytes.slice(44, 50)).toEqual([0, 0, 0x40, 0, 0, 0x40]);
    expect(takeAway.requests[0]).toMatchObject({ sampleRate: 48000, feel: 'shuffle' });
  });

  it('ends with the last bar when it is to go round and round: the header has the frames that were kept', async () => {
    const { takeAway, commands } = open();
    commands.chooseTakeAway({ choruses: 1, countIn: false, ending: false });
    await commands.saveAudio();
    // The hum is far shorter than a chorus, so nothing is cut.
    expect(headerOf(takeAway.files[0]).data).toBe(FAKE_PIECE * FAKE_PIECES * 4);
  });

  it('has the mixer’s faders, but not the volume of the room', async () => {
    const { takeAway, commands } = open();
    commands.setMaster(0.05);
    commands.setChannel('drums', { gain: 0.3 });
    await commands.saveAudio();
    const mix = takeAway.requests[0]?.sound.mix;
    expect([mix?.master, mix?.channels.drums.gain]).toEqual([0.7, 0.3]);
  });

  it('comes as one file a part, for the parts that sound', async () => {
    const { takeAway, commands, state } = open();
    commands.setChannel('drums', { muted: true });
    commands.chooseTakeAway({ files: 'parts' });
    await commands.saveAudio();
    expect(fates(takeAway.files)).toEqual([
      'shuffle-g-104bpm-bass.wav saved',
      'shuffle-g-104bpm-chords.wav saved',
    ]);
    expect(takeAway.requests.map(({ parts }) => parts)).toEqual([['bass'], ['chords']]);
    expect(state().message?.text).toMatch(/^2 files are in your downloads: .*bass\.wav, .*chords\.wav\.$/);
  });

  it('begins sooner for what is made ready of the song, unless the band plays', async () => {
    const { takeAway, commands } = open();
    await commands.prepareAudio();
    const [ready] = takeAway.prepared;
    expect(ready?.sampleRate).toBe(44_100);
    expect(ready?.signal?.aborted).toBe(false);
    await commands.saveAudio();
    expect(ready?.signal?.aborted).toBe(true);
    expect(takeAway.requests[0]?.sections).toEqual(ready?.sections);
    expect(takeAway.requests[0]?.sound).toEqual(ready?.sound);
    await commands.toggle();
    await commands.prepareAudio();
    expect(takeAway.prepared).toHaveLength(1);
  });

  it('can be compressed by what the browser offers', async () => {
    const { takeAway, commands, state } = open();
    takeAway.encodings = [FAKE_ENCODING];
    await commands.findEncodings();
    expect(state().encodings).toEqual([FAKE_ENCODING]);
    commands.chooseTakeAway({ kind: 'opus' });
    await commands.saveAudio();
    expect(fates(takeAway.files)).toEqual(['shuffle-g-104bpm.opus saved']);
    expect(takeAway.files[0]?.type).toBe('audio/ogg; codecs=opus');
    const [bytes] = takeAway.files.map((file) => file.bytes);
    expect(bytes?.slice(0, FAKE_PIECES)).toEqual(Array(FAKE_PIECES).fill(FAKE_PIECE));
    expect(new TextDecoder().decode(Uint8Array.from(bytes?.slice(FAKE_PIECES) ?? []))).toBe('Shuffle in G');
  });

  it('tells how far it is, over all its files', async () => {
    const { takeAway, commands, state, store } = open();
    const shares: number[] = [];
    const names = new Set<string>();
    commands.chooseTakeAway({ files: 'parts' });
    takeAway.hold();
    const saving = commands.saveAudio();
    await expect.poll(() => takeAway.requests.length).toBe(1);
    expect(state().job).toEqual({ fileName: 'shuffle-g-104bpm-drums.wav', share: 0 });
    const unsubscribe = store.subscribe(() => {
      const { job } = state();
      if (job === null) return;
      shares.push(job.share);
      names.add(job.fileName);
    });
    takeAway.letGo();
    await saving;
    unsubscribe();
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(Math.max(...shares)).toBe(1);
    expect([...names]).toEqual(['drums', 'bass', 'chords'].map((part) => `shuffle-g-104bpm-${part}.wav`));
  });
});

describe('one thing at a time', () => {
  it('says so when asked for a second file, and goes on with the first', async () => {
    const { takeAway, commands, state } = open();
    takeAway.hold();
    const saving = commands.saveAudio();
    await commands.saveMidi();
    expect(state().message?.text).toMatch(/^shuffle-g-104bpm\.wav is still being made\./);
    expect(state().job).not.toBeNull();
    takeAway.letGo();
    await saving;
    expect(fates(takeAway.files)).toEqual(['shuffle-g-104bpm.wav saved']);
  });

  it('cancels at once, even while the renderer is busy, and throws the beginning away', async () => {
    const { takeAway, commands, state } = open();
    takeAway.hold();
    const saving = commands.saveAudio();
    await expect.poll(() => takeAway.requests.length).toBe(1);
    commands.cancelSaving();
    await saving;
    expect(state()).toMatchObject({
      job: null,
      message: { tone: 'note', text: expect.stringMatching(/^Cancelled/) },
    });
    takeAway.letGo();
    await expect.poll(() => fates(takeAway.files)).toEqual(['shuffle-g-104bpm.wav discarded']);
  });

  it('can save again after a cancel while the cancelled rendering winds down', async () => {
    const { takeAway, commands, state } = open();
    takeAway.hold();
    const first = commands.saveAudio();
    await expect.poll(() => takeAway.requests.length).toBe(1);
    commands.cancelSaving();
    await first;
    const second = commands.saveMidi();
    takeAway.letGo();
    await second;
    expect(state().message?.text).toBe('shuffle-g-104bpm.mid is in your downloads.');
  });

  it('cancels what has not begun to render', async () => {
    const { takeAway, commands, state } = open();
    commands.chooseTakeAway({ choruses: 8 });
    const saving = commands.saveAudio();
    commands.cancelSaving();
    await saving;
    expect(state().message?.text).toMatch(/^Cancelled/);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(takeAway.requests).toEqual([]);
  });

  it('has nothing to cancel at rest', () => {
    const { commands, state } = open();
    commands.cancelSaving();
    expect(state()).toMatchObject({ job: null, message: null });
  });
});

describe('trouble', () => {
  const cases: readonly [string, (opened: ReturnType<typeof open>) => void, RegExp][] = [
    ['no room', ({ takeAway }) => Object.assign(takeAway, { refuse: { kind: 'full' } }), /no room left/],
    [
      'a refused write',
      ({ takeAway }) => Object.assign(takeAway, { refuse: { kind: 'refused', detail: 'the disk is gone' } }),
      /did not let the file be written \(the disk is gone\)/,
    ],
    [
      'a renderer that cannot be fetched',
      ({ takeAway }) => Object.assign(takeAway, { loadError: new TypeError('offline') }),
      /could not be loaded\. Save again; if it stays away, open Combshed in another tab/,
    ],
    [
      'a renderer that breaks',
      ({ takeAway }) => Object.assign(takeAway, { renderError: new Error('out of buffers') }),
      /could not be made \(out of buffers\)\. Your song is as it was\./,
    ],
    [
      'silence',
      ({ commands }) => {
        for (const part of ['drums', 'bass', 'chords', 'lead'] as const)
          commands.setChannel(part, { muted: true });
      },
      /Every part is muted/,
    ],
    [
      'a format the browser lost',
      ({ commands }) => commands.chooseTakeAway({ kind: 'aac' }),
      /cannot make that kind of file\. Choose WAV/,
    ],
    [
      'more than a WAV file holds',
      ({ commands }) => commands.chooseTakeAway({ choruses: 2000 }),
      /One WAV file holds \d\.\d hours/,
    ],
  ];

  it.each(cases)(
    'audio, %s: is told in a sentence, and nothing is left behind',
    async (_, arrange, words) => {
      const opened = open();
      arrange(opened);
      await opened.commands.saveAudio();
      expect(opened.state()).toMatchObject({ job: null, message: { tone: 'trouble' } });
      expect(opened.state().message?.text).toMatch(words);
      expect(opened.takeAway.files.filter(({ fate }) => fate !== 'discarded')).toEqual([]);
    },
  );

  it.each([cases[0], cases[4]].flatMap((row) => (row ? [row] : [])))(
    'MIDI, %s',
    async (_, arrange, words) => {
      const opened = open();
      arrange(opened);
      await opened.commands.saveMidi();
      expect(opened.state().message).toMatchObject({ tone: 'trouble', text: expect.stringMatching(words) });
    },
  );

  it('is forgotten when the next file succeeds', async () => {
    const { takeAway, commands, state } = open();
    takeAway.renderError = new Error('once');
    await commands.saveAudio();
    takeAway.renderError = null;
    await commands.saveAudio();
    expect(state().message?.tone).toBe('note');
  });

  it('does not keep quiet about sounds that are missing', async () => {
    const { takeAway, commands, state } = open();
    takeAway.missing = 2;
    await commands.saveAudio();
    expect(state().message).toMatchObject({
      tone: 'trouble',
      text: expect.stringMatching(/missing from it/),
    });
  });
});

it('saves the chords as ABC', async () => {
  const { takeAway, commands } = open();
  await commands.saveAbc();
  expect(fates(takeAway.files)).toEqual(['shuffle-g-104bpm.abc saved']);
  const text = new TextDecoder().decode(Uint8Array.from(takeAway.files[0]?.bytes ?? []));
  expect(text).toContain('T:Shuffle in G\nM:4/4\nL:1/4\nQ:"Shuffle" 1/4=104\nK:G\n"G7"z4|');
});

it('saves the lead sheet as MusicXML', async () => {
  const { takeAway, commands } = open();
  await commands.saveLeadSheet();
  expect(fates(takeAway.files)).toEqual(['shuffle-g-104bpm.musicxml saved']);
  const text = new TextDecoder().decode(Uint8Array.from(takeAway.files[0]?.bytes ?? []));
  expect(text).toContain('<work-title>Shuffle in G</work-title>');
});
