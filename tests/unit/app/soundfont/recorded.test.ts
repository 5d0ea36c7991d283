import { describe, expect, it } from 'vitest';
import { createFakeRecorded } from '../../../helpers/fake-recorded';
import { openSession } from '../../../helpers/fake-session';
import { createFakeTabs } from '../../../helpers/fake-tabs';

const settled = () => new Promise((resolve) => setTimeout(resolve));

const open = () => {
  const recorded = createFakeRecorded();
  const opened = openSession(createFakeTabs().open(), { recorded });
  const arrive = async () => {
    recorded.come();
    await settled();
  };
  void opened.commands.fetchRecorded();
  return { ...opened, recorded, arrive, heard: () => opened.band.sounds.at(-1)?.recorded };
};

const BAND = { source: 1, parts: ['drums', 'bass', 'chords'] };

describe('the recorded instruments', () => {
  it('are made ready for at rest, and played by the whole band from the next Play on', async () => {
    const { arrive, band, commands, heard, state } = open();
    expect(state().recorded.kind).toBe('coming');
    await arrive();
    expect(band.prepared.at(-1)?.sound.recorded).toEqual(BAND);
    expect(state().recorded.kind).toBe('there');
    await commands.play();
    expect(heard()).toEqual(BAND);
  });

  it('are never taken up in mid-song', async () => {
    const { arrive, commands, heard } = open();
    await commands.play();
    await arrive();
    commands.choose({ bandFollowsHarp: true });
    commands.mute(true);
    expect(heard()).toBeUndefined();
    commands.stop();
    await commands.play();
    expect(heard()).toEqual(BAND);
  });

  it('do not keep the first Play waiting: until what it needs is computed, computed voices play', async () => {
    const { arrive, band, commands, heard } = open();
    let done = (): void => undefined;
    band.prepare = () =>
      new Promise((resolve) => {
        done = resolve;
      });
    await arrive();
    await commands.play();
    expect(heard()).toBeUndefined();
    done();
    await settled();
    commands.stop();
    await commands.play();
    expect(heard()).toEqual(BAND);
  });

  it('give way to the computed voices part by part, at once, and are kept so', async () => {
    const { arrive, commands, heard, state } = open();
    await arrive();
    await commands.play();
    await commands.chooseSounds('bass', 'computed');
    expect(heard()?.parts).toEqual(['drums', 'chords']);
    await commands.chooseSounds('bass', 'recorded');
    expect(heard()).toEqual(BAND);
    await commands.chooseSounds('lead', 'computed');
    expect(state().settings.computedVoices).toEqual([]);
  });

  it('are done without where they do not come or cannot be opened', async () => {
    const away = open();
    away.recorded.stayAway();
    const broken = open();
    broken.recorded.opens.answer = { kind: 'refused', why: { kind: 'damaged', detail: 'half of it' } };
    broken.recorded.come();
    await settled();
    for (const { commands, heard, state } of [away, broken]) {
      expect(state().recorded.kind).toBe('missing');
      await commands.play();
      expect(heard()).toBeUndefined();
    }
  });

  it('give way to the computed voices when what plays them breaks down', async () => {
    const { arrive, commands, heard, recorded, state } = open();
    await arrive();
    await commands.play();
    recorded.opens.lose('out of memory');
    expect(heard()).toBeUndefined();
    expect(state().recorded.kind).toBe('missing');
  });
});
