import { describe, expect, it } from 'vitest';
import { asSeconds, type Seconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import type { FakeMicrophone } from '../../../helpers/fake-microphone';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { soon } from '../../../helpers/soon';

/** A session that listens, on what was kept before. */
const listening = async (storage = createFakeStorage()) => {
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  const step = () => opened.state().ear.calibrating;
  await opened.commands.listenToMe();
  return { ...opened, storage, step };
};

const hearLevels = (microphone: FakeMicrophone, level: number, way: Seconds | null = null): void => {
  const frame = { known: asSeconds(1), centre: asSeconds(1), frequency: 0, clarity: 0, level };
  microphone.hear({ frames: Array.from({ length: 100 }, () => frame), way });
};

describe('calibration', () => {
  it('measures room, way and player in turn, keeps them for this microphone, and listens by them', async () => {
    const { commands, microphone, state, pass, step, storage, band } = await listening();
    microphone.lead({ seconds: asSeconds(0.09), gain: -24 });
    const done = commands.calibrate();
    expect([step(), band.asked.at(-1)]).toEqual(['quiet', 'stop']);
    hearLevels(microphone, -62);
    pass();
    await soon(() => expect([step(), band.status().kind]).toEqual(['band', 'playing']));
    // While the ear learns to take the band out, what is left does not count.
    hearLevels(microphone, -30);
    await soon(() => {
      pass();
      hearLevels(microphone, -57, asSeconds(0.094));
      expect(step()).toBe('along');
    });
    expect(microphone.asked.slice(-2)).toEqual(['measure', 'click']);
    expect(band.status().kind).not.toBe('playing');
    pass();
    await done;
    const { calibration } = state().ear;
    expect(calibration).toMatchObject({
      id: 'built-in',
      noise: -62,
      roundTrip: 0.09,
      way: 0.094,
      leak: -24,
      lag: null,
    });
    // What the band leaves, and 4 dB.
    expect([step(), calibration?.gate, microphone.choices.at(-1)?.gate]).toEqual([null, -53, -53]);

    const later = await listening(storage);
    expect(later.state().ear.calibration).toEqual(calibration);
    expect(later.microphone.choices.at(-1)?.gate).toBe(-53);
    later.commands.forgetCalibration();
    expect(later.state().ear.calibration).toBeNull();
  });

  it('is broken off when asked, and when the microphone goes, and changes nothing then', async () => {
    for (const breakOff of ['cancelCalibration', 'stopListening'] as const) {
      const { commands, state, pass, step } = await listening();
      const done = commands.calibrate();
      commands[breakOff]();
      expect(step()).toBeNull();
      pass();
      await done;
      expect(state().ear.calibration).toBeNull();
    }
  });

  it('lets the band be, and takes taps for notes, where there are headphones and no harp in the mouth', async () => {
    const { commands, microphone, state, pass, step, band } = await listening();
    const done = commands.calibrate();
    commands.tapAlong(0);
    hearLevels(microphone, -70);
    pass();
    await soon(() => expect(step()).toBe('along'));
    // The clicks begin a second later and come every two thirds; hearing moves the clock of this microphone by 30 ms.
    const clicks = 8;
    const from = microphone.now() ?? 0;
    for (let i = 0; i < clicks; i += 1) {
      while ((microphone.now() ?? 0) < from + 1 + (i * 2) / 3 + 0.1) microphone.hear();
      const late = (microphone.now() ?? 0) - (from + 1 + (i * 2) / 3 + 0.1);
      commands.tapAlong(late);
    }
    pass();
    await done;
    const { calibration } = state().ear;
    expect(band.asked.filter((each) => each.startsWith('play'))).toEqual([]);
    expect(calibration).toMatchObject({ roundTrip: null, tapped: true, gate: -66 });
    // A tenth of a second behind the clicks, and a guess of 20 ms for the microphone.
    expect(calibration?.lag).toBeCloseTo(0.12, 5);
  });

  it('does nothing while nothing is listened to', async () => {
    const { commands, microphone, step } = await listening();
    commands.stopListening();
    await commands.calibrate();
    expect([step(), microphone.asked.includes('measure')]).toEqual([null, false]);
  });
});
