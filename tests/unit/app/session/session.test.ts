import { describe, expect, it } from 'vitest';
import type { FeelId } from '../../../../src/core/feels/feels';
import { keeping, keptOf } from '../../../../src/core/song/key-coupling';
import { asBpm, asEpochMs, asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { countedEvents } from '../../../helpers/counted-events';
import { createSession } from '../../../helpers/create-session';
import { createFakeBand, type FakeBand } from '../../../helpers/fake-band';
import { createFakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { createFakeStorage, type FakeStorage } from '../../../helpers/fake-storage';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';

const noLater = () => () => {};
const G = asPitchClass(7);
const A = asPitchClass(9);
const C = asPitchClass(0);
const D = asPitchClass(2);

const open = (
  storage: FakeStorage = createFakeStorage(),
  band: FakeBand = createFakeBand(),
  events: Parameters<typeof createKeptValues>[1] = new EventTarget(),
) => {
  const kept = createKeptValues(() => storage, events);
  const session = createSession({
    band,
    kept,
    newSeed: () => 77,
    later: noLater,
    takeAway: createFakeTakeAway(),
    ownSounds: createFakeOwnSounds(),
  });
  return { band, storage, session, state: session.store.getState, commands: session.commands };
};

const settingsIn = (storage: FakeStorage): Record<string, unknown> =>
  JSON.parse(storage.items.get('combshed.settings') ?? 'null');

describe('keys that hang together', () => {
  it('starts a stranger on a C harp in second position, the song in G', () => {
    const { state } = open();
    expect(state().tune.harp.key).toBe(C);
    expect(state().tune.chart.key).toBe(G);
    expect(state().tune.position).toBe(2);
  });

  it('keeps the position when the song key changes, and changes the harp', () => {
    const { state, commands } = open();
    commands.chooseSongKey(A);
    expect([state().tune.harp.key, state().tune.position]).toEqual([D, 2]);
  });

  it('keeps the harp when the position changes, and moves the song', () => {
    const { state, commands } = open();
    commands.choosePosition(3);
    expect([state().tune.harp.key, state().tune.chart.key]).toEqual([C, D]);
  });

  it('changes the harp with the position when the song is pinned', () => {
    const { state, commands } = open();
    commands.choose({ songPinned: true });
    commands.choosePosition(1);
    expect([state().tune.harp.key, state().tune.chart.key]).toEqual([G, G]);
  });

  it('changes the position with the harp when the song is pinned', () => {
    const { state, commands } = open();
    commands.choose({ songPinned: true });
    commands.chooseHarpKey(G);
    expect([state().tune.position, state().tune.chart.key]).toEqual([1, G]);
  });

  it('keeps the harp when the song key changes and the harp is kept, and changes the position', () => {
    const { state, commands } = open();
    commands.choose(keeping('harp'));
    // Wikibooks, "Harmonica/Positions": on a C harp D is 3rd position and A the 4th.
    commands.chooseSongKey(D);
    expect([state().tune.harp.key, state().tune.position, state().tune.chart.key]).toEqual([C, 3, D]);
    commands.chooseSongKey(A);
    expect([state().tune.harp.key, state().tune.position, state().tune.chart.key]).toEqual([C, 4, A]);
  });

  it('keeps one thing at a time', () => {
    const { state, commands } = open();
    for (const kept of ['song', 'harp', 'position'] as const) {
      commands.choose(keeping(kept));
      expect(keptOf(state().settings)).toBe(kept);
    }
    commands.chooseSongKey(A);
    expect([state().tune.harp.key, state().tune.position]).toEqual([D, 2]);
  });
});

describe('playing', () => {
  it('plays from the cursor and shows the bar being heard with the next one', async () => {
    const { band, state, commands } = open();
    commands.moveTo(4);
    await commands.play();
    expect(band.asked).toContain('play from 4');
    band.hear(1, 4);
    expect([state().now.formBar, state().next?.formBar]).toEqual([4, 5]);
  });

  it('looks across the end of a chorus into the next', async () => {
    const { band, state, commands } = open();
    await commands.play();
    band.hear(1, 11);
    expect([state().next?.formBar, state().next?.chorus]).toEqual([0, 1]);
  });

  it('names the harp of the next chorus when the keys move', async () => {
    const { band, state, commands } = open();
    commands.choose({ plan: { ...state().settings.plan, keys: { kind: 'fourths' } } });
    await commands.play();
    band.hear(1, 11);
    expect([state().now.tune.harp.key, state().next?.tune.harp.key]).toEqual([C, asPitchClass(5)]);
  });

  it('hands a changed key to the band while playing, and only then', async () => {
    const { band, commands } = open();
    commands.chooseSongKey(A);
    expect(band.asked).not.toContain('change');
    await commands.play();
    commands.chooseSongKey(G);
    expect(band.asked.at(-1)).toBe('change');
    expect(band.programs.at(-1)?.chart.key).toBe(G);
  });

  it('changes levels without touching the music', async () => {
    const { band, commands } = open();
    await commands.play();
    commands.setChannel('bass', { muted: true });
    expect(band.asked).not.toContain('change');
    expect(band.sounds.at(-1)?.mix.channels.bass.muted).toBe(true);
  });

  it('lets the click be heard where it plays alone', async () => {
    const { band, state, commands } = open();
    await commands.play();
    expect(band.sounds.at(-1)?.mix.channels.click.muted).toBe(true);
    commands.choose({ plan: { ...state().settings.plan, sounding: 'click' } });
    expect(band.sounds.at(-1)?.mix.channels.click.muted).toBe(false);
  });

  it('makes the chorus being heard the last on request', async () => {
    const { band, state, commands } = open();
    await commands.play();
    band.hear(3, 2);
    commands.lastTime(true);
    expect(band.programs.at(-1)?.plan.choruses).toBe(3);
    commands.stop();
    expect(state().lastChorus).toBeNull();
  });

  it('says what to do when the browser blocks the sound, and takes it back once it plays', async () => {
    const band = createFakeBand({ kind: 'blocked' });
    const { state, commands } = open(createFakeStorage(), band);
    await commands.play();
    expect(
      state()
        .notices.map(({ text }) => text)
        .join(),
    ).toMatch(/press Play once more/);
    band.report({ kind: 'playing' });
    expect(state().notices).toEqual([]);
  });

  it('goes on after an interruption where it was, by the button and by the key, and says so again in vain', async () => {
    const { band, state, commands } = open();
    await commands.play();
    const asked = band.asked.length;
    for (const command of [commands.play, commands.toggle]) {
      band.report({ kind: 'interrupted' });
      commands.dismiss('band');
      await command();
      await Promise.resolve();
      expect(state().notices.map(({ text }) => text)).toEqual([
        expect.stringMatching(/press Play or the space bar/),
      ]);
    }
    expect(band.asked.slice(asked)).toEqual(['resume', 'resume']);
    band.report({ kind: 'playing' });
    expect(state().notices).toEqual([]);
    commands.toggle();
    expect(band.asked.at(-1)).toBe('stop');
  });

  it('pauses and goes on, and stops from there, but never pauses what rests or a warm-up', async () => {
    const { band, state, commands } = open();
    commands.pause();
    expect(band.asked).not.toContain('resume');
    await commands.play();
    commands.pause();
    expect([band.asked.at(-1), state().status.kind]).toEqual(['pause', 'paused']);
    commands.pause();
    expect([band.asked.at(-1), state().status.kind]).toEqual(['resume', 'playing']);
    commands.pause();
    commands.toggle();
    expect([band.asked.at(-1), state().status.kind]).toEqual(['stop', 'ready']);
    commands.startWarmUp();
    await Promise.resolve();
    const asked = band.asked.length;
    commands.pause();
    expect(band.asked.length).toBe(asked);
  });

  it('tells a paused band what is chosen and where to go on', async () => {
    const { band, commands } = open();
    await commands.play();
    commands.pause();
    commands.chooseSongKey(A);
    expect([band.asked.at(-1), band.programs.at(-1)?.chart.key]).toEqual(['change', A]);
    commands.moveTo(6);
    expect(band.asked.at(-1)).toBe('seek 6');
  });

  it('mutes all of the band at once and gives it back as it was', async () => {
    const { band, state, commands } = open();
    await commands.play();
    const { master } = state().settings.mix;
    commands.mute(true);
    expect(band.sounds.at(-1)?.mix.master).toBe(0);
    commands.setChannel('bass', { gain: 0.3 });
    expect(band.sounds.at(-1)?.mix.master).toBe(0);
    commands.mute(false);
    expect([band.sounds.at(-1)?.mix.master, state().settings.mix.master]).toEqual([master, master]);
  });

  it('says that the page computes the sounds', () => {
    const { band, state } = open();
    band.makeshift();
    band.report({ kind: 'playing' });
    expect(state().notices.map(({ text }) => text)).toEqual([
      expect.stringMatching(/the page computes them itself/),
    ]);
  });

  it.each([
    ['no web audio', /no Web Audio/],
    ['load', /Press Play to try again; .* open Combshed in another tab/],
    ['device', /speaker or headphones/],
  ] as const)('explains a failure: %s', (why, words) => {
    const { band, state } = open();
    band.report({ kind: 'failed', why, detail: 'x' });
    expect(state().notices.at(-1)?.text).toMatch(words);
  });
});

describe('tempo', () => {
  it('takes a typed tempo', () => {
    const { state, commands } = open();
    expect(commands.typeTempo('96')).toBeNull();
    expect(state().settings.tempo).toBe(96);
  });

  it.each(['fast', '', '0', '1000', 'NaN'])('refuses “%s” in words and keeps the tempo', (typed) => {
    const { state, commands } = open();
    const before = state().settings.tempo;
    expect(commands.typeTempo(typed)).toMatch(/from 40 to 280/);
    expect(state().settings.tempo).toBe(before);
  });

  it('follows taps', () => {
    const { state, commands } = open();
    for (const ms of [0, 500, 1000, 1500]) commands.tap(asEpochMs(ms));
    expect(state().settings.tempo).toBe(120);
  });

  it('moves to the usual tempo of a feel only where the present one does not suit it', () => {
    const { state, commands } = open();
    commands.chooseFeel('straight');
    expect(state().settings.tempo).toBe(104);
    commands.chooseFeel('slow-12-8');
    expect(state().settings.tempo).toBeLessThan(80);
  });

  it('comes back when feels without room for it were walked through, unless another was chosen under way', () => {
    const { state, commands } = open();
    const tempos = (...feels: readonly FeelId[]): readonly number[] =>
      feels.map((feel) => {
        commands.chooseFeel(feel);
        return state().settings.tempo;
      });
    commands.typeTempo('97');
    expect(tempos('slow-12-8', 'swing', 'shuffle', 'straight')).toEqual([58, 150, 97, 97]);
    expect(tempos('slow-12-8')).toEqual([58]);
    commands.nudgeTempo(2);
    expect(tempos('shuffle')).toEqual([108]);
  });

  it('brings the usual instruments of a feel, but keeps one the player chose', () => {
    const { state, commands } = open();
    const { style } = state().settings;
    commands.choose({ style: { ...style, chords: 'organ' } });
    commands.chooseFeel('straight');
    expect(state().settings.style).toMatchObject({ bass: 'fingered-bass', chords: 'organ', kit: 'sticks' });
    commands.chooseFeel('shuffle');
    expect(state().settings.style).toMatchObject({ bass: 'upright-bass', chords: 'organ', kit: 'sticks' });
  });
});

describe('what is kept', () => {
  it('is listened for at one place, and no longer when the session has ended', () => {
    const events = countedEvents();
    const { session } = open(createFakeStorage(), createFakeBand(), events);
    expect(events.count()).toBe(1);
    session.dispose();
    expect(events.count()).toBe(0);
  });

  it('survives a reload', () => {
    const storage = createFakeStorage();
    const first = open(storage);
    first.commands.chooseSongKey(A);
    first.commands.choose({ tempo: asBpm(88) });
    const second = open(storage);
    expect(second.state().tune.chart.key).toBe(A);
    expect(second.state().settings).toEqual(first.state().settings);
  });

  it('says what it could not read and keeps a copy of it', () => {
    const raw = JSON.stringify({ version: 1, tempo: 'fast', harpKey: 9 });
    const { state, storage } = open(createFakeStorage({ 'combshed.settings': raw }));
    expect(state().settings.harpKey).toBe(9);
    expect(state().notices[0]?.text).toMatch(/tempo could not be read/);
    expect(storage.items.get('combshed.settings.unread.1')).toBe(raw);
  });

  it('goes on when storage is full, and says so until it works again', () => {
    const storage = createFakeStorage();
    const { state, commands } = open(storage);
    storage.refuse = new DOMException('full', 'QuotaExceededError');
    commands.typeTempo('90');
    expect(state().settings.tempo).toBe(90);
    expect(state().notices[0]?.text).toMatch(/full/);
    storage.refuse = null;
    commands.typeTempo('104');
    expect(state().notices).toEqual([]);
    expect(settingsIn(storage)).toMatchObject({ tempo: 104 });
  });

  it('goes on when storage is refused altogether', () => {
    const kept = createKeptValues(() => {
      throw new DOMException('denied', 'SecurityError');
    }, new EventTarget());
    const takeAway = createFakeTakeAway();
    const session = createSession({
      band: createFakeBand(),
      kept,
      newSeed: () => 1,
      later: noLater,
      takeAway,
      ownSounds: createFakeOwnSounds(),
    });
    expect(session.store.getState().notices[0]?.text).toMatch(/does not let this page keep/);
  });
});
