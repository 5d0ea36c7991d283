import { afterEach, describe, expect, it } from 'vitest';
import type { Sound } from '../../../../src/core/harp/harp';
import { phraseLead } from '../../../../src/core/phrase/phrase-lead';
import { readPhrase } from '../../../../src/core/phrase/read-phrase';
import type { PartnerChoice } from '../../../../src/core/settings/practice-settings';
import { asBpm, asCents, asHz, asMidi, asSeconds, asTicks } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

/** Two bars that every harp in second position has: 2 draw, 3 draw, 4 draw. */
const CALL = '-2:q -3 -4 -3 | -2:h r:h';
/** The first section is the count-in, the second the first chorus. */
const CHORUS = 1;

const ended: (() => void)[] = [];
afterEach(() => {
  for (const end of ended.splice(0)) end();
});

/** A session that trades one call, at 60 beats a minute: a tick lasts 1/480 of a second. */
const trading = async (partner: Partial<PartnerChoice> = {}, listen = true) => {
  const storage = createFakeStorage();
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  const { commands, state, session, band, microphone, pass } = opened;
  const { settings } = state();
  commands.choose({
    // The second one shows whether the first comes again.
    trade: { on: true, calls: `${CALL}\n4:w | r:w` },
    partner: { ...settings.partner, ...partner },
    style: { ...settings.style, swing: 1 },
    tempo: asBpm(60),
    changesWait: false,
  });
  if (listen) await commands.listenToMe();
  await commands.toggle();
  await expect.poll(() => band.status().kind).toBe('playing');
  ended.push(session.dispose);
  return { commands, state, session, band, microphone, pass };
};

type Opened = Awaited<ReturnType<typeof trading>>;

let ids = 0;

/** Lets a note be heard so many ticks into a bar of the first chorus. */
const hearNote = (
  { band, microphone }: Opened,
  bar: number,
  ticks: number,
  sound: Sound,
  ticksLong: number,
) => {
  ids += 1;
  band.hear(CHORUS, bar, ticks);
  const note = {
    ...{ id: ids, from: asSeconds(0), to: null, frequency: asHz(440), level: -20, steady: true },
    ...{ joined: 'attack' as const, vibrato: null },
    movement: { start: asCents(0), settling: asSeconds(0), end: asCents(0) },
    ...{
      sound,
      together: [],
      alternatives: [],
      pitch: asMidi(sound.pitch),
      cents: asCents(0),
      offset: asCents(0),
    },
  };
  microphone.hear({ notes: [note] });
  microphone.hear({ notes: [{ ...note, to: asSeconds(ticksLong / 480) }] });
};

/** Plays the call back in bars 2 and 3, without the notes at the given places. */
const echo = (opened: Opened, without: readonly number[] = []): void => {
  const { harp } = opened.state().now.tune;
  const { phrase } = readPhrase(CALL, '4/4');
  phraseLead(phrase, { harp, at: asTicks(0), swing: 1 }).forEach(({ at, length, pitch }, i) => {
    const sound = harp.sounds.find((each) => each.pitch === pitch && each.breath === 'draw');
    if (sound === undefined) throw new Error('a sound the harp lacks');
    if (!without.includes(i)) hearNote(opened, 2 + Math.floor(at / 1920), at % 1920, sound, length);
  });
};

describe('an echo', () => {
  it('is judged before its turn is over, in a sentence, with both to be heard again', async () => {
    const opened = await trading();
    const { state, commands, band, pass } = opened;
    echo(opened);
    band.hear(CHORUS, 3);
    pass();
    const { last, marks } = state().trades;
    expect(last).toMatchObject({ mark: 'clean', sentence: 'All of it, in tune and in time.', bySelf: false });
    expect(marks).toEqual(['clean']);
    band.stop();
    commands.hearTurn('answer');
    await expect.poll(() => state().trades.hearing).toBe('answer');
    pass();
    expect(band.asked.filter((each) => each.startsWith('audition'))).toHaveLength(5);
    expect(state().trades.hearing).toBeNull();
  });

  it('names what is missing, and calls the same once more where that is wanted', async () => {
    const opened = await trading({ after: 'clean' });
    echo(opened, [3]);
    opened.band.hear(CHORUS, 3);
    opened.pass();
    const { trades, tradeRun } = opened.state();
    expect(trades.last?.sentence).toContain('The fourth note did not sound, 3 draw');
    expect(tradeRun.repeats).toEqual([0]);
    expect(opened.band.asked).toContain('change');
  });

  it('gets slower until it is clean, and comes back to its own tempo', async () => {
    const opened = await trading({ after: 'slower' });
    const { state, band, pass } = opened;
    echo(opened, [0, 3]);
    band.hear(CHORUS, 3);
    pass();
    expect(state().settings.tempo).toBe(54);
  });

  it('is judged by its rhythm alone where it is tapped, the lead of a player who taps early taken off', async () => {
    const opened = await trading({}, false);
    const { state, commands, band, pass } = opened;
    const tap = (bar: number, ticks: number): void => {
      band.hear(CHORUS, bar, ticks);
      commands.tapAnswer();
    };
    // Quarters on every beat of the first bar, 20 ticks early, and the half note of the second.
    tap(1, 1900);
    for (const ticks of [460, 940, 1420, 1900]) tap(2, ticks);
    band.hear(CHORUS, 3);
    pass();
    expect(state().trades.last).toMatchObject({
      mark: 'clean',
      sentence: 'All of it, in time.',
      heard: null,
    });
  });

  it('says which note was not tapped', async () => {
    const { state, commands, band, pass } = await trading({}, false);
    for (const ticks of [0, 480, 1440]) {
      band.hear(CHORUS, 2, ticks);
      commands.tapAnswer();
    }
    band.hear(CHORUS, 3, 0);
    commands.tapAnswer();
    pass();
    expect(state().trades.last?.sentence).toContain('The third note was not tapped');
  });

  it('is marked in one key press where nothing listens', async () => {
    const opened = await trading({ after: 'clean' }, false);
    const { state, commands, band, pass } = opened;
    band.hear(CHORUS, 2);
    commands.markAnswer('again');
    await expect.poll(() => state().trades.marks).toEqual(['again']);
    expect(state().trades.last).toMatchObject({ bySelf: true, heard: null, judgement: null });
    expect(state().tradeRun.repeats).toEqual([0]);
    band.hear(CHORUS, 3);
    pass();
    expect(state().trades.marks).toEqual(['again']);
  });
});

describe('an answer of one’s own', () => {
  it('is heard for where it lands', async () => {
    const opened = await trading({ mode: 'answer' });
    const { harp } = opened.state().now.tune;
    const home = harp.sounds.find(({ hole, breath, bend }) => hole === 2 && breath === 'draw' && bend === 0);
    if (home === undefined) throw new Error('no 2 draw');
    hearNote(opened, 2, 0, home, 400);
    hearNote(opened, 2, 480, home, 400);
    opened.band.hear(CHORUS, 3);
    opened.pass();
    expect(opened.state().trades.last?.answer).toMatchObject({ landed: true });
    expect(opened.state().trades.last?.sentence).toContain('It comes home');
  });
});

describe('a call of the player’s', () => {
  it('comes back from the harp voice with another end', async () => {
    const opened = await trading({ mode: 'lead' });
    const { harp } = opened.state().now.tune;
    const [two, three] = [2, 3].map((at) =>
      harp.sounds.find(({ hole, breath, bend }) => hole === at && breath === 'draw' && bend === 0),
    );
    if (two === undefined || three === undefined) throw new Error('a hole is missing');
    hearNote(opened, 0, 10, two, 400);
    hearNote(opened, 0, 500, three, 400);
    hearNote(opened, 0, 970, two, 400);
    opened.band.hear(CHORUS, 1);
    opened.pass();
    const [answer] = opened.state().tradeRun.heard;
    expect(answer?.turn).toBe(0);
    expect(answer?.phrase.notes.map(({ at }) => at)).toEqual([0, 480, 960]);
    expect(answer?.phrase.notes[0]?.sounds).toEqual([
      { hole: 2, breath: 'draw', technique: 'natural', bend: 0 },
    ]);
    expect(answer?.phrase.notes[2]?.sounds[0]).not.toEqual(answer?.phrase.notes[0]?.sounds[0]);
  });
});
