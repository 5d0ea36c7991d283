import { describe, expect, it } from 'vitest';
import { createFileSounds } from '../../../../src/audio/soundfont/soundfont-route';
import { createFakeFontWorker } from '../../../helpers/fake-font-worker';
import { createFakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { OWN_SOUNDS_BEHAVIOURS, type OwnSoundsStage } from '../../../helpers/own-sounds-contract';

const real = (): OwnSoundsStage => {
  const workers: ReturnType<typeof createFakeFontWorker>[] = [];
  let sources = 0;
  const sounds = createFileSounds({
    manner: 'as it is',
    nextSource: () => {
      sources += 1;
      return sources;
    },
    createWorker: () => {
      const worker = createFakeFontWorker();
      workers.push(worker);
      return worker;
    },
  });
  const open = (...answer: Parameters<ReturnType<typeof createFakeFontWorker>['answer']>) => {
    const opening = sounds.open(new Blob(['bytes']));
    workers.at(-1)?.answer(...answer);
    return opening;
  };
  return {
    sounds,
    openGood: () => open({ kind: 'opened', voices: ['piano'] }),
    openBad: () => open({ kind: 'refused', why: { kind: 'other' } }),
    breakDown: (detail) => workers.at(-1)?.break(detail),
  };
};

const fake = (): OwnSoundsStage => {
  const devices = createFakeOwnSounds();
  const open = (answer: typeof devices.answer) => {
    devices.answer = answer;
    return devices.sounds.open(new Blob(['bytes']));
  };
  return {
    sounds: devices.sounds,
    openGood: () => open({ kind: 'opened', voices: ['piano'] }),
    openBad: () => open({ kind: 'refused', why: { kind: 'other' } }),
    breakDown: devices.lose,
  };
};

describe.each([
  { which: 'that make no sound', create: fake },
  { which: 'of a worker', create: real },
])('own sounds $which', ({ create }) => {
  it.each(OWN_SOUNDS_BEHAVIOURS)('$does', async ({ act, expected }) => {
    expect(await act(create())).toEqual(expected);
  });
});
