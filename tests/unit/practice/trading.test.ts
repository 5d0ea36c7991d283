import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leadOfChorus } from '../../../src/core/arranger/lead';
import { barTicks, buildChart, layChart, METERS } from '../../../src/core/chart/build-chart';
import type { Bar, Chart, MeterName } from '../../../src/core/chart/chart';
import { FORM_IDS, type FormId } from '../../../src/core/chart/forms';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE, isInReach, NATURAL_NOTES } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { COMFORTABLE_BEATS } from '../../../src/core/lines/line-cost';
import { longestBreath } from '../../../src/core/phrase/breath-balance';
import { onHarp, type Phrase } from '../../../src/core/phrase/phrase';
import { printPhrase } from '../../../src/core/phrase/print-phrase';
import { readPhrase } from '../../../src/core/phrase/read-phrase';
import { type CallSpec, makeCall } from '../../../src/core/practice/call';
import { CALL_LEVELS, type CallLevel } from '../../../src/core/practice/call-levels';
import { rolesOf } from '../../../src/core/practice/call-rhythm';
import { chorusCalls } from '../../../src/core/practice/chorus-calls';
import { EIGHTH_TICKS, RHYTHM_CELLS } from '../../../src/core/practice/rhythm-cells';
import { TURN_WORDS } from '../../../src/core/practice/trade-modes';
import { readPlan, roomsOver, TRADE_PLANS } from '../../../src/core/practice/trade-plan';
import { FRESH_RUN } from '../../../src/core/practice/trade-run';
import { type TradingSpec, tradeOver } from '../../../src/core/practice/trading';
import { createGrid } from '../../../src/core/score/grid';
import type { NoteEvent } from '../../../src/core/score/score';
import { readSymbol } from '../../../src/core/theory/chords';
import { createRandom, pick, seedFrom } from '../../../src/core/theory/random';
import { asPitchClass } from '../../../src/core/theory/units';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const METER_NAMES: readonly MeterName[] = ['4/4', '3/4', '12/8', '6/8'];
const cHarp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const anyKey = fc.integer({ min: 0, max: 11 }).map(asPitchClass);

const anyChart: fc.Arbitrary<Chart> = fc
  .record({ form: fc.constantFrom(...FORM_IDS), key: anyKey, meter: fc.constantFrom(...METER_NAMES) })
  .map(buildChart);

const anyTrading: fc.Arbitrary<TradingSpec> = fc.record<TradingSpec>({
  chart: anyChart,
  harp: fc
    .record({ tuning: fc.constantFrom(...TUNINGS), key: anyKey, octave: fc.constant(0) })
    .map(buildHarp),
  technique: fc.constantFrom(NATURAL_NOTES, EVERY_TECHNIQUE, { ...EVERY_TECHNIQUE, overbends: false }),
  taste: fc.constantFrom(...(['gentle', 'even', 'bold'] as const)),
  seed: fc.integer(),
  swing: fc.constantFrom(1, 2, 3.5),
  chorus: fc.nat({ max: 9 }),
  level: fc.constantFrom(...CALL_LEVELS),
  mode: fc.constantFrom('echo', 'answer'),
  plan: fc.constantFrom(...TRADE_PLANS.filter((plan) => plan !== 'chorus'), '2+2 1+1', '3+5'),
  run: fc.constant(FRESH_RUN),
});

const barsOf = (count: number): Chart =>
  layChart({
    title: 'Bars',
    mode: 'major',
    tonic: 'G',
    meter: METERS['4/4'],
    bars: Array.from({ length: count }, () => [readSymbol('G7')].flatMap((chord) => chord ?? [])),
  });

const SPEC: TradingSpec = {
  chart: buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }),
  harp: cHarp,
  technique: EVERY_TECHNIQUE,
  taste: 'gentle',
  seed: 1,
  swing: 2,
  chorus: 0,
  level: 2,
  mode: 'echo',
  plan: '2+2',
  run: FRESH_RUN,
};

const turnsOver = (bars: number): string =>
  tradeOver({ ...SPEC, chart: barsOf(bars) })
    .turns.map((turn) => (turn === 'listen' ? 'L' : 'a'))
    .join('');

describe('rhythm cells', () => {
  it.each(METER_NAMES)('of %s fill the bar, and closing ones end in silence', (meter) => {
    const { opening, closing } = RHYTHM_CELLS[meter];
    for (const cell of [...opening, ...closing]) {
      const eighths = cell.reduce((sum, each) => sum + Math.abs(each), 0);
      expect(eighths * EIGHTH_TICKS).toBe(barTicks(METERS[meter]));
      expect(cell.some((each) => each > 0)).toBe(true);
    }
    for (const cell of closing) expect(cell.at(-1)).toBeLessThan(0);
  });
});

/** Over so many bars of a trading's form. */
const callSpec = (spec: TradingSpec, count: number): CallSpec => ({
  ...spec,
  bars: spec.chart.bars.slice(0, count),
  meter: spec.chart.meter,
  role: 'motif',
  motif: null,
});

/** What of a call does not stand in the chord, nor leads on to a note that does within a beat. */
const strayNotes = (
  phrase: Phrase,
  bars: readonly Bar[],
  { harp, chart }: TradingSpec,
): readonly string[] => {
  const { notes } = onHarp(phrase, harp);
  const start = bars[0]?.at ?? 0;
  const inChord = notes.map(({ at, sounds }) => {
    const chord = bars.flatMap((bar) => bar.chords).findLast((span) => span.at <= start + at)?.chord;
    return sounds.every(({ pitch }) =>
      chord?.tones.some(({ pitchClass }) => pitchClass === asPitchClass(pitch)),
    );
  });
  return notes
    .filter(({ at }, i) => {
      const next = notes[i + 1];
      const resolves = next !== undefined && inChord[i + 1] && next.at - at <= chart.meter.beatTicks;
      return !inChord[i] && !resolves;
    })
    .map(({ sounds }) => sounds.map(soundId).join('&'));
};

describe('makeCall', () => {
  it('stays inside the chords and the reach, and leaves room before the answer', () => {
    fc.assert(
      fc.property(anyTrading, fc.integer({ min: 1, max: 4 }), (spec, count) => {
        const { chart, harp, technique } = spec;
        const given = callSpec(spec, count);
        const { phrase } = makeCall(given);
        expect(phrase.length).toBe(count * barTicks(chart.meter));
        const { notes, missing } = onHarp(phrase, harp);
        expect(missing).toEqual([]);
        let at = 0;
        for (const note of notes) {
          expect(note.at).toBeGreaterThanOrEqual(at);
          at = note.at + note.length;
          for (const sound of note.sounds) expect(isInReach(sound, technique)).toBe(true);
        }
        expect(at).toBeLessThan(phrase.length);
        expect(strayNotes(phrase, given.bars, spec)).toEqual([]);
        expect(makeCall(given).phrase).toEqual(phrase);
      }),
      { numRuns: 60 },
    );
  });

  it('says something else with other seeds', () => {
    const calls = Array.from({ length: 20 }, (_, seed) =>
      JSON.stringify(makeCall({ ...callSpec(SPEC, 2), seed }).phrase),
    );
    expect(new Set(calls).size).toBeGreaterThanOrEqual(18);
  });

  it('is silent where nothing in reach fits', () => {
    const technique = { ...NATURAL_NOTES, off: cHarp.sounds.map(soundId) };
    expect(makeCall({ ...callSpec(SPEC, 2), technique }).phrase.notes).toEqual([]);
  });

  it('has two or three natural notes at the first level', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const { phrase, pitches } = makeCall({ ...callSpec(SPEC, 1), seed, level: 1 });
      expect(phrase.notes.length).toBeLessThanOrEqual(3);
      expect(new Set(pitches).size).toBeLessThanOrEqual(3);
      expect(
        phrase.notes.flatMap(({ sounds }) => sounds).every(({ technique }) => technique === 'natural'),
      ).toBe(true);
    }
  });

  it('lands on a third or seventh at the third level, and an answer on the root', () => {
    // G7: its guide tones are B and F (Open Music Theory, "Jazz Voicings", on guide tones).
    const lastOf = (role: CallSpec['role'], seed: number): number =>
      asPitchClass(makeCall({ ...callSpec(SPEC, 2), level: 3, role, seed }).pitches.at(-1) ?? -1);
    for (let seed = 0; seed < 20; seed += 1) {
      expect([11, 5]).toContain(lastOf('motif', seed));
      expect(lastOf('conclusion', seed)).toBe(7);
    }
  });
});

describe('the calls of a chorus', () => {
  it('are an idea, the idea again, and an end', () => {
    expect(rolesOf(3)).toEqual(['motif', 'variation', 'conclusion']);
    expect(rolesOf(2)).toEqual(['motif', 'conclusion']);
    expect(rolesOf(6)).toEqual(['motif', 'variation', 'contrast', 'conclusion', 'motif', 'conclusion']);
  });

  it('keep the rhythm of the idea', () => {
    const rooms = roomsOver(12, readPlan('2+2').trades);
    for (let seed = 0; seed < 20; seed += 1) {
      const [idea, again, end] = chorusCalls({ ...SPEC, seed, rooms });
      expect(again?.cells[0]).toEqual(idea?.cells[0]);
      expect(end?.cells[0]).toEqual(idea?.cells[0]);
    }
  });

  const checkSeed = (seed: number, form: FormId, level: CallLevel): void => {
    const random = createRandom(seedFrom(seed, 'case'));
    const technique = pick(random, [
      EVERY_TECHNIQUE,
      { ...EVERY_TECHNIQUE, overbends: false },
      { ...NATURAL_NOTES, drawBends: true },
      NATURAL_NOTES,
    ]);
    // Every position, straight and compound meters.
    const key = asPitchClass(pick(random, [7, 7, 0, 2, 5, 9, 4, 10, 3, 8, 1, 6, 11]));
    const chart = buildChart({ form, key, meter: pick(random, METER_NAMES) });
    const spec = { ...SPEC, chart, technique, level, seed };
    let before = '';
    for (const chorus of [0, 1]) {
      for (const { bar, bars, phrase, missing } of tradeOver({ ...spec, chorus }).calls) {
        const where = `seed ${seed}, ${form} in ${chart.tonic}, ${chart.meter.name}, level ${level}, chorus ${chorus}, bar ${bar}`;
        expect(missing, where).toEqual([]);
        expect(strayNotes(phrase, chart.bars.slice(bar, bar + bars), spec), where).toEqual([]);
        const sounds = onHarp(phrase, spec.harp).notes.flatMap((note) => note.sounds);
        // Natural notes alone have no G♭ chord on a C harp: only where the reach has nothing is there silence.
        const tones = chart.bars
          .slice(bar, bar + bars)
          .flatMap(({ chords }) => chords)
          .flatMap(({ chord }) => chord.tones);
        const some = spec.harp.sounds.some(
          (sound) =>
            isInReach(sound, technique) &&
            tones.some(({ pitchClass }) => pitchClass === asPitchClass(sound.pitch)),
        );
        expect(sounds.length > 0, where).toBe(some);
        expect(
          sounds.every((sound) => isInReach(sound, technique)),
          where,
        ).toBe(true);
        expect(longestBreath(phrase) / chart.meter.beatTicks, where).toBeLessThanOrEqual(COMFORTABLE_BEATS);
        const notes = JSON.stringify(phrase.notes);
        expect(some && notes === before, where).toBe(false);
        before = notes;
      }
    }
  };

  it(
    'fit reach, chord and breath over any seed, form and level, and no two in a row are alike',
    () => {
      // A hundred here, ten thousand in a soak of a million.
      const seeds = process.env.SOAK_RUNS === undefined ? 100 : soakRuns(100);
      for (let seed = 0; seed < seeds; seed += 1) {
        const form = FORM_IDS[seed % FORM_IDS.length] ?? 'standard';
        checkSeed(seed, form, CALL_LEVELS[Math.floor(seed / FORM_IDS.length) % 3] ?? 1);
      }
    },
    SOAK_TIMEOUT,
  );
});

describe('a plan', () => {
  it.each([
    ['2+2', ['2+2'], null],
    ['2 + 2, 1+1', ['2+2', '1+1'], null],
    ['chorus', [], null],
    ['2+2 x', ['2+2'], '“x” is no call and answer: write bars of call'],
    ['0+2', ['2+2'], '“0+2” is no call and answer'],
    ['', ['2+2'], 'The list is empty: write bars of call'],
  ])('%j', (text, trades, problem) => {
    const read = readPlan(text);
    expect(read.trades.map(({ call, answer }) => `${call}+${answer}`)).toEqual(trades);
    if (problem === null) expect(read.problem).toBeNull();
    else expect(read.problem).toContain(problem);
  });

  it('fills every form with rooms that follow each other and leave nothing over', () => {
    const anyPlan = fc.oneof(
      fc.string(),
      fc.array(fc.constantFrom('1+1', '2+2', '3+1', '16+16', 'x')).map((list) => list.join(' ')),
    );
    fc.assert(
      fc.property(anyPlan, fc.integer({ min: 1, max: 40 }), (text, bars) => {
        const { trades } = readPlan(text);
        if (trades.length === 0) return;
        let at = 0;
        for (const room of roomsOver(bars, trades)) {
          expect(room.bar).toBe(at);
          expect(room.bars).toBeGreaterThan(0);
          expect(room.answer).toBeGreaterThan(0);
          at += room.bars + room.answer;
        }
        expect(bars - at).toBeGreaterThanOrEqual(0);
        expect(bars - at).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('tradeOver', () => {
  it.each([
    [1, 'a'],
    [2, 'La'],
    [3, 'Laa'],
    [4, 'LLaa'],
    [6, 'LLaaLa'],
    [12, 'LLaaLLaaLLaa'],
  ])('parts %i bars as %s', (bars, turns) => {
    expect(turnsOver(bars)).toBe(turns);
  });

  it('says whose turn it is in words', () => {
    expect(TURN_WORDS).toEqual({ listen: 'Listen', answer: 'Your turn', lead: 'Your call' });
  });

  it('plays only while the player listens, in every form, meter and tuning', () => {
    fc.assert(
      fc.property(anyTrading, (spec) => {
        const { turns, calls, lead } = tradeOver(spec);
        const { chart } = spec;
        expect(turns).toHaveLength(chart.bars.length);
        expect(turns).toContain('answer');
        const events: readonly NoteEvent[] = lead;
        for (const { at, length } of events) {
          const first = Math.floor(at / barTicks(chart.meter));
          const last = Math.floor((at + length - 1) / barTicks(chart.meter));
          expect([turns[first], turns[last]]).toEqual(['listen', 'listen']);
        }
        for (const { bar, bars, cut } of calls) {
          expect(turns.slice(bar, bar + bars).every((turn) => turn === 'listen')).toBe(true);
          expect(cut).toBe(false);
        }
        expect(tradeOver(spec)).toEqual(tradeOver(spec));
      }),
      { numRuns: 40 },
    );
  });

  it('takes typed phrases in turn, gives a long one more room and cuts what leaves none for the answer', () => {
    const { phrase: short } = readPhrase('-2:q -3 -4:h | -4:w', '4/4');
    const { phrase: three } = readPhrase('-4:w | -4 | -4', '4/4');
    const { phrase: five } = readPhrase('-4:w | -4 | -4 | -4:q r:h.  | -4:w', '4/4');
    const { turns, calls, lead } = tradeOver({ ...SPEC, phrases: [short, three, five] });
    expect(turns.map((turn) => turn.charAt(0)).join('')).toBe('llaalllallla');
    expect(calls.map(({ bar, bars, cut }) => [bar, bars, cut])).toEqual([
      [0, 2, false],
      [4, 3, false],
      [8, 3, true],
    ]);
    expect(lead.filter(({ at }) => at < 4 * 1920).map(({ at, pitch }) => [at, pitch])).toEqual([
      [0, 67],
      [480, 71],
      [960, 74],
      [1920, 74],
    ]);
  });

  it('lets whole choruses alternate', () => {
    const [first, second] = [0, 1].map((chorus) => tradeOver({ ...SPEC, plan: 'chorus', chorus }));
    expect(new Set(first?.turns)).toEqual(new Set(['listen']));
    expect(first?.lead).not.toEqual([]);
    expect(new Set(second?.turns)).toEqual(new Set(['answer']));
    expect(second?.lead).toEqual([]);
    expect(second?.calls[0]?.phrase).toEqual(first?.calls[0]?.phrase);
  });

  it('calls once more after a turn that asks for it, and goes on after that', () => {
    const phrasesOver = (repeats: readonly number[]): readonly string[] =>
      [0, 1].flatMap((chorus) =>
        tradeOver({ ...SPEC, chorus, run: { ...FRESH_RUN, repeats } }).calls.map(({ phrase }) =>
          printPhrase(phrase, 'signs'),
        ),
      );
    const [a, b, c] = phrasesOver([]);
    const [, again, oncemore, after] = phrasesOver([1]);
    expect([again, oncemore]).toEqual([b, b]);
    expect(after).not.toBe(b);
    expect(phrasesOver([0, 1]).slice(0, 4)).toEqual([a, a, a, expect.not.stringContaining(a ?? '')]);
    expect(new Set([a, b, c]).size).toBe(3);
  });

  it('answers what it heard, where the player leads', () => {
    const { phrase } = readPhrase('-2:h -3', '4/4');
    const run = { ...FRESH_RUN, heard: [{ turn: 1, phrase }] };
    const { turns, lead } = tradeOver({ ...SPEC, mode: 'lead', run });
    expect(turns.map((turn) => turn.charAt(1)).join('')).toBe('eeiieeiieeii');
    expect(lead.map(({ at, pitch }) => [at, pitch])).toEqual([
      [6 * 1920, 67],
      [6 * 1920 + 960, 71],
    ]);
  });

  it('answers on the piano where that is wanted: the same keys, struck without slides, in the band’s own chord part', () => {
    const { phrase } = readPhrase("-3~-3':h -2>", '4/4');
    const run = { ...FRESH_RUN, heard: [{ turn: 1, phrase }] };
    const { lead } = tradeOver({ ...SPEC, mode: 'lead', voice: 'piano', run });
    expect(lead.map(({ part, at, pitch, glideFrom }) => [part, at, pitch, glideFrom])).toEqual([
      ['chords', 6 * 1920, 70, undefined],
      ['chords', 6 * 1920 + 960, 67, undefined],
    ]);
    const grid = createGrid(METERS['4/4'], 2);
    const played = leadOfChorus({ leads: { 7: [lead] } }, 0, asPitchClass(7), grid);
    expect(played.map(({ part }) => part)).toEqual(['chords', 'chords']);
    // What the harp voice itself calls stays the harp's.
    expect(
      tradeOver({ ...SPEC, mode: 'echo', voice: 'piano' }).lead.every(({ part }) => part === 'lead'),
    ).toBe(true);
  });

  it('names the sounds of a typed phrase that this harp lacks', () => {
    const { phrase } = readPhrase('12 -4', '4/4');
    expect(tradeOver({ ...SPEC, phrases: [phrase] }).calls[0]?.missing).toEqual(['12B']);
  });
});
