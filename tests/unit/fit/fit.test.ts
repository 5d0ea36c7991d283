import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { type FitChord, fitChart } from '../../../src/core/fit/fit';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EFFORT, EVERY_TECHNIQUE, NATURAL_NOTES, type TechniqueChoice } from '../../../src/core/harp/reach';
import { soundId, spokenHole } from '../../../src/core/harp/tab';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { asPitchClass } from '../../../src/core/theory/units';

const C_HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const BENDS: TechniqueChoice = { drawBends: true, blowBends: true, overbends: false, off: [] };

const standardInG = (technique: TechniqueChoice): ReturnType<typeof fitChart> =>
  fitChart({
    chart: buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }),
    harp: C_HARP,
    technique,
  });

const chordOfBar = (bar: number, technique: TechniqueChoice): FitChord => {
  const chord = standardInG(technique).bars[bar - 1]?.chords[0];
  if (chord === undefined) throw new Error(`no bar ${bar}`);
  return chord;
};

const ids = (sounds: readonly { readonly id: string }[]): string => sounds.map(({ id }) => id).join(' ');

describe('fitChart', () => {
  it('knows the position and mirrors the bars of the chart', () => {
    const fit = standardInG(BENDS);
    expect(fit.position).toBe(2);
    expect(fit.bars.map(({ chords }) => chords.map(({ chord }) => chord.symbol).join(' ')).join(' ')).toBe(
      'G7 G7 G7 G7 C7 C7 G7 G7 D7 C7 G7 G7',
    );
  });

  it('lists sounds with degree, name, effort and register', () => {
    const { sounds } = chordOfBar(5, BENDS);
    expect(sounds.find(({ id }) => id === "3D'")).toMatchObject({
      role: 'chord',
      degree: 'b7',
      name: 'Bb',
      reach: true,
      effort: EFFORT.drawBend + EFFORT.unsupported,
      register: 'low',
    });
    expect(ids(sounds)).toBe("1B 2B 2D 3B 3D' 4B 5B 6B 7B 8B 9B 10B'' 10B");
  });

  it('keeps what is beyond the technique apart, and says the gaps plainly', () => {
    const { beyond, gaps } = chordOfBar(9, BENDS);
    expect(beyond.map(({ id, reach }) => `${id} ${reach}`)).toEqual(['3OB false', '5OB false']);
    expect(gaps.map(({ sentence }) => sentence)).toEqual(['No F♯ between holes 2 and 9, except 5 overblow']);
    expect(chordOfBar(9, EVERY_TECHNIQUE).gaps).toEqual([]);
  });

  it('names every way to fill a gap', () => {
    const { gaps } = chordOfBar(5, NATURAL_NOTES);
    expect(gaps.map(({ sentence }) => sentence)).toEqual([
      'No B♭, except 3 draw bent a semitone, 6 overblow and 10 blow bent two semitones',
      'No B♭, except 3 draw bent a semitone, 6 overblow and 10 blow bent two semitones',
      'No B♭, except 3 draw bent a semitone, 6 overblow and 10 blow bent two semitones',
    ]);
    expect(gaps.map((gap) => gap.with)).toEqual([["3D'"], ['6OB'], ["10B''"]]);
  });

  it('says a tone missing above its last hole by its note and the hole', () => {
    const inG = buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' });
    const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
    const technique = { ...EVERY_TECHNIQUE, blowBends: false };
    const gaps = fitChart({ chart: inG, harp, technique }).bars[0]?.chords[0]?.gaps ?? [];
    expect(gaps.map(({ degree, sentence }) => `${degree}: ${sentence}`)).toEqual([
      '3: No B above hole 7, except 10 blow bent a semitone',
    ]);
  });

  it('says no hole that is not so: any tuning, form and technique', () => {
    for (const [i, tuning] of TUNINGS.entries()) {
      for (const [j, form] of FORM_IDS.entries()) {
        const technique = {
          drawBends: (i + j) % 2 === 0,
          blowBends: j % 3 === 0,
          overbends: j % 4 === 0,
          off: ['4B', '6D'],
        };
        const harp = buildHarp({ tuning, key: asPitchClass(i + j), octave: 0 });
        const chart = buildChart({ form, key: asPitchClass(5 * i + j), meter: '4/4' });
        for (const { sounds, beyond, gaps } of fitChart({ chart, harp, technique }).bars.flatMap(
          ({ chords }) => chords,
        )) {
          for (const { degree, sentence, with: ways } of gaps) {
            const own = sounds.filter((sound) => sound.degree === degree).map(({ hole }) => hole);
            const above = Number(/ above hole (\d+)/.exec(sentence)?.[1] ?? 99);
            const below = Number(/ below hole (\d+)/.exec(sentence)?.[1] ?? 0);
            const [low, high] = (/ between holes (\d+) and (\d+)/.exec(sentence) ?? []).slice(1).map(Number);
            const claimed = own.filter(
              (hole) =>
                hole > above ||
                hole < below ||
                (low !== undefined && high !== undefined && hole > low && hole < high),
            );
            expect(claimed, sentence).toEqual([]);
            if (/^No [A-G][♭♯𝄫𝄪]?(, except| on this harp|$)/u.test(sentence)) expect(own).toEqual([]);
            const fillers = beyond.filter(({ id }) => ways.includes(id));
            for (const filler of fillers) expect(sentence).toContain(spokenHole(filler));
          }
        }
      }
    }
  });

  it('has a row of sounds and gaps for a slash bass that the chord lacks', () => {
    const { chart } = readChart('C/Bb | C7/Bb | F/B', {
      tonic: 'C',
      mode: 'major',
      meter: '4/4',
      title: 'Own',
    });
    const { bars } = fitChart({ chart, harp: C_HARP, technique: BENDS });
    const rows = bars.map(({ chords: [fit] }) => {
      const tones = [...(fit?.sounds ?? []), ...(fit?.beyond ?? []), ...(fit?.gaps ?? [])];
      return [...new Set(tones.map(({ degree, name }) => `${degree} ${name}`))].sort().join(', ');
    });
    // B flat is the minor seventh of C, B the augmented fourth of F (any table of intervals).
    expect(rows).toEqual(['3 E, 5 G, R C, b7 Bb', '3 E, 5 G, R C, b7 Bb', '#4 B, 3 A, 5 C, R F']);
    expect(ids((bars[0]?.chords[0]?.sounds ?? []).filter(({ name }) => name === 'Bb'))).toBe("3D' 10B''");
    expect(bars[0]?.chords[0]?.colours.map(({ name }) => name)).not.toContain('Bb');
  });

  it('leaves out single sounds that are switched off', () => {
    const { sounds, beyond } = chordOfBar(5, { ...BENDS, off: ["3D'", '2D'] });
    expect(ids(sounds)).not.toContain("3D'");
    expect(ids(beyond)).toContain("3D'");
    expect(ids(sounds)).toBe("1B 2B 3B 4B 5B 6B 7B 8B 9B 10B'' 10B");
  });

  it('has the key as a second layer: blue notes first in rank, the tonic over V among the scale tones', () => {
    const { colours } = chordOfBar(9, BENDS);
    const roles = new Map(colours.map(({ name, role, degree }) => [name, `${role} ${degree}`]));
    expect([...roles].map(([name, role]) => `${name} ${role}`).sort()).toEqual([
      'B scale 3',
      'Bb blue b3',
      'Db blue b5',
      'E scale 6',
      'F blue b7',
      'G scale R',
    ]);
  });

  it('never lists a sound outside the technique, and never loses one', () => {
    const choice = fc.record({
      drawBends: fc.boolean(),
      blowBends: fc.boolean(),
      overbends: fc.boolean(),
      off: fc.subarray(C_HARP.sounds.map(soundId)),
    });
    fc.assert(
      fc.property(
        choice,
        fc.constantFrom(...FORM_IDS),
        fc.constantFrom(...PITCH_CLASSES),
        fc.constantFrom(...TUNINGS),
        (technique, form, key, tuning) => {
          const harp = buildHarp({ tuning, key: asPitchClass(0), octave: 0 });
          const fit = fitChart({ chart: buildChart({ form, key, meter: '4/4' }), harp, technique });
          for (const { chord, sounds, beyond, colours } of fit.bars.flatMap(({ chords }) => chords)) {
            const classes = new Map(chord.tones.map(({ pitchClass, degree }) => [pitchClass, degree]));
            for (const sound of [...sounds, ...colours]) {
              expect(technique.off).not.toContain(sound.id);
              if (sound.technique === 'overbend') expect(technique.overbends).toBe(true);
              if (sound.technique === 'bend') {
                expect(sound.breath === 'draw' ? technique.drawBends : technique.blowBends).toBe(true);
              }
            }
            const giving = harp.sounds.filter(({ pitch }) => classes.has(asPitchClass(pitch)));
            expect(sounds.length + beyond.length).toBe(giving.length);
            for (const each of sounds) expect(each.degree).toBe(classes.get(asPitchClass(each.pitch)));
            for (const each of colours) expect(classes.has(asPitchClass(each.pitch))).toBe(false);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a section in a key of its own', () => {
  it('has that key’s blue notes and scale under its chords', () => {
    const text = '[A] C7\n[B]\nKey: Eb\nC7';
    const { chart } = readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: 'Two keys' });
    const fit = fitChart({ chart, harp: C_HARP, technique: EVERY_TECHNIQUE });
    const blueIn = (bar: number): readonly (number | undefined)[] => [
      ...new Set(
        fit.bars[bar]?.chords[0]?.colours
          .filter(({ role }) => role === 'blue')
          .map(({ pitch }) => Math.round(pitch) % 12)
          .toSorted((x, y) => x - y),
      ),
    ];
    // Third, fifth and seventh flattened, of C: E♭ G♭ (B♭ is in the chord); of E♭: G♭ A D♭ (same source as `blueNotes`).
    expect(blueIn(0)).toEqual([3, 6]);
    expect(blueIn(1)).toEqual([1, 6, 9]);
  });
});
