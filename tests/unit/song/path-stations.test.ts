import { describe, expect, it } from 'vitest';
import { isInReach } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { parseSettings, storableSettings } from '../../../src/core/settings/parse-settings';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { STATIONS } from '../../../src/core/song/path-stations';
import { tuneFor } from '../../../src/core/song/tune';
import { createKeptValues } from '../../../src/storage/kept-values';
import { openSession } from '../../helpers/fake-session';
import { createFakeStorage } from '../../helpers/fake-storage';

const tuneAt = (index: number) => {
  const settings = { ...DEFAULT_SETTINGS, ...STATIONS[index]?.choices };
  return { settings, tune: tuneFor(settings, chartFor(settings, [])) };
};

describe('the stations of the path', () => {
  it('are twelve, each with a task and one sentence of why', () => {
    expect(STATIONS).toHaveLength(12);
    for (const { task, why } of STATIONS) {
      expect(task.length).toBeGreaterThan(20);
      expect(why.match(/[.!?](\s|$)/g)).toHaveLength(1);
    }
  });

  it('are choices that are kept and read back as they are', () => {
    for (const { choices } of STATIONS) {
      const asked = { ...DEFAULT_SETTINGS, ...choices };
      expect(parseSettings(JSON.parse(JSON.stringify(storableSettings(asked))))).toEqual({
        settings: asked,
        problems: [],
      });
    }
  });

  it('ask for natural notes up to the first bend, and for the one bend of hole 4 from there', () => {
    const bent = STATIONS.map((_, index) => {
      const { settings, tune } = tuneAt(index);
      return tune.harp.sounds
        .filter((sound) => sound.technique !== 'natural' && isInReach(sound, settings.technique))
        .map(soundId);
    });
    expect(bent.slice(0, 10).flat()).toEqual([]);
    expect(bent.slice(10)).toEqual([["4D'"], ["4D'"]]);
  });

  it('are each put on the stand by one choice, played, and undone again', async () => {
    const { commands, state, band } = openSession(
      createKeptValues(() => createFakeStorage(), new EventTarget()),
    );
    for (const { choices } of STATIONS) {
      const before = state().settings;
      commands.choose(choices);
      expect(state().settings.tempo).toBe(choices.tempo);
      await commands.play();
      band.hear(0, 0);
      expect(state().status.kind).toBe('playing');
      commands.stop();
      commands.undoChoice();
      expect({ ...state().settings, style: null }).toEqual({ ...before, style: null });
    }
  });
});
