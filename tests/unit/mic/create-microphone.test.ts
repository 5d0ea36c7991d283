import { describe, expect, it, vi } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';
import { createMicrophone } from '../../../src/mic/create-microphone';
import type { EarWorker, MicrophoneGround } from '../../../src/mic/mic-ground';
import { soon } from '../../helpers/soon';

const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });

class FakeTrack extends EventTarget {
  muted = false;
  label = 'Lapel';
  settings: Record<string, unknown> = { deviceId: 'lapel', echoCancellation: false };
  readonly stop = vi.fn();
  readonly getSettings = () => this.settings;
  tell(event: string): void {
    this.dispatchEvent(new Event(event));
  }
}

class FakeSound extends EventTarget {
  state: AudioContextState = 'running';
  sampleRate = 48_000;
  readonly resume = async (): Promise<void> => this.become('running');
  become(state: AudioContextState): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

const rig = ({ refusal = null as Error | null, forbidden = false } = {}) => {
  const track = new FakeTrack();
  const sound = new FakeSound();
  const line = { port: {} as MessagePort, onBroken: vi.fn(), close: vi.fn() };
  const workers: EarWorker[] = [];
  const gestures = new EventTarget();
  const getUserMedia = vi.fn(async (_: unknown) => {
    if (refusal) throw refusal;
    return { getTracks: () => [track], getAudioTracks: () => [track] } as unknown as MediaStream;
  });
  const ground: MicrophoneGround = {
    devices: {
      getUserMedia,
      enumerateDevices: async () => [],
      addEventListener: () => {},
      removeEventListener: () => {},
    },
    forbidden: async () => forbidden,
    createWorker: () => {
      const worker: EarWorker = { postMessage: vi.fn(), terminate: vi.fn(), onmessage: null, onerror: null };
      workers.push(worker);
      return worker;
    },
    onGesture: (run) => {
      gestures.addEventListener('click', run);
      return () => gestures.removeEventListener('click', run);
    },
    connect: async () => line,
  };
  const click = (): boolean => gestures.dispatchEvent(new Event('click'));
  const microphone = createMicrophone(ground);
  const open = () =>
    microphone.open(null, { context: sound as unknown as AudioContext, output: {} as AudioNode }, { harp });
  return { microphone, track, sound, line, workers, getUserMedia, open, click };
};

const refused = (name: string): Error => new DOMException('no', name);

describe('the microphone of a browser', () => {
  it('asks for the sound as it is, and reads back what the browser does all the same', async () => {
    const { microphone, getUserMedia, track, open } = rig();
    track.settings = { deviceId: 'lapel', echoCancellation: true, noiseSuppression: false, latency: 0.01 };
    await open();
    // The three constraints of Media Capture and Streams (W3C) that change what a reed sounds like.
    expect(getUserMedia.mock.calls[0]?.[0]).toMatchObject({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
    });
    expect(microphone.status()).toEqual({
      kind: 'listening',
      input: { id: 'lapel', name: 'Lapel', processing: ['echo cancellation'], latency: 0.01 },
    });
  });

  // Names of errors: Media Capture and Streams (W3C), getUserMedia.
  it.each([
    ['NotAllowedError', 'denied'],
    ['NotFoundError', 'missing'],
    ['OverconstrainedError', 'unplugged'],
    ['NotReadableError', 'busy'],
    ['TypeError', 'failed'],
  ])('takes a %s for a microphone that is %s', async (name, why) => {
    expect(await rig({ refusal: refused(name) }).open()).toMatchObject({ kind: 'trouble', why });
  });

  it('is silent while it is muted or the sound is held up, and goes on', async () => {
    const { microphone, track, sound, open } = rig();
    await open();
    const seen: unknown[] = [];
    microphone.onStatus((status) => seen.push(status.kind === 'silent' ? status.why : status.kind));
    track.muted = true;
    track.tell('mute');
    sound.become('suspended');
    sound.become('running');
    track.muted = false;
    track.tell('unmute');
    expect(seen).toEqual(['muted', 'suspended', 'muted', 'listening']);
  });

  it('lets sound that was held up go on with the next click, as the player is told, and not once it is closed', async () => {
    const { microphone, sound, open, click } = rig();
    await open();
    sound.become('suspended');
    click();
    await soon(() => expect(microphone.status().kind).toBe('listening'));
    microphone.close();
    sound.become('suspended');
    click();
    expect(sound.state).toBe('suspended');
  });

  it.each([
    [false, 'unplugged'],
    [true, 'denied'],
  ])('tells a lost microphone from a forbidden one (%s)', async (forbidden, why) => {
    const { microphone, track, line, workers, open } = rig({ forbidden });
    await open();
    track.tell('ended');
    await soon(() => expect(microphone.status()).toMatchObject({ kind: 'trouble', why }));
    expect(line.close).toHaveBeenCalledTimes(1);
    expect(workers[0]?.terminate).toHaveBeenCalledTimes(1);
  });

  it('lets everything go when the ear breaks down or the sound is closed', async () => {
    for (const breakDown of ['worker', 'line', 'sound']) {
      const { microphone, track, line, workers, sound, open } = rig();
      await open();
      if (breakDown === 'worker') workers[0]?.onerror?.({} as ErrorEvent);
      if (breakDown === 'line') line.onBroken.mock.calls[0]?.[0]();
      if (breakDown === 'sound') sound.become('closed');
      expect(microphone.status()).toMatchObject({ kind: 'trouble', why: 'failed' });
      expect(track.stop).toHaveBeenCalledTimes(1);
    }
  });

  it('is unsupported where the page is given no devices', async () => {
    const microphone = createMicrophone({ ...({} as MicrophoneGround), devices: null });
    const ground = { context: {} as AudioContext, output: {} as AudioNode };
    expect(await microphone.open(null, ground, { harp })).toMatchObject({ why: 'unsupported' });
    expect(await microphone.devices()).toEqual([]);
  });
});
