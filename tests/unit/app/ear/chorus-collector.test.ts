import { describe, expect, it } from 'vitest';
import type { HeardNote } from '../../../../src/core/hearing/heard-note';
import { asCents, asSeconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { heardNote } from '../../../helpers/heard-note';

/** A session that listens while its band plays, and plays on the harp in hand. */
const playing = async () => {
  const opened = openSession(createKeptValues(() => createFakeStorage(), new EventTarget()));
  const { commands, band, microphone } = opened;
  await commands.listenToMe();
  await commands.play();
  let id = 0;
  const play = (name: string, change: Partial<HeardNote> = {}): void => {
    const begun: HeardNote = { ...heardNote([name, id, id]), id, to: null, ...change };
    id += 1;
    microphone.hear({ notes: [begun] });
    microphone.hear({ notes: [{ ...begun, to: asSeconds(id - 0.5) }] });
  };
  return { ...opened, play, hear: band.hear };
};

describe('what was heard of a chorus', () => {
  it('is told when the next chorus begins, bar by bar, and put away when asked', async () => {
    const { state, play, hear, commands } = await playing();
    hear(1, 0);
    play('2D');
    play('3D');
    expect(state().ear.report).toBeNull();
    hear(1, 1);
    play('4B');
    hear(2, 0);
    const { report } = state().ear;
    expect(report?.chorus).toBe(0);
    expect(report?.heard.bars.slice(0, 2).map(({ counts }) => counts.chord)).toEqual([2, 1]);
    expect(report?.advice).toMatch(/3 notes were heard/);
    commands.putReportAway();
    expect(state().ear.report).toBeNull();
  });

  it('is told when the band stops, and not of a band that nobody listens to', async () => {
    const { state, play, hear, commands } = await playing();
    hear(1, 0);
    play('2D');
    commands.stop();
    expect(state().ear.report?.heard.hits).toHaveLength(1);
    commands.putReportAway();
    commands.stopListening();
    await commands.play();
    hear(1, 0);
    hear(2, 0);
    expect(state().ear.report).toBeNull();
  });

  it('goes with the form it was heard over', async () => {
    const { state, play, hear, commands } = await playing();
    hear(1, 0);
    play('2D');
    commands.stop();
    commands.nudgeTempo(4);
    expect(state().ear.report).not.toBeNull();
    commands.chooseForm('eight-v-second');
    expect(state().ear.report).toBeNull();
  });

  it('counts a note once, with what is known of it at its end', async () => {
    const { state, play, hear, commands } = await playing();
    hear(1, 0);
    play('2D', { offset: asCents(-12) });
    commands.stop();
    expect(state().ear.report?.heard.hits.map(({ note }) => [note.offset, note.length])).toEqual([
      [-12, 0.5],
    ]);
  });
});
