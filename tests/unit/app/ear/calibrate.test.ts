import { describe, expect, it, vi } from 'vitest';
import { asSeconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

/** A session that listens, on what was kept before. */
const listening = async (storage = createFakeStorage()) => {
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  const step = () => opened.state().ear.calibrating;
  await opened.commands.listenToMe();
  return { ...opened, storage, step };
};

describe('calibration', () => {
  it('measures room, way and player in turn, keeps them for this microphone, and listens by them', async () => {
    const { commands, microphone, state, pass, step, storage, band } = await listening();
    microphone.lead({ seconds: asSeconds(0.09), gain: -24 });
    const done = commands.calibrate();
    expect([step(), band.asked.at(-1)]).toEqual(['quiet', 'stop']);
    const frame = { known: asSeconds(1), centre: asSeconds(1), frequency: 0, clarity: 0, level: -62 };
    microphone.hear({ frames: [frame, frame, frame] });
    pass();
    await vi.waitFor(() => expect(step()).toBe('along'));
    expect(microphone.asked.slice(-2)).toEqual(['measure', 'click']);
    pass();
    await done;
    const { calibration } = state().ear;
    expect(calibration).toMatchObject({ id: 'built-in', noise: -62, roundTrip: 0.09, leak: -24, lag: null });
    expect([step(), microphone.choices.at(-1)?.gate]).toEqual([null, -54]);

    const later = await listening(storage);
    expect(later.state().ear.calibration).toEqual(calibration);
    expect(later.microphone.choices.at(-1)?.gate).toBe(-54);
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

  it('does nothing while nothing is listened to', async () => {
    const { commands, microphone, step } = await listening();
    commands.stopListening();
    await commands.calibrate();
    expect([step(), microphone.asked.includes('measure')]).toEqual([null, false]);
  });
});
