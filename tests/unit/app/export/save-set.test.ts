import { parseBuffer } from 'music-metadata';
import { describe, expect, it, vi } from 'vitest';
import { withSong } from '../../../../src/core/book/gig-set';
import { elementAt } from '../../../../src/core/theory/element-at';
import { asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { FAKE_ENCODING } from '../../../helpers/fake-take-away';

/** A set of two songs, the second in B flat. */
const open = () => {
  const opened = openSession(createKeptValues(() => createFakeStorage(), new EventTarget()));
  const { commands, state } = opened;
  const { plan } = state().settings;
  commands.choose({ plan: { ...plan, choruses: 1 } });
  commands.keepSong('Wet Boots');
  commands.chooseHarpKey(asPitchClass(3));
  commands.keepSong('Ferry at Noon');
  commands.newSet('Village hall');
  const songs = state().book.songs.map(({ id }) => id);
  commands.keepSet(songs.reduce(withSong, elementAt(state().book.sets, 0)));
  return { ...opened, set: elementAt(state().book.sets, 0).id };
};

const NAMES = ['01-wet-boots-g-104bpm', '02-ferry-at-noon-b-flat-104bpm'];

describe('saving a set', () => {
  it('makes a file of every song, numbered, with title, set and place that an independent reader finds', async () => {
    const { commands, takeAway, set, state } = open();
    await commands.saveSet(set);
    expect(takeAway.files.map(({ name, fate }) => `${name} ${fate}`)).toEqual(
      NAMES.map((name) => `${name}.wav saved`),
    );
    const read = await Promise.all(
      takeAway.files.map(async ({ bytes }) => {
        const { common, format } = await parseBuffer(Uint8Array.from(bytes), 'audio/wav');
        return [common.title, common.album, common.track.no, format.numberOfSamples];
      }),
    );
    expect(read).toEqual([
      ['Wet Boots', 'Village hall', 1, 400],
      ['Ferry at Noon', 'Village hall', 2, 400],
    ]);
    expect(state().takeAway).toMatchObject({ job: null, message: { tone: 'note' } });
  });

  it('leaves the stand and the music that plays as they are', async () => {
    const { commands, takeAway, set, state, band } = open();
    await commands.play();
    const before = state().settings;
    await commands.saveSet(set);
    expect(state().settings).toBe(before);
    expect(state().status.kind).toBe('playing');
    expect(band.asked.filter((each) => each === 'stop')).toEqual([]);
    const keys = takeAway.requests.map(({ sections }) => sections.at(-1)?.chart.tonic);
    expect(keys).toEqual(['G', 'Bb']);
  });

  it('says which song is being made, and how far all of them are', async () => {
    const { commands, takeAway, set, state, session } = open();
    const told: string[] = [];
    session.store.subscribe(({ takeAway: { job } }) => {
      if (job?.song) told.push(`${job.song.number} of ${job.song.of}, ${job.share * 100} %`);
    });
    await commands.saveSet(set);
    expect(told).toContain('1 of 2, 50 %');
    expect(told.at(-1)).toBe('2 of 2, 100 %');
    expect(takeAway.files).toHaveLength(2);
    expect(state().takeAway.job).toBeNull();
  });

  it('is cancelled whole: what is done stays, what is not is thrown away', async () => {
    const { commands, takeAway, set, state } = open();
    takeAway.hold();
    const saving = commands.saveSet(set);
    await vi.waitFor(() => expect(takeAway.files).toHaveLength(1), 20_000);
    commands.cancelSaving();
    takeAway.letGo();
    await saving;
    await vi.waitFor(() => expect(takeAway.files[0]?.fate).toBe('discarded'), 20_000);
    expect(takeAway.files).toHaveLength(1);
    expect(state().takeAway.message?.text).toMatch(/^Cancelled/);
  });

  it('leaves out a song that cannot be made, and says which and why', async () => {
    const { commands, takeAway, set, state } = open();
    const { mix } = state().settings;
    const channels = Object.fromEntries(
      Object.entries(mix.channels).map(([part, channel]) => [part, { ...channel, muted: true }]),
    );
    commands.choose({ mix: { ...mix, channels: channels as typeof mix.channels } });
    await commands.saveSet(set);
    expect(takeAway.files).toEqual([]);
    expect(state().takeAway.message).toMatchObject({
      tone: 'trouble',
      text: expect.stringMatching(/Left out: Wet Boots: every part is muted.*Ferry at Noon/),
    });
  });

  it('takes the compressed kind that was chosen', async () => {
    const { commands, takeAway, set } = open();
    takeAway.encodings = [FAKE_ENCODING];
    await commands.findEncodings();
    commands.chooseTakeAway({ kind: 'opus' });
    await commands.saveSet(set);
    expect(takeAway.files.map(({ name }) => name)).toEqual(NAMES.map((name) => `${name}.opus`));
  });

  it('stops at an encoder that breaks down, since no other song would fare better, and names WAV', async () => {
    const { commands, takeAway, set, state } = open();
    takeAway.encodings = [FAKE_ENCODING];
    takeAway.encoderError = new Error('mp3.wasm: 404');
    await commands.findEncodings();
    commands.chooseTakeAway({ kind: 'opus' });
    await commands.saveSet(set);
    expect(takeAway.files.map(({ fate }) => fate)).toEqual(['discarded']);
    expect(state().takeAway.message).toMatchObject({
      tone: 'trouble',
      text: expect.stringMatching(/^Opus in Ogg cannot be made.*mp3\.wasm: 404.*Choose WAV/),
    });
  });

  it('can be handed on by the sheet of the platform where it takes the files, and says where that failed', async () => {
    const { commands, takeAway, set, state } = open();
    await commands.saveSet(set);
    expect(state().takeAway.message).not.toHaveProperty('shareable');
    takeAway.sheet = { takes: true, comesTo: { kind: 'left' }, shared: [] };
    await commands.saveMidi();
    expect(state().takeAway.message?.shareable).toBe(true);
    await commands.shareSaved();
    expect(takeAway.sheet.shared.at(-1)).toMatch(/[.]mid$/);
    expect(state().takeAway.message?.tone).toBe('note');
    takeAway.sheet = { ...takeAway.sheet, comesTo: { kind: 'refused', detail: 'not now' } };
    await commands.shareSaved();
    expect(state().takeAway.message?.text).toMatch(
      /^Nothing could be handed on \(not now\).*in your downloads/,
    );
    expect(await commands.shareLink('https://example.org/#song')).toMatch(/Copy the text instead/);
    expect(takeAway.sheet.shared.at(-1)).toBe('https://example.org/#song');
  });
});
