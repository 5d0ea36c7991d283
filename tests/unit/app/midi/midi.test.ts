import { describe, expect, it, vi } from 'vitest';
import { createMidiPorts } from '../../../../src/midi/create-midi-ports';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createFakeMidi } from '../../../helpers/fake-midi';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const KEYS = 'Hall piano';
const PEDAL = 'Floor board';

const open = (settings: object = {}, midi = createFakeMidi()) => {
  const storage = createFakeStorage({ 'combshed.settings': JSON.stringify({ version: 1, ...settings }) });
  const opened = openSession(
    createKeptValues(() => storage, new EventTarget()),
    { midi: createMidiPorts(midi.ground) },
  );
  const down = (...keys: readonly number[]) => keys.forEach((key) => void midi.send(KEYS, 0x90, key, 90));
  const up = (...keys: readonly number[]) => keys.forEach((key) => void midi.send(KEYS, 0x80, key, 0));
  return { ...opened, hardware: midi, down, up, midi: () => opened.state().midi };
};

const listening = async (settings: object = {}) => {
  const opened = open(settings);
  opened.hardware.plug(KEYS);
  await opened.commands.listenToMidi(true);
  return opened;
};

describe('keyboards and pedals', () => {
  it('are asked for when wanted, and later only where that asks nobody', async () => {
    const { hardware, commands, midi, state } = open();
    hardware.plug(KEYS);
    expect(hardware.asked()).toBe(0);
    await commands.listenToMidi(true);
    expect(midi().status).toEqual({ kind: 'open', inputs: [KEYS], gone: [] });
    const kept = { midi: state().settings.midi };
    const later = open(kept, hardware);
    await vi.waitFor(() => expect(later.midi().status.kind).toBe('open'));
    const stranger = createFakeMidi();
    open(kept, stranger);
    await Promise.resolve();
    expect(stranger.asked()).toBe(0);
    await later.commands.listenToMidi(false);
    expect(hardware.send(KEYS, 0x90, 60, 90)).toBe(false);
  });

  it.each([
    ['NotAllowedError', /was told not to let this page have/],
    ['SecurityError', /was told not to let this page have/],
    ['NotSupportedError', /gives pages no keyboards and pedals/],
    ['InvalidStateError', /could not be opened/],
  ])('say what to do where the browser answers %s', async (name, words) => {
    const { hardware, commands, notices } = open();
    hardware.refuse(name);
    await commands.listenToMidi(true);
    expect(notices()).toMatch(words);
  });

  it.each([true, false])(
    'are missed when they are unplugged, and taken up when they are back',
    async (keeps) => {
      const { hardware, midi, notices, down } = await listening();
      down(48, 52, 55);
      expect(midi().fit?.chord.symbol).toBe('C');
      hardware.pull(KEYS, keeps);
      expect(midi()).toMatchObject({
        held: [],
        fit: null,
        status: { kind: 'open', inputs: [], gone: [KEYS] },
      });
      expect(notices()).toMatch(/“Hall piano” was unplugged/);
      hardware.plug(KEYS);
      expect(notices()).toBe('');
      down(48, 52, 55);
      expect(midi().fit?.chord.symbol).toBe('C');
    },
  );
});

describe('keys held', () => {
  it('are a chord that is answered to live, and nothing when they are let go', async () => {
    const { down, up, midi, state } = await listening();
    down(50, 53, 57);
    const { fit } = midi();
    expect(fit?.chord.symbol).toBe('Dm');
    // A C harp (standard tuning): D is 1, 4 and 8 draw; F 5 and 9 draw; A 3'' bent, 6 and 10 draw or blow.
    expect(fit?.sounds.filter(({ technique }) => technique === 'natural').map(({ id }) => id)).toEqual(
      expect.arrayContaining(['1D', '4D', '5D', '6D']),
    );
    expect(state().now.tune.chart.bars.length).toBeGreaterThan(1);
    down(48);
    expect(midi().fit?.chord.symbol).toBe('Dm7/C');
    up(53);
    up(50, 57, 48);
    expect(midi()).toMatchObject({ held: [], fit: null });
  });

  it('mean another harp’s holes when the harp is another', async () => {
    const { down, midi, commands, state } = await listening();
    down(50, 53, 57);
    const before = midi().fit?.sounds;
    commands.chooseHarpKey(state().tune.chart.key);
    expect(midi().fit?.chord.symbol).toBe('Dm');
    expect(midi().fit?.sounds).not.toEqual(before);
  });

  it('right of the split play the harp in hand, and only what it has', async () => {
    const { down, up, band, midi, commands } = await listening();
    band.asked.length = 0;
    down(60);
    await vi.waitFor(() => expect(band.asked).toEqual(['audition lead 60']));
    up(60);
    expect(band.asked).toEqual(['audition lead 60', 'end lead 60']);
    // D♭ above the key note of a C harp is a bend of hole 1 draw, which takes a technique that may be off.
    const { technique } = open().state().settings;
    commands.choose({ technique: { ...technique, drawBends: false } });
    down(61);
    expect(midi()).toMatchObject({ missing: 61, sounding: [] });
    expect(band.asked).toHaveLength(2);
  });

  it('let go before the sound was there end it all the same', async () => {
    const { down, up, band } = await listening();
    band.asked.length = 0;
    down(64);
    up(64);
    await vi.waitFor(() => expect(band.asked.filter((each) => each === 'end lead 64')).toHaveLength(2));
  });
});

describe('switches', () => {
  it('are taught by pressing them, do what they were taught, and are kept', async () => {
    const { hardware, commands, band, midi, state, up, down } = await listening();
    hardware.plug(PEDAL);
    commands.learnPedal('play');
    hardware.send(PEDAL, 0xb0, 64, 127);
    expect(midi().learning).toBeNull();
    expect(state().settings.midi.pedals).toEqual([
      { kind: 'control', channel: 1, number: 64, action: 'play' },
    ]);
    expect(band.status().kind).toBe('asleep');
    hardware.send(PEDAL, 0xb0, 64, 0);
    hardware.send(PEDAL, 0xb0, 64, 127);
    await vi.waitFor(() => expect(band.status().kind).toBe('playing'));
    commands.learnPedal('next bar');
    down(36);
    up(36);
    expect(midi().held).toEqual([]);
    down(36);
    expect(band.asked.at(-1)).toBe('seek 1');
    expect(midi().held).toEqual([]);
    commands.forgetPedal('next bar');
    down(36);
    expect(midi().held).toEqual([36]);
  });
});
