import { describe, expect, it } from 'vitest';
import type { FontRefusal } from '../../../../src/audio/soundfont/font-messages';
import { sizeText } from '../../../../src/core/theory/quantities';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createSession } from '../../../helpers/create-session';
import { createFakeBand } from '../../../helpers/fake-band';
import { createFakeOwnSounds, type FakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';

const FILE = new File(['bytes'], 'hall.sf2');
const settled = () => new Promise((resolve) => setTimeout(resolve));

const open = (
  ownSounds: FakeOwnSounds = createFakeOwnSounds(),
  stored: Readonly<Record<string, unknown>> = {},
) => {
  const band = createFakeBand();
  const storage = createFakeStorage({ 'combshed.settings': JSON.stringify(stored) });
  const { store, commands, dispose } = createSession({
    band,
    kept: createKeptValues(() => storage, new EventTarget()),
    newSeed: () => 1,
    later: () => () => {},
    takeAway: createFakeTakeAway(),
    ownSounds,
  });
  return {
    ownSounds,
    commands,
    dispose,
    state: () => store.getState().ownSounds,
    parts: () => store.getState().settings.ownSounds,
    storedParts: () => JSON.parse(storage.items.get('combshed.settings') ?? '{}').ownSounds,
    played: () => band.sounds.at(-1)?.own,
  };
};

/** A file that was kept at the last visit. */
const keptBefore = (): FakeOwnSounds => {
  const ownSounds = createFakeOwnSounds();
  ownSounds.kept = { kind: 'file', name: 'kept.sf2', file: new Blob(['bytes']) };
  return ownSounds;
};

describe('loading a file', () => {
  it('lets the parts it has sounds for play from it, and keeps it', async () => {
    const { commands, state, parts, storedParts, played, ownSounds } = open();
    await commands.loadOwnSounds(FILE);
    expect(state()).toMatchObject({
      file: { name: 'hall.sf2', bytes: 5, kept: true, opened: { source: 1 } },
      opening: null,
      trouble: null,
    });
    expect(parts()).toEqual(['drums', 'bass', 'chords']);
    expect(storedParts()).toEqual(['drums', 'bass', 'chords']);
    expect(played()).toEqual({ source: 1, parts: ['drums', 'bass', 'chords'] });
    expect(ownSounds.kept).toMatchObject({ kind: 'file', name: 'hall.sf2' });
  });

  it.each<[FontRefusal, RegExp]>([
    [{ kind: 'empty' }, /is empty\. Choose another file/],
    [{ kind: 'too large', bytes: 312_400_000 }, /is 312 MB large\. Files up to 200 MB can be used.*smaller/],
    [{ kind: 'other' }, /is not a SoundFont\. Choose a file that ends in \.sf2 or \.sf3/],
    [{ kind: 'cut short', missing: 2_500_000 }, /2\.5 MB are missing at its end\. Download/],
    [{ kind: 'other version', version: 5 }, /version 5\. Versions 2 and 3 can be played/],
    [{ kind: 'damaged', detail: 'it holds no samples' }, /is damaged: it holds no samples\. Download/],
    [{ kind: 'unreadable', detail: 'gone' }, /could not be read \(gone\)\. See that it is still/],
    [{ kind: 'no player', detail: 'offline' }, /did not load \(offline\)\. Try again; if it stays away/],
    [{ kind: 'no instruments' }, /has none of the band’s instruments.*Choose another file/],
    [{ kind: 'too slow', seconds: 60 }, /within 60 seconds/],
  ])('refuses %j in words, and the band plays on', async (why, words) => {
    const { commands, state, parts, played, ownSounds } = open();
    ownSounds.answer = { kind: 'refused', why };
    await commands.loadOwnSounds(FILE);
    expect(state().file).toBeNull();
    expect(state().trouble).toMatch(words);
    expect(state().trouble).toMatch(/^“hall\.sf2” .*The band plays on as before\.$/);
    expect([parts(), played(), ownSounds.kept]).toEqual([[], undefined, { kind: 'nothing' }]);
  });

  it('keeps the file in use when another is refused', async () => {
    const { commands, state, played, ownSounds } = open();
    await commands.loadOwnSounds(FILE);
    ownSounds.answer = { kind: 'refused', why: { kind: 'other' } };
    await commands.loadOwnSounds(new File(['text'], 'notes.txt'));
    expect(state().file?.name).toBe('hall.sf2');
    expect(state().trouble).toMatch(/notes\.txt/);
    expect(played()?.parts).toEqual(['drums', 'bass', 'chords']);
  });

  it.each([
    [{ kind: 'full' }, /storage for this page is full.*until you close the page/],
    [{ kind: 'refused', detail: 'private' }, /does not let this page keep.*until you close the page/],
  ] as const)('uses a file that cannot be kept for this visit: %j', async (refuse, words) => {
    const { commands, state, played, ownSounds } = open();
    ownSounds.refuse = refuse;
    await commands.loadOwnSounds(FILE);
    expect(state().file?.kept).toBe(false);
    expect(state().trouble).toMatch(words);
    expect(played()?.source).toBe(1);
  });
});

describe('choosing', () => {
  it('a part at a time', async () => {
    const { commands, played, state } = open();
    await commands.loadOwnSounds(FILE);
    await commands.chooseSounds('bass', 'recorded');
    expect(played()?.parts).toEqual(['drums', 'chords']);
    await commands.chooseSounds('bass', 'own');
    expect(played()?.parts).toEqual(['drums', 'chords', 'bass']);
    for (const part of ['drums', 'bass', 'chords'] as const) await commands.chooseSounds(part, 'computed');
    expect(played()).toBeUndefined();
    expect(state().file?.name).toBe('hall.sf2');
  });

  it('to forget the file', async () => {
    const { commands, state, parts, played, ownSounds } = open();
    await commands.loadOwnSounds(FILE);
    await commands.forgetOwnSounds();
    expect(state()).toEqual({ file: null, opening: null, trouble: null });
    expect([parts(), played(), ownSounds.kept]).toEqual([[], undefined, { kind: 'nothing' }]);
    expect(ownSounds.asked).toEqual(['open 5', 'close']);
  });

  it('to forget it, and hearing when the browser does not', async () => {
    const { commands, state, ownSounds } = open();
    await commands.loadOwnSounds(FILE);
    ownSounds.refuse = { kind: 'refused', detail: '' };
    await commands.forgetOwnSounds();
    expect(state().trouble).toMatch(/Clear this page’s site data/);
  });
});

describe('the next visit', () => {
  it('opens the kept file when a part uses it', async () => {
    const { state, played, ownSounds } = open(keptBefore(), { ownSounds: ['bass'] });
    await settled();
    expect(state().file).toMatchObject({ name: 'kept.sf2', kept: true, opened: { source: 1 } });
    expect(played()).toEqual({ source: 1, parts: ['bass'] });
    expect(ownSounds.asked).toEqual(['open 5']);
  });

  it('lets it lie when none does, and opens it when one is switched on', async () => {
    const { state, played, commands, ownSounds } = open(keptBefore());
    await settled();
    expect(state().file).toMatchObject({ name: 'kept.sf2', opened: null });
    expect(ownSounds.asked).toEqual([]);
    await commands.chooseSounds('drums', 'own');
    expect(played()).toEqual({ source: 1, parts: ['drums'] });
  });

  it('says when the browser gave the file up', async () => {
    const { state, played } = open(createFakeOwnSounds(), { ownSounds: ['bass'] });
    await settled();
    expect(state().trouble).toMatch(/no longer keeps your sounds.*Load the file again/);
    expect(played()).toBeUndefined();
  });

  it('says so too where what is kept is no file any more, although no part uses it', async () => {
    const ownSounds = createFakeOwnSounds();
    ownSounds.kept = { kind: 'no file' };
    const { state, commands, ownSounds: devices } = open(ownSounds);
    await settled();
    expect(state()).toMatchObject({ file: null, trouble: expect.stringMatching(/Load the file again/) });
    await commands.loadOwnSounds(FILE);
    expect([state().trouble, devices.kept]).toMatchObject([null, { kind: 'file', name: 'hall.sf2' }]);
  });

  it('says nothing to those who never had one', async () => {
    const { state } = open();
    await settled();
    expect(state()).toEqual({ file: null, opening: null, trouble: null });
  });
});

it('goes on with the built-in sounds when the file breaks down, and opens it again on demand', async () => {
  const { commands, state, played, ownSounds } = open();
  await commands.loadOwnSounds(FILE);
  ownSounds.lose('out of memory');
  expect(played()).toBeUndefined();
  expect(state().trouble).toMatch(/“hall\.sf2” can be played no longer \(out of memory\)/);
  ownSounds.answer = { kind: 'opened', voices: ['piano'] };
  await commands.chooseSounds('chords', 'own');
  expect(played()).toMatchObject({ source: 2 });
  expect(state().trouble).toBeNull();
});

it('lets the file go with the session', async () => {
  const { commands, dispose, ownSounds } = open();
  await commands.loadOwnSounds(FILE);
  dispose();
  expect(ownSounds.asked).toEqual(['open 5', 'close']);
});

it.each([
  [0, '0 bytes'],
  [999, '999 bytes'],
  [1000, '1.0 kB'],
  [24_378, '24 kB'],
  [1_500_000, '1.5 MB'],
  [148_362_000, '148 MB'],
])('says %d bytes as %s', (bytes, words) => {
  expect(sizeText(bytes)).toBe(words);
});
