import { describe, expect, it, vi } from 'vitest';
import type { Program } from '../../../../src/core/arranger/program';
import { sectionAt } from '../../../../src/core/arranger/section-at';
import { printPhrase } from '../../../../src/core/phrase/print-phrase';
import { quantise } from '../../../../src/core/practice/quantise';
import type { PartnerChoice } from '../../../../src/core/settings/practice-settings';
import { asBpm } from '../../../../src/core/theory/units';
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
    expect(midi().status).toEqual({ kind: 'open', inputs: [KEYS], outputs: [], gone: [] });
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

/** Keys play the harp; a trading of one call goes on, at 60 beats a minute: a tick lasts 1/480 of a second. */
const trading = async (partner: Partial<PartnerChoice> = {}) => {
  const opened = await listening({ midi: { on: false, use: 'harp', split: 60, pedals: [] } });
  const { commands, state, band, hardware } = opened;
  commands.choose({
    trade: { on: true, calls: '-2:q -3 -4 -3 | -2:h r:h' },
    partner: { ...state().settings.partner, ...partner },
    style: { ...state().settings.style, swing: 1 },
    tempo: asBpm(60),
    changesWait: false,
  });
  await commands.toggle();
  await vi.waitFor(() => expect(band.status().kind).toBe('playing'));
  const strike = (bar: number, ticks: number, key: number, long: number): void => {
    band.hear(1, bar, ticks);
    hardware.send(KEYS, 0x90, key, 90);
    hardware.pass((long * 1000) / 480);
    hardware.send(KEYS, 0x80, key, 0);
  };
  return { ...opened, strike };
};

describe('keys that play the harp', () => {
  // A C harp in second position: the call is G B D B G, on 2, 3 and 4 draw.
  const CALL = [
    [2, 0, 67],
    [2, 480, 71],
    [2, 960, 74],
    [2, 1440, 71],
    [3, 0, 67],
  ] as const;

  it('are judged like what the microphone hears, with no microphone', async () => {
    const { strike, state, band, pass, microphone } = await trading();
    for (const [bar, ticks, key] of CALL) strike(bar, ticks, key, bar === 3 ? 960 : 460);
    band.hear(1, 3);
    pass();
    expect(microphone.status().kind).toBe('off');
    expect(state().trades.last).toMatchObject({
      ...{ mark: 'clean', bySelf: false, sentence: 'All of it, in tune and in time.' },
    });
    // 2 draw and 3 blow are one key: both count.
    expect(state().trades.last?.heard).toHaveLength(5);
  });

  it('count from when they were struck, however late they come, and another key is another note', async () => {
    const { strike, state, band, pass, hardware } = await trading();
    hardware.delay(100);
    // A tenth of a second later than struck: 48 ticks.
    for (const [bar, ticks, key] of CALL)
      strike(bar, ticks + 48, ticks === 960 ? 75 : key, bar === 3 ? 960 : 460);
    band.hear(1, 3);
    pass();
    const { last } = state().trades;
    expect(last?.heard?.map(({ at }) => Math.round(at))).toEqual([0, 480, 960, 1440, 1920]);
    expect(last?.judgement?.notes.map(({ pitch }) => pitch)).toEqual([
      ...['right', 'right', 'other', 'right', 'right'],
    ]);
    expect(last?.mark).not.toBe('clean');
  });

  it('leave an answer to the player where none was struck, and are answered where the player leads', async () => {
    const quiet = await trading();
    quiet.band.hear(1, 2);
    quiet.band.hear(1, 3);
    quiet.pass();
    expect(quiet.state().trades.last).toMatchObject({ heard: null, mark: null });
    const { strike, state, band, pass } = await trading({ mode: 'lead' });
    for (const [bar, ticks, key] of CALL) strike(bar - 2, ticks, key, 460);
    band.hear(1, 1);
    pass();
    expect(state().tradeRun.heard[0]?.phrase.notes.length).toBeGreaterThan(2);
  });

  it('write a phrase, snapped as is wanted, without what the harp lacks', async () => {
    const { commands, state, hardware, pass, midi } = await listening({
      midi: { on: false, use: 'harp', split: 60, pedals: [] },
    });
    commands.choose({ tempo: asBpm(60), style: { ...state().settings.style, swing: 1 } });
    commands.playIn(1);
    const strike = (key: number, wait: number, long: number): void => {
      hardware.pass(wait);
      hardware.send(KEYS, 0x90, key, 90);
      hardware.pass(long);
      hardware.send(KEYS, 0x80, key, 0);
    };
    strike(67, 3000, 900);
    strike(71, 130, 440);
    strike(20, 10, 10);
    expect(midi().missing).toBe(20);
    strike(74, 40, 380);
    strike(72, 360, 1700);
    pass();
    const { playedIn } = state();
    expect(playedIn?.phase).toBe('done');
    const tab = playedIn && printPhrase(quantise(playedIn.notes, { ...playedIn, steps: 2 }), 'signs');
    expect(tab).toBe('-2:q -3:e -4 r 4:q.');
  });
});

describe('a band that follows', () => {
  const following = async (follow = true) => {
    const opened = await listening();
    const { commands, band } = opened;
    commands.chooseMidi({ follow, use: 'chords' });
    await commands.toggle();
    await vi.waitFor(() => expect(band.status().kind).toBe('playing'));
    // What the band was told to follow, as chorus, bar and chord.
    const followed = () =>
      (band.programs.at(-1)?.followed ?? []).map(
        ({ chorus, bar, chord }) => `${chorus}/${bar} ${chord?.symbol ?? 'chart'}`,
      );
    return { ...opened, followed };
  };
  const C = [48, 52, 55];
  const F = [48, 53, 57];

  it('has the chord held at the end of a bar from the next one on, across the chorus', async () => {
    const { band, down, up, pass, followed } = await following();
    band.hear(1, 3);
    band.hear(1, 3, 900);
    down(...C);
    expect(followed()).toEqual([]);
    pass();
    expect(followed()).toEqual(['0/4 C']);
    // The section the band plays has it, to the end of the chorus.
    const section = sectionAt(band.programs.at(-1) as Program, 1);
    expect(section?.chart.bars.slice(3, 6).map(({ chords }) => chords[0]?.chord.symbol)).toEqual([
      section?.chart.bars[0]?.chords[0]?.chord.symbol,
      ...['C', 'C'],
    ]);
    band.hear(1, 11);
    up(...C);
    band.hear(1, 11, 800);
    down(...F);
    pass();
    expect(followed()).toEqual(['0/4 C', '1/0 F']);
  });

  it('takes up at once what is struck on the one, and what comes late in the bar for the next', async () => {
    const { band, down, up, followed } = await following();
    band.hear(1, 2, 100);
    down(...C);
    expect(followed()).toEqual(['0/2 C']);
    up(...C);
    band.hear(1, 2, 1910);
    down(...F);
    expect(followed()).toEqual(['0/2 C', '0/3 F']);
  });

  it('goes back to the chart after a bar with nothing held, and when it is to follow no longer', async () => {
    const { band, down, up, pass, followed, commands } = await following();
    band.hear(1, 2, 100);
    down(...C);
    up(...C);
    pass();
    expect(followed()).toEqual(['0/2 C']);
    // Struck in the bar before and let go: that bar decided for this one.
    band.hear(1, 3);
    pass();
    expect(followed()).toEqual(['0/2 C', '0/4 chart']);
    commands.chooseMidi({ follow: false });
    expect(followed()).toEqual([]);
  });

  it('does not unless it was asked to, and forgets when it stops', async () => {
    const quiet = await following(false);
    quiet.band.hear(1, 2, 100);
    quiet.down(...C);
    quiet.pass();
    expect(quiet.followed()).toEqual([]);
    const { band, down, commands, state } = await following();
    band.hear(1, 2, 100);
    down(...C);
    commands.stop();
    expect(state()).toMatchObject({ followed: [] });
  });
});

const BOX = 'Rhythm box';

describe('an instrument outside', () => {
  const sending = async (out: readonly string[]) => {
    const opened = await listening();
    const { hardware, commands, band } = opened;
    hardware.plugOut(BOX);
    commands.chooseMidi({ out });
    await commands.toggle();
    await vi.waitFor(() => expect(band.status().kind).toBe('playing'));
    hardware.sent();
    return opened;
  };
  const pulse = (ticks: number, at = 0) =>
    ({ kind: 'pulse', at, section: { index: 1, countsIn: false }, ticks }) as const;
  const bass = (kind: 'on' | 'off', at = 0) => ({ kind, at, part: 'bass', pitch: 43, velocity: 80 }) as const;
  const drum = { ...bass('on'), part: 'drums', pitch: 42 } as const;

  it('gets nothing until something is chosen, and then just that, at its time', async () => {
    const { hardware, band, commands } = await sending([]);
    band.outside([pulse(0), bass('on')]);
    expect(hardware.sent()).toEqual([]);
    commands.chooseMidi({ out: ['clock', 'bass', 'nonsense'] });
    band.outside([pulse(0, 100), bass('on', 101), drum, bass('off', 150), pulse(20, 160)]);
    expect(hardware.sentWhole()).toEqual([
      { to: BOX, bytes: [0xfa], at: 100 },
      { to: BOX, bytes: [0xf8], at: 100 },
      { to: BOX, bytes: [0x90, 43, 80], at: 101 },
      { to: BOX, bytes: [0x80, 43, 64], at: 150 },
      { to: BOX, bytes: [0xf8], at: 160 },
    ]);
  });

  it('is silent when the band stops, at once and after what was sent ahead, and starts anew', async () => {
    const { hardware, band, commands } = await sending(['clock', 'bass']);
    band.outside([pulse(0, 100), bass('on', 180)]);
    hardware.sent();
    commands.stop();
    const sent = hardware.sentWhole();
    const ends = sent.filter(({ bytes }) => bytes.join() === '128,43,64' || bytes.join() === '176,123,0');
    expect(sent[0]).toEqual({ to: BOX, bytes: [0xfc], at: 181 });
    expect(ends.map(({ at }) => at)).toEqual([0, 0, 181, 181]);
    await commands.toggle();
    band.outside([pulse(0, 400)]);
    expect(hardware.sent().slice(-2)).toEqual(['fa', 'f8']);
  });

  it('goes on from the place after a pause', async () => {
    const { hardware, band, commands } = await sending(['clock']);
    band.outside([pulse(0), pulse(20)]);
    commands.pause();
    commands.pause();
    await vi.waitFor(() => expect(band.status().kind).toBe('playing'));
    hardware.sent();
    band.outside([pulse(480)]);
    // A quarter note is four sixteenths.
    expect(hardware.sent()).toEqual(['f2 4 0', 'fb', 'f8']);
  });

  it('is silent before the page is left, when it was pulled and is back, and when its part is left out', async () => {
    const { hardware, band, commands, notices } = await sending(['bass']);
    const silent = () => {
      const sent = hardware.sent();
      expect(sent).toContain('b0 7b 0');
      return sent;
    };
    band.outside([bass('on')]);
    hardware.sent();
    hardware.leave();
    expect(silent()).toContain('80 2b 40');
    band.outside([bass('on')]);
    hardware.pull(BOX);
    expect(notices()).toMatch(/“Rhythm box” was unplugged/);
    band.outside([bass('off'), bass('on')]);
    hardware.sent();
    hardware.plugOut(BOX);
    silent();
    band.outside([bass('on')]);
    hardware.sent();
    commands.chooseMidi({ out: [] });
    expect(silent()).toContain('80 2b 40');
    band.outside([bass('on')]);
    expect(hardware.sent()).toEqual([]);
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
