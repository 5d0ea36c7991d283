import { describe, expect, it } from 'vitest';
import { soundId } from '../../../src/core/harp/tab';
import { createEar } from '../../../src/core/hearing/ear';
import { eachHole, withoutMoments, withoutSeeming } from '../../../src/core/hearing/grip-notes';
import type { HeardNote } from '../../../src/core/hearing/heard-note';
import { asSeconds } from '../../../src/core/theory/units';
import { harpSamples } from '../../helpers/harp-recording';
import { C_HARP, heardNote } from '../../helpers/heard-note';
import { makeTake } from '../../helpers/hearing/corpus';
import { measureGrips } from '../../helpers/hearing/grip-figures';
import { hearWholeTake } from '../../helpers/hearing/hear-take';
import { soakIt } from '../../helpers/soak';

/** What a fresh ear for a C harp hears in the program's own harp voice: the holes of each note, when it has ended. */
const heardIn = (keys: readonly (readonly [from: number, to: number, ...midi: number[]])[]) => {
  const notes = keys.flatMap(([from, to, ...midi]) => midi.map((each) => ({ midi: each, from, to })));
  const ear = createEar({ sampleRate: 48000, harp: C_HARP });
  const { notes: heard } = ear.push(harpSamples(notes, 2.2));
  return [...heard, ...ear.end()];
};
const idsOf = (notes: readonly HeardNote[]): readonly string[] =>
  notes.flatMap(({ to, sound, together }) =>
    to === null || sound === null ? [] : [[sound, ...together].map(soundId).join(' ')],
  );

describe('grips', () => {
  it('are all their holes, told while they sound and when they end', () => {
    // Blow 4, 5 and 6 of a C harp are C5, E5 and G5; draw 2 and 3 are G4 and B4 (published layout of the Richter tuning).
    const notes = heardIn([
      [0.2, 0.9, 72, 76, 79],
      [1.2, 1.9, 67, 71],
    ]);
    expect(idsOf(withoutSeeming(notes))).toEqual(['4B 5B 6B', '2D 3D']);
    const chord = notes.filter(({ together }) => together.length === 2);
    expect(chord.map(({ to }) => to === null)).toEqual([true, false]);
    expect(chord[0].id).toBe(chord[1].id);
    // Below 0 are the notes of instruments.
    expect(notes.filter(({ id }) => id < 0)).toEqual([]);
    expect(Math.abs(chord[1].from - 0.2)).toBeLessThan(0.03);
    expect(Math.abs((chord[1].to ?? 0) - 0.9)).toBeLessThan(0.08);
    // Several pitches are off by nothing in common.
    expect(chord[1].offset).toBeNull();
  });

  it('are none where one hole sounds, bent or not', () => {
    // Draw 4 (D5), its bend (D♭5), blow 7 (C6).
    const notes = heardIn([
      [0.2, 0.7, 74],
      [0.9, 1.3, 73],
      [1.5, 2, 84],
    ]);
    expect(idsOf(notes)).toEqual(['4D', "4D'", '7B']);
  });

  it('become one note for each hole, and take the place of what they seemed to be', () => {
    const [lowest, middle, top] = (['4B', '5B', '6B'] as const).map((id) => heardNote([id, 1, 2]));
    const grip = {
      ...lowest,
      together: [middle.sound, top.sound].flatMap((sound) => sound ?? []),
      offset: null,
    };
    expect(eachHole(grip).map(({ from, to, pitch, together }) => [from, to, pitch, together.length])).toEqual(
      [
        [1, 2, 72, 0],
        [1, 2, 76, 0],
        [1, 2, 79, 0],
      ],
    );
    const seeming = heardNote(['1B', 0.98, 1.1]);
    const next = heardNote(['4D', 1.95, 2.5]);
    expect(withoutSeeming([seeming, grip, next])).toEqual([grip, next]);
  });

  it('are none where they last a moment, and one note of their breath goes on', () => {
    const grip = heardNote(['4B', 1, 1.15], {
      together: [heardNote(['5B', 0, 0]).sound].flatMap((s) => s ?? []),
    });
    const goesOn = heardNote(['7B', 1.15, 1.5]);
    expect(withoutMoments([grip, goesOn])).toEqual([{ ...goesOn, from: grip.from }]);
    const held = { ...grip, to: asSeconds(1.25) };
    const after = heardNote(['7B', 1.25, 1.5]);
    expect(withoutMoments([held, after])).toEqual([held, after]);
    const anew = heardNote(['7B', 1.16, 1.5]);
    expect(withoutMoments([grip, anew])).toEqual([grip, anew]);
  });

  soakIt('are none of what is left of the band’s chords in a recording', () => {
    const take = makeTake({ seed: 102, kind: 'line', seconds: 4, leak: -6 });
    const heard = hearWholeTake(take);
    expect(heard.length).toBeGreaterThan(3);
    expect(heard.filter(({ together }) => together.length > 0)).toEqual([]);
  });

  it('are read exactly as a rule, of a harp nobody has heard, and seldom where there is none', () => {
    const unheard = measureGrips({ seeds: [904], kind: 'grips', seconds: 6, leak: null });
    expect(unheard.grips).toBeGreaterThan(4);
    expect(unheard.exact).toBeGreaterThan(0.75);
    const lines = measureGrips({ seeds: [903], kind: 'line', seconds: 4, leak: null });
    expect(lines.singles).toBeGreaterThan(4);
    expect(lines.mistaken).toBeLessThan(0.1);
  });
});
