import { describe, expect, it, vi } from 'vitest';
import { readWav } from '../../../../src/core/formats/read-wav';
import { createMediaKeys, type MediaGround, silentWav } from '../../../../src/screen/media-keys';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

/** A media session as the standard has it: a state, words, and a handler an action. @param unknown actions it throws at. */
const createFakeMedia = (unknown: readonly string[] = []) => {
  const handlers = new Map<string, () => void>();
  const loop: string[] = [];
  const session: MediaGround['session'] = {
    metadata: null,
    playbackState: 'none',
    setActionHandler: (action, handler) => {
      if (unknown.includes(action)) throw new TypeError(`${action} is no MediaSessionAction`);
      if (handler === null) handlers.delete(action);
      else handlers.set(action, () => handler({ action }));
    },
  };
  const ground: MediaGround = {
    session,
    metadata: (words) => words as unknown as MediaMetadata,
    silence: () => ({
      play: async () => void loop.push('play'),
      pause: () => void loop.push('pause'),
      end: () => void loop.push('end'),
    }),
  };
  return { ground, session, handlers, loop, press: (action: string) => handlers.get(action)?.() };
};

const open = (media = createFakeMedia()) => {
  const opened = openSession(
    createKeptValues(() => createFakeStorage(), new EventTarget()),
    { mediaKeys: createMediaKeys(media.ground) },
  );
  return { ...opened, media };
};

describe('media keys', () => {
  it('are left to others until the band plays, and let go when it stops', async () => {
    const { commands, media } = open();
    expect([media.loop, media.handlers.size]).toEqual([[], 0]);
    await commands.play();
    expect(media.session).toMatchObject({
      playbackState: 'playing',
      metadata: { title: expect.stringMatching(/ in G$/), artist: 'C harp' },
    });
    expect([...media.handlers.keys()]).toEqual(['play', 'pause', 'stop', 'previoustrack', 'nexttrack']);
    commands.stop();
    expect(media.session).toMatchObject({ playbackState: 'none', metadata: null });
    // One that is only paused keeps the loudspeaker busy.
    expect([media.loop, media.handlers.size]).toEqual([['play', 'end'], 0]);
  });

  it('pause, go on and stop the band', async () => {
    const { commands, media, band } = open();
    await commands.play();
    media.press('pause');
    expect([band.status().kind, media.session?.playbackState]).toEqual(['paused', 'paused']);
    expect(media.loop).toEqual(['play', 'pause']);
    media.press('pause');
    expect(band.status().kind).toBe('paused');
    media.press('play');
    await vi.waitFor(() => expect(band.status().kind).toBe('playing'));
    media.press('stop');
    expect(band.status().kind).toBe('ready');
  });

  it('turn the songs of a set', async () => {
    const { commands, media, state } = open();
    commands.keepSong('Wet Boots');
    commands.typeTempo('88');
    commands.keepSong('Lamp Oil');
    commands.newSet('Hall');
    const [set] = state().book.sets;
    if (set === undefined) throw new Error('no set');
    const entries = state().book.songs.map(({ id }) => ({ song: id, talk: 5 }));
    commands.keepSet({ ...set, entries });
    commands.startSet(set.id);
    await commands.play();
    media.press('nexttrack');
    expect([state().book.running?.index, state().settings.tempo]).toEqual([1, 88]);
  });

  it('say the new key when the song moves, and do without actions a browser does not know', async () => {
    const { commands, media, state } = open(createFakeMedia(['stop']));
    await commands.play();
    expect([...media.handlers.keys()]).not.toContain('stop');
    commands.chooseSongKey(state().tune.chart.key === 9 ? (2 as never) : (9 as never));
    expect(media.session?.metadata?.title).toMatch(/ in A$/);
  });

  it('are not missed where a browser has no media session', async () => {
    const { commands, band } = open({
      ...createFakeMedia(),
      ground: { ...createFakeMedia().ground, session: undefined },
    });
    await commands.play();
    expect(band.status().kind).toBe('playing');
  });

  it('have a loop of ten seconds in which nothing sounds', () => {
    const wav = readWav(silentWav());
    if (wav.kind !== 'sound') throw new Error(JSON.stringify(wav));
    const { sampleRate, channels } = wav.sound;
    expect([sampleRate, channels.map(({ length }) => length)]).toEqual([8000, [80_000]]);
    expect(channels[0]?.every((sample) => sample === 0)).toBe(true);
  });
});
