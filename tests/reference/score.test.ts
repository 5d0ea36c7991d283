import { describe, expect, it } from 'vitest';
import { METERS } from '../../src/core/chart/build-chart';
import type { BassPattern } from '../../src/core/feels/bass-pattern';
import type { DrumPattern } from '../../src/core/feels/drum-pattern';
import { FEEL_IDS, type FeelId, feelOf } from '../../src/core/feels/feels';
import { playedFeel } from '../../src/core/feels/played-feels';
import { BASS_HIGH, BASS_LOW } from '../../src/core/players/bass-register';
import { STROKES } from '../../src/core/players/drum-strokes';
import { segmentsOf } from '../../src/core/players/passage';
import { playRiff } from '../../src/core/players/riff';
import { COMPING_REGISTER, createVoicer } from '../../src/core/players/voicing';
import { DRUM_KEYS, type DrumLane } from '../../src/core/score/drum-kit';
import { createGrid, stepTicks } from '../../src/core/score/grid';
import { placingOf } from '../../src/core/score/placing';
import { readSteps } from '../../src/core/score/steps';
import { rideSwing, trioSwing } from '../../src/core/score/swing';
import { readSymbol } from '../../src/core/theory/chords';
import { createRandom } from '../../src/core/theory/random';
import { partOf, sectionOf } from '../helpers/score-events';
import { testChart, testProgram } from '../helpers/test-charts';

const chordOf = (symbol: string) => {
  const chord = readSymbol(symbol);
  if (chord === null) throw new Error(`Not a chord: ${symbol}`);
  return chord;
};

// Source: "Preferred swing ratio in jazz as a function of tempo", TMH-QPSR 4/1997, and "Swing ratios and ensemble
// timing in jazz performance", Music Perception 19(3), 2002, doi 10.1525/mp.2002.19.3.333: short notes about 100 ms
// at medium and fast tempi, 3.5 : 1 at comparatively slow tempi, 1 : 1 at fast ones. The formula is derived from it.
describe('the hard ride by tempo', () => {
  it.each([
    [120, 3.5],
    [133.333, 3.5],
    [150, 3],
    [160, 2.75],
    [180, 2.333],
    [200, 2],
    [220, 1.727],
    [240, 1.5],
    [260, 1.308],
    [300, 1],
    [320, 1],
  ])('at %s quarters a minute is %s : 1', (tempo, ratio) => {
    expect(rideSwing(tempo)).toBeCloseTo(ratio, 2);
  });

  it('keeps the short note at 100 ms from 134 to 300', () => {
    for (let tempo = 134; tempo <= 300; tempo += 1) {
      expect(60_000 / tempo / (rideSwing(tempo) + 1)).toBeCloseTo(100, 6);
    }
  });
});

// Source: Jazz Trio Database (doi 10.5334/tismir.186, 10.1098/rsos.240920), notebook "beat-upbeat-ratios": log2 ratio of
// drums, bass and piano regressed on tempo; the table is computed from its coefficients.
describe('swing by part and tempo, as jazz trios play', () => {
  it.each([
    [100, 2.6, 2.5, 1.7],
    [120, 2.4, 2.3, 1.6],
    [160, 2.1, 2.1, 1.5],
    [200, 1.8, 1.8, 1.4],
    [240, 1.6, 1.6, 1.3],
    [280, 1.4, 1.4, 1.2],
  ])('at %s quarters a minute: drums %s, bass %s, chords and lead %s', (tempo, drums, bass, piano) => {
    expect(Math.abs(trioSwing('drums', tempo) - drums)).toBeLessThan(0.06);
    expect(Math.abs(trioSwing('bass', tempo) - bass)).toBeLessThan(0.06);
    expect(Math.abs(trioSwing('chords', tempo) - piano)).toBeLessThan(0.06);
    expect(trioSwing('lead', tempo)).toBe(trioSwing('chords', tempo));
  });
});

// Source: the same database, notebook "onset-asynchrony": bass after drums 1.6 % of a quarter (8 ms at 120), piano after
// drums 5.5 % (28 ms at 120). Limbs: means over the shuffles and the jazz of the Groove MIDI Dataset.
describe('places against the beat', () => {
  it('the bass comes 8 ms after the drums at 120, a soloist 28, and at no tempo more than at 100', () => {
    const { parts } = placingOf('jazz', 120, true);
    expect([parts.bass, parts.lead].map((ms) => Math.round(ms ?? 0))).toEqual([8, 28]);
    expect(placingOf('jazz', 50, true).parts).toEqual(placingOf('jazz', 100, true).parts);
  });

  it.each([
    ['shuffle', -7, -7, 1],
    ['jazz', -9, -1, 1],
  ] as const)(
    '%s: hat foot %s ms, ride %s ms and snare %s ms against the kick',
    (style, foot, ride, snare) => {
      const { limbs } = placingOf(style, 120, false);
      const at = (lane: DrumLane) => limbs[DRUM_KEYS[lane]] ?? 0;
      expect([at('foot'), at('ride'), at('snare'), at('kick')]).toEqual([foot, ride, snare, 0]);
    },
  );
});

// Source: arithmetic, ratio / (ratio + 1) of 480 ticks.
describe('the off-beat at 480 ticks a quarter', () => {
  it.each([
    [1, 240],
    [1.3, 271.3],
    [1.5, 288],
    [2, 320],
    [3, 360],
    [3.5, 373.3],
  ])('%s : 1 falls on tick %s', (ratio, tick) => {
    expect(stepTicks(createGrid(METERS['4/4'], ratio), 1, 2)).toBeCloseTo(tick, 1);
  });
});

describe('the off-beats of the drums, in every chorus', () => {
  const offBeats = (feel: FeelId, tempo: number, beat: number) => {
    const section = sectionOf(testProgram(feel, { tempo }), 3);
    const time = partOf(section, 'drums').filter(
      ({ pitch }) => pitch === DRUM_KEYS.hat || pitch === DRUM_KEYS.ride,
    );
    return new Set(time.map(({ at }) => at % beat).filter((tick) => tick > 0));
  };

  // Source: triplet with its middle note left out, "Learn & Master Drums" lesson book, session 6; a shuffle keeps its
  // ratio over tempo, "Swing once more", SMPC 2007 abstract.
  it.each([80, 108, 140])('shuffle at %s: tick 320 and nothing else', (tempo) => {
    expect([...offBeats('shuffle', tempo, 480)]).toEqual([320]);
  });

  // Source: the trios above, rounded to ticks.
  it.each([
    [150, 330],
    [200, 311],
    [240, 296],
  ])('swing at %s: tick %s', (tempo, tick) => {
    expect([...offBeats('swing', tempo, 480)]).toEqual([tick]);
  });

  // Source: "How many shades of blue in blues drumming?": twelve eighths a bar, four dotted quarters.
  it('slow 12/8: thirds of the dotted quarter', () => {
    expect([...offBeats('slow-12-8', 58, 720)].toSorted((a, b) => a - b)).toEqual([240, 480]);
  });

  // Source: "Blues rumba", Drum!: straight eighths.
  it('rhumba: even', () => {
    expect([...offBeats('rhumba', 118, 480)]).toEqual([240]);
  });
});

const riffPitches = (text: string, symbols: readonly string[]): readonly string[] => {
  const names = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
  const chart = testChart('twenty-four', chordOf(symbols[0] ?? 'G7').root);
  const grid = createGrid(chart.meter, 1);
  return segmentsOf({ chart, next: null })
    .slice(0, 2)
    .flatMap((segment) => playRiff(createRandom(1), grid, { text, halfTime: false }, [segment]))
    .map(({ pitch }) => names[pitch % 12] ?? '?');
};

const riffOf = (pattern: BassPattern | undefined): string =>
  pattern === undefined || typeof pattern === 'string' ? '' : pattern.riff;

describe('bass lines', () => {
  // Source: studybass.com, "The boogie-woogie blues pattern": R 3 5 6 | b7 6 5 3, here over G7.
  it('the boogie line over G7 is G B D E | F E D B', () => {
    const line = riffOf(playedFeel('boogie').bassLine.patterns[0][0]);
    expect(line).toBe('R 3 5 6 | 7 6 5 3');
    expect(riffPitches(line, ['G7'])).toEqual(['G', 'B', 'D', 'E', 'F', 'E', 'D', 'B']);
  });

  // Source: strings E1 A1 D2 G2, written an octave higher: "Instruments of the Modern Symphony Orchestra", p. 14
  // (Wikisource). The walking register up to G3: common practice, no source.
  it('stay from E1 to G3', () => {
    expect([BASS_LOW, BASS_HIGH]).toEqual([28, 55]);
  });

  const eighths = (text: string, marks: RegExp): readonly number[] =>
    (readSteps(text)[0] ?? [])
      .filter(({ mark }) => marks.test(mark))
      .map(({ beat, step, of }) => beat * 2 + (step * 2) / of);

  // Source: rhumba blues bass in 3+3+2, "12 Bar Blues, Part 2", ACEMM. Cells as eighth indices from memory:
  // tresillo 0 3 6, habanera 0 3 4 6.
  it.each([
    ['R- -3 -- 5-', [0, 3, 6]],
    ['R- -5 8- 5-', [0, 3, 4, 6]],
  ])('the rhumba has %s on eighths %j', (riff, cell) => {
    expect(playedFeel('rhumba').bassLine.patterns.flat().map(riffOf)).toContain(riff);
    expect(eighths(riff, /[R3-8]/)).toEqual(cell);
  });

  // Source: a rhumba blues of the Groove MIDI Dataset (one take, 110 bpm): cross-stick on sixteenths 1 4 8 11 13, the
  // rumba clave, kick on 4 7 12. Figures of bass, kick and piano that interlock: common practice, no source.
  it('the rhumba has the clave and the kick of the corpus, and no kick that doubles the bass', () => {
    const patterns = playedFeel('rhumba').drumming.patterns.flat();
    expect(patterns).toContainEqual(
      expect.objectContaining({ stick: 'x..x ...x ..x. x...', kick: '...x ..x. ...x ....' }),
    );
    for (const { kick } of patterns) expect(eighths(kick ?? '', /[xo]/)).not.toEqual([0, 3, 6]);
  });

  // Source: approach to the next root by semitone, scale step or its fifth: "How to create a walking bass line",
  // Bass Guitar For Dummies.
  it('a walk comes into every new root by semitone, scale step or fifth', () => {
    for (const chorus of [0, 1, 2, 3, 4, 5]) {
      const section = sectionOf(testProgram('swing', { chart: testChart('jazz-swing') }), chorus);
      const bass = partOf(section, 'bass');
      const spans = section.chart.bars.flatMap((bar) => bar.chords);
      for (const [i, { at, chord }] of spans.entries()) {
        if (i === 0 || chord.symbol === spans[i - 1]?.chord.symbol) continue;
        const landing = bass.find((note) => note.at === at)?.pitch ?? 0;
        const before = bass.findLast((note) => note.at < at)?.pitch ?? 0;
        expect([1, 2, 5, 7]).toContain(Math.abs(landing - before));
      }
    }
  });
});

describe('comping', () => {
  const guides = (before: readonly number[], to: string) => {
    const voicer = createVoicer(createRandom(3), COMPING_REGISTER);
    return voicer(before, chordOf(to), { colour: 'shell', top: null, anew: false }).map(
      (pitch, i) => pitch - (before[i] ?? 0),
    );
  };

  // Source: arithmetic on the chords: the third and seventh of I7 fall a semitone to those of IV7 and change roles
  // (B F to Bb E in G), and rise a semitone to those of V7 (B F to C F#).
  it.each([
    ['G7 (F B)', 'C7', [53, 59], [-1, -1]],
    ['C7 (E Bb)', 'G7', [52, 58], [1, 1]],
    ['G7 (F B)', 'D7', [53, 59], [1, 1]],
    ['Bb7 (D Ab)', 'Eb7', [50, 56], [-1, -1]],
  ])('%s to %s moves both guide tones by a half step', (_, to, before, steps) => {
    expect(guides(before, to)).toEqual(steps);
  });

  // Source: common practice, no source: C3 to C5, thirds below C3 sound muddy.
  it('lies from C3 to C5', () => {
    expect(COMPING_REGISTER).toEqual({ low: 48, high: 72 });
  });
});

type Lane = readonly [lane: DrumLane, beats: string];

const struckIn = (pattern: DrumPattern, lanes: readonly DrumLane[], marks = /[oxX]/): string => {
  const steps = lanes
    .flatMap((lane) => readSteps(pattern[lane] ?? '.')[0] ?? [])
    .filter(({ mark }) => marks.test(mark));
  const places = steps.map(({ beat, step, of }) => beat + 1 + step / of);
  return [...new Set(places)]
    .toSorted((a, b) => a - b)
    .map((place) => Number(place.toFixed(2)))
    .join(' ');
};

// Sources beside each row; a place is a beat and its part (2.5 is the second step of a pair in beat 2).
describe('drum patterns', () => {
  const TIME: readonly DrumLane[] = ['hat', 'ride', 'open', 'bell'];
  const BACKBEAT: readonly DrumLane[] = ['snare', 'stick'];

  it.each<[FeelId, string, readonly DrumLane[], RegExp, string]>([
    // "Learn & Master Drums", session 6: triplet first and third on the hat or ride, backbeat on 2 and 4
    ['shuffle', 'time', TIME, /[oxX]/, '1 1.5 2 2.5 3 3.5 4 4.5'],
    ['shuffle', 'backbeat', BACKBEAT, /X/, '2 4'],
    // an introductory drum course, lesson on shuffles: the snare shuffles throughout, accents on 2 and 4
    ['double-shuffle', 'snare', ['snare'], /[goxX]/, '1 1.5 2 2.5 3 3.5 4 4.5'],
    ['double-shuffle', 'accents', ['snare'], /X/, '2 4'],
    // "How many shades of blue in blues drumming?"
    ['slow-12-8', 'time', TIME, /[oxX]/, '1 1.33 1.67 2 2.33 2.67 3 3.33 3.67 4 4.33 4.67'],
    ['slow-12-8', 'backbeat', BACKBEAT, /X/, '2 4'],
    // common practice, no source; hi-hat foot on 2 and 4: introduction of the ISMIR 2015 swing-ratio study
    ['swing', 'ride', ['ride'], /[oxX]/, '1 2 2.5 3 4 4.5'],
    ['swing', 'foot', ['foot'], /x/, '2 4'],
    // survey of drum feels, 2015
    ['straight', 'time', TIME, /[oxX]/, '1 1.5 2 2.5 3 3.5 4 4.5'],
    ['straight', 'backbeat', BACKBEAT, /X/, '2 4'],
    // "Blues rumba", Drum!: steady eighths, the backbeat kept
    ['rhumba', 'time', TIME, /[oxX]/, '1 1.5 2 2.5 3 3.5 4 4.5'],
    ['rhumba', 'backbeat', BACKBEAT, /X/, '2 4'],
    // "Vital beats every drummer must know", Drum!: hat foot on 2 and 4; accents on a clave (3-2: 0 3 6 10 12 from memory)
    ['second-line', 'foot', ['foot'], /x/, '2 4'],
    ['second-line', 'accents', ['snare'], /[xX]/, '1 1.75 2.5 3.5 4'],
    // "Vital beats every drummer must know", Drum!: hands without a pause
    ['train', 'snare', ['snare'], /[goxX]/, Array.from({ length: 16 }, (_, i) => 1 + i / 4).join(' ')],
  ])('%s %s', (feel, _, lanes, marks, places) => {
    const normal = playedFeel(feel).drumming.patterns[1];
    expect(normal.map((pattern) => struckIn(pattern, lanes, marks))).toContain(places);
  });

  // Source: General MIDI percussion map (GM System Level 1)
  it.each<[DrumLane, number]>([
    ['kick', 36],
    ['stick', 37],
    ['snare', 38],
    ['hat', 42],
    ['foot', 44],
    ['open', 46],
    ['crash', 49],
    ['ride', 51],
    ['bell', 53],
  ])('%s is key %s', (lane, key) => {
    expect(DRUM_KEYS[lane]).toBe(key);
  });

  // Common practice, no source: kick 80–100, backbeat 95–115, ghosts 20–40, ride 70–90, feathered kick 30–45.
  it.each<[...Lane, number, number]>([
    ['kick', 'x', 80, 100],
    ['kick', 'X', 80, 100],
    ['kick', 'g', 30, 45],
    ['snare', 'X', 95, 115],
    ['snare', 'g', 20, 40],
    ['ride', 'x', 70, 90],
    ['ride', 'X', 70, 90],
  ])('%s %s is struck at %s to %s', (lane, mark, low, high) => {
    const strength = STROKES[lane][mark] ?? 0;
    expect(strength >= low && strength <= high).toBe(true);
  });
});

// Common practice, no source: working tempo ranges of the feels, in beats a minute.
describe('start tempi', () => {
  it.each<[FeelId, number, number]>([
    ['slow-12-8', 50, 70],
    ['shuffle', 90, 130],
    ['rhumba', 100, 140],
    ['boogie', 140, 180],
    ['jump', 140, 220],
    ['swing', 140, 220],
    ['second-line', 90, 110],
  ])('%s starts between %s and %s', (feel, low, high) => {
    expect(feelOf(feel).tempo.usual).toBeGreaterThanOrEqual(low);
    expect(feelOf(feel).tempo.usual).toBeLessThanOrEqual(high);
  });
});

describe('every feel', () => {
  it.each(FEEL_IDS)('%s keeps its ghost notes between 15 and 55 and its backbeat above 85', (feel) => {
    const steady = [0, 1, 2].flatMap((chorus) =>
      partOf(sectionOf(testProgram(feel, { style: { kit: 'sticks' } }), chorus), 'drums'),
    );
    const snares = steady.filter(({ pitch }) => pitch === DRUM_KEYS.snare).map(({ velocity }) => velocity);
    const backbeats = steady.filter(({ pitch, velocity }) => (pitch === 38 || pitch === 37) && velocity > 85);
    expect(snares.every((velocity) => velocity >= 15)).toBe(true);
    if (feel !== 'swing') expect(backbeats.length).toBeGreaterThanOrEqual(3 * 12);
  });
});
