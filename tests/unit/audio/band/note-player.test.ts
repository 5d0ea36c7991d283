import { describe, expect, it } from 'vitest';
import { createPlayer } from '../../../../src/audio/band/note-player';
import type { NoteSound } from '../../../../src/audio/band/note-sound';
import type { ScheduledNote } from '../../../../src/audio/transport/scheduled-note';
import type { PartId } from '../../../../src/core/score/score';
import { asHz, asMidi, asTicks } from '../../../../src/core/theory/units';
import { FakeAudioContext } from '../../../helpers/fake-audio';

const note = (
  part: PartId,
  pitch: number,
  at: number,
  until: number,
  changes: Partial<ScheduledNote> & { readonly glideFrom?: number } = {},
): ScheduledNote => {
  const { glideFrom, ...rest } = changes;
  const event = {
    part,
    pitch: asMidi(pitch),
    at: asTicks(0),
    length: asTicks(1),
    velocity: 80,
    ...(glideFrom === undefined ? {} : { glideFrom }),
  };
  return { event, at, until, offset: 0, glideSeconds: 0, stroke: 0, ...rest };
};

const soundOf = (seconds: number, loop: { from: number; to: number } | null, release: number): NoteSound => ({
  level: 0.5,
  found: {
    rate: 1,
    exact: true,
    sound: {
      key: { voice: 'piano', midi: asMidi(60), hz: asHz(261.6), layer: 1, stroke: 0 },
      samples: { duration: seconds } as AudioBuffer,
      bytes: 0,
      loop,
      release,
    },
  },
});

const rig = (sound: NoteSound | null = soundOf(4, null, 0.1)) => {
  const context = new FakeAudioContext();
  const player = createPlayer({
    context: context as unknown as BaseAudioContext,
    connect: () => {},
    find: () => sound,
  });
  /** Level of the n-th started note at a time. */
  const level = (index: number, time: number) => context.gains[index].gain.at(time);
  return { context, player, level };
};

describe('a held note', () => {
  it('sounds from its start to its end and fades within its release', () => {
    const { context, player, level } = rig();
    player.start(note('bass', 40, 1, 2));
    expect(context.sources[0]).toMatchObject({ startedAt: 1, offset: 0, loop: false });
    expect([1, 1.5, 2, 2.05, 2.1].map((time) => level(0, time))).toEqual([
      0.5,
      0.5,
      0.5,
      expect.closeTo(0.25, 6),
      0,
    ]);
    expect(context.sources[0].stopAt).toBeGreaterThan(2.1);
  });

  it('loops as long as it is held', () => {
    const { context, player } = rig(soundOf(2, { from: 0.5, to: 1.5 }, 0.05));
    player.start(note('chords', 60, 1, 9));
    expect(context.sources[0]).toMatchObject({ loop: true, loopStart: 0.5, loopEnd: 1.5 });
    expect(context.sources[0].stopAt).toBeGreaterThan(9.05);
  });

  it('entered in its middle begins there, inside the loop, and rises without a step', () => {
    const { context, player, level } = rig(soundOf(2, { from: 0.5, to: 1.5 }, 0.05));
    player.start(note('chords', 60, 1, 9, { offset: 3.25 }));
    expect(context.sources[0].offset).toBeCloseTo(1.25, 9);
    expect(level(0, 1)).toBe(0);
    expect(level(0, 1.01)).toBeCloseTo(0.5, 2);
  });

  it('entered in its middle adds up to one level with the note it takes over from', () => {
    const { player, level } = rig();
    player.start(note('bass', 40, 1, 3));
    player.cut(2);
    player.start(note('bass', 40, 2, 3, { offset: 1 }));
    for (const time of [2, 2.001, 2.003, 2.006]) expect(level(0, time) + level(1, time)).toBeCloseTo(0.5, 9);
  });

  it('entered after its sound has died is not started', () => {
    const { context, player } = rig(soundOf(2, null, 0.05));
    player.start(note('bass', 40, 1, 9, { offset: 3 }));
    expect(context.sources).toEqual([]);
  });

  it('glides from a distance to its pitch', () => {
    const { context, player } = rig();
    player.start(note('lead', 67, 1, 2, { glideFrom: -2, glideSeconds: 0.3 }));
    const { calls } = context.sources[0].playbackRate;
    expect(calls).toEqual([
      ['set', expect.closeTo(2 ** (-2 / 12), 9), 1],
      ['glide', 1, 1.3],
    ]);
  });

  it('gives way when the same string is struck again', () => {
    const { player, level } = rig();
    player.start(note('bass', 40, 1, 2));
    player.start(note('bass', 40, 1.5, 2.5));
    player.start(note('bass', 45, 1.5, 2.5));
    expect(level(0, 1.5)).toBeCloseTo(0.5, 6);
    expect(level(0, 1.51)).toBeLessThan(0.005);
    expect(level(1, 1.6)).toBe(0.5);
  });
});

describe('a struck note', () => {
  it('rings out whatever its length', () => {
    const { context, player, level } = rig(soundOf(1.2, null, 1.2));
    player.start(note('drums', 49, 1, 1.1));
    expect(level(0, 2.1)).toBe(0.5);
    expect(context.sources[0].stopAt).toBeGreaterThan(2.2);
  });

  it('of the closed hi-hat ends the open one and nothing else', () => {
    const { player, level } = rig();
    player.start(note('drums', 46, 1, 2));
    player.start(note('drums', 51, 1, 2));
    player.start(note('drums', 42, 1.4, 2));
    expect(level(0, 1.42)).toBeLessThan(0.001);
    expect(level(1, 1.42)).toBe(0.5);
  });
});

describe('a cut', () => {
  it('takes back what has not begun, fades what is held, and lets drums ring', () => {
    const { context, player, level } = rig();
    player.start(note('bass', 40, 1, 2));
    player.start(note('drums', 36, 1.2, 1.3));
    player.start(note('bass', 41, 2, 3));
    context.currentTime = 1.5;
    player.cut(1.53);
    expect(level(0, 1.53)).toBe(0.5);
    expect(level(0, 1.538)).toBeLessThan(0.01);
    expect(context.sources[0].stopAt).toBeCloseTo(1.55, 6);
    expect(level(1, 2)).toBe(0.5);
    expect(context.sources[2].connected).toBe(false);
    expect(player.live()).toBe(2);
  });

  it('in the middle of a release goes on from where the release is', () => {
    const { player, level } = rig(soundOf(4, null, 0.4));
    player.start(note('chords', 60, 1, 2));
    player.cut(2.2);
    expect(level(0, 2.1)).toBeCloseTo(0.375, 6);
    expect(level(0, 2.2)).toBeCloseTo(0.25, 6);
    expect(level(0, 2.21)).toBeLessThan(0.005);
  });
});

describe('an end', () => {
  it('is for drums too', () => {
    const { context, player, level } = rig(soundOf(7, null, 7));
    player.start(note('drums', 49, 1, 1.1));
    player.start(note('drums', 49, 2, 2.1));
    context.currentTime = 1.5;
    player.end(1.53);
    expect(level(0, 1.53)).toBe(0.5);
    expect(level(0, 1.54)).toBeLessThan(0.005);
    context.currentTime = 3;
    expect(player.live()).toBe(0);
  });
});

describe('what is over', () => {
  it('is let go, with or without the ended event', () => {
    const { context, player } = rig();
    player.start(note('bass', 40, 1, 2));
    player.start(note('bass', 43, 1, 2));
    context.sources[0].onended?.();
    expect(player.live()).toBe(1);
    context.currentTime = 4;
    expect(player.live()).toBe(0);
    expect(context.sources.map(({ connected }) => connected)).toEqual([false, false]);
  });

  it('or has no sound at all is passed over', () => {
    const { context, player } = rig(null);
    player.start(note('bass', 40, 1, 2));
    expect(context.sources).toEqual([]);
    expect(player.live()).toBe(0);
  });
});
