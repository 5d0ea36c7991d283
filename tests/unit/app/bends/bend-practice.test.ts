import { afterEach, describe, expect, it } from 'vitest';
import type { Exercise } from '../../../../src/core/bends/bend-exercise';
import { isInReach } from '../../../../src/core/harp/reach';
import { soundId } from '../../../../src/core/harp/tab';
import { asPitchClass, asSeconds } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { soon } from '../../../helpers/soon';

const ended: (() => void)[] = [];
afterEach(() => {
  for (const end of ended.splice(0)) end();
});

const open = async (storage = createFakeStorage()) => {
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  ended.push(opened.session.dispose);
  const { commands, state, pass, microphone, band } = opened;
  const practice = await commands.openBends();
  const soundOf = (id: string) => {
    const found = state().tune.harp.sounds.find((sound) => soundId(sound) === id);
    if (found === undefined) throw new Error(`No ${id}`);
    return found;
  };
  const turn = () => state().bends.turn;
  let now = 0;
  /** Lets a pitch be heard for so long, or silence. */
  const sound = (hz: number, seconds: number): void => {
    const frames = Array.from({ length: Math.round(seconds * 200) }, () => {
      now += 0.005;
      return { known: asSeconds(now), centre: asSeconds(now), frequency: hz, clarity: 0.9, level: -20 };
    });
    microphone.hear({ frames });
  };
  const start = async (id: string, exercise: Exercise = 'hold', given = false) => {
    practice.start({ target: soundOf(id), exercise, given });
    // The lead has been let sound.
    await soon(() => {
      expect(turn()?.step).toBe('lead');
      pass();
      expect(turn()?.step).not.toBe('lead');
    });
  };
  /** Lets the verdict stand, and the next turn open. */
  const goOn = () =>
    soon(() => {
      pass();
      expect(['yours', 'mark']).toContain(turn()?.step);
    });
  return { ...opened, storage, practice, soundOf, turn, sound, start, goOn, band };
};

/** C sharp 5, which 4 draw of a C harp bends to: 69 is A4, 440 Hz (ISO 16). */
const C_SHARP = 440 * 2 ** (4 / 12);

describe('turns at a bend', () => {
  it('let the sound be heard, then hear the player, say what it was, keep it, and go on by themselves', async () => {
    const { commands, start, turn, sound, band, microphone, goOn, state, storage } = await open();
    await commands.listenToMe();
    await start("4D'");
    expect(band.asked.at(-1)).toMatch(/audition/);
    expect(microphone.choices.at(-1)?.targets).toEqual(["4D'", '4D']);
    sound(0, 0.2);
    // Flatter than a blue fifth of G is sung (560 cents above it).
    sound(C_SHARP * 2 ** (-45 / 1200), 1);
    expect(turn()?.step).toBe('yours');
    sound(0, 0.4);
    expect(turn()).toMatchObject({ step: 'verdict', verdict: { kind: 'flat' } });
    await goOn();
    sound(0, 0.2);
    sound(C_SHARP, 1);
    sound(0, 0.4);
    expect(turn()?.verdict?.kind).toBe('right');
    expect(state().bends.results[0]?.tries.map(({ hit }) => hit)).toEqual([false, true]);

    const later = await open(storage);
    expect(later.state().bends.results).toEqual(state().bends.results);
    later.practice.forget(null);
    expect(later.state().bends.results).toEqual([]);
  });

  it('say that nothing was heard, and stop after the second time', async () => {
    const { commands, start, turn, pass, state, goOn } = await open();
    await commands.listenToMe();
    await start("4D'");
    pass();
    expect(turn()?.verdict).toEqual({ kind: 'nothing' });
    await goOn();
    pass();
    expect([turn(), state().bends.ended]).toEqual([null, expect.stringContaining('nothing was heard')]);
    expect(state().bends.results).toEqual([]);
  });

  it('take the player’s word without a microphone, and when it is lost on the way', async () => {
    const { commands, start, turn, practice, state, microphone, pass, goOn } = await open();
    await start("4D'");
    expect(turn()?.step).toBe('mark');
    practice.mark(true);
    expect(state().bends.results[0]?.tries).toEqual([
      { exercise: 'hold', hit: true, cents: null, settling: null, marked: true },
    ]);
    await commands.listenToMe();
    await goOn();
    expect(turn()?.step).toBe('yours');
    microphone.report({ kind: 'trouble', why: 'unplugged', detail: '' });
    pass();
    expect(turn()?.step).toBe('mark');
    await commands.listenToMe();
    expect(turn()?.step).toBe('yours');
  });

  it('end with another harp in hand', async () => {
    const { commands, start, turn } = await open();
    await start("4D'");
    commands.chooseHarpKey(asPitchClass(9));
    expect(turn()).toBeNull();
  });

  it('give sounds in turn: another one after two misses, an overblow without a slide', async () => {
    const { start, practice, turn, goOn } = await open();
    await start("4D'", 'slide', true);
    practice.mark(false);
    await goOn();
    expect(turn()?.target).toMatchObject({ hole: 4 });
    practice.mark(false);
    await goOn();
    expect(turn()?.target).toMatchObject({ hole: 6, bend: 1 });
    await start('6OB', 'slide', false);
    expect(turn()?.exercise).toBe('hold');
  });
});

describe('reach by results', () => {
  const marks = async (opened: Awaited<ReturnType<typeof open>>, id: string, text: string) => {
    await opened.start(id);
    for (const sign of text) {
      opened.practice.mark(sign === '+');
      await opened.goOn();
    }
    opened.practice.stop();
  };
  const inReach = ({ soundOf, state }: Awaited<ReturnType<typeof open>>, id: string) =>
    isInReach(soundOf(id), state().settings.technique);

  it('is off until the player switches it on, then decides with a sentence, and can be undone', async () => {
    const opened = await open();
    const { practice, notices, commands, state } = opened;
    await marks(opened, "3D''", '-----');
    await marks(opened, '6OB', '+++++');
    expect([inReach(opened, "3D''"), inReach(opened, '6OB'), state().bends.standings]).toEqual([
      true,
      false,
      null,
    ]);
    practice.followResults(true);
    expect([inReach(opened, "3D''"), inReach(opened, '6OB'), inReach(opened, '5OB')]).toEqual([
      false,
      true,
      false,
    ]);
    expect(notices()).toContain('6 overblow is in reach now');
    expect(notices()).toContain('3 draw bent two semitones does not come yet and is left out');
    expect(Object.fromEntries(state().bends.standings ?? [])).toEqual({ "3D''": 'not yet', '6OB': 'steady' });
    commands.undoChoice();
    expect([inReach(opened, "3D''"), inReach(opened, '6OB')]).toEqual([true, false]);
  });

  it('leaves what the player set by hand until results say something new', async () => {
    const opened = await open();
    const { practice, commands, state } = opened;
    practice.followResults(true);
    await marks(opened, "3D''", '-----');
    expect(inReach(opened, "3D''")).toBe(false);
    const { technique } = state().settings;
    commands.choose({ technique: { ...technique, off: [] } });
    await marks(opened, "3D''", '--');
    expect(inReach(opened, "3D''")).toBe(true);
  });
});
