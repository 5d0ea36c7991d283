import fc from 'fast-check';
import { buildHarp } from '../../src/core/harp/build-harp';
import type { Harp } from '../../src/core/harp/harp';
import { TUNINGS } from '../../src/core/harp/tunings';
import { DYNAMICS } from '../../src/core/phrase/dynamics';
import { type Phrase, type PhraseManner, type PhraseSound, phraseSound } from '../../src/core/phrase/phrase';
import { asPitchClass, asTicks } from '../../src/core/theory/units';

/** A harp of any tuning and key. */
export const anyHarp = fc
  .record({ tuning: fc.constantFrom(...TUNINGS), key: fc.integer({ min: 0, max: 11 }).map(asPitchClass) })
  .map(({ tuning, key }) => buildHarp({ tuning, key, octave: 0 }));

/** Numbers to make a manner from; which of it a note can have depends on its sounds. */
const anyManner = fc.record({
  kind: fc.constantFrom('held', 'held', 'held', 'curve', 'slide', 'shake', 'slide and curve'),
  dynamic: fc.constantFrom(undefined, ...DYNAMICS),
  accent: fc.boolean(),
  points: fc.array(fc.integer({ min: 0, max: 399 }), { maxLength: 5 }),
  within: fc.integer({ min: 0, max: 99 }),
  hole: fc.integer({ min: 1, max: 10 }),
});

type MannerSpec = typeof anyManner extends fc.Arbitrary<infer Spec> ? Spec : never;

const mannerFor = (sounds: readonly PhraseSound[], spec: MannerSpec): PhraseManner => {
  const { kind, dynamic, accent, points, within, hole } = spec;
  const [only] = sounds;
  const single = sounds.length === 1 ? only : undefined;
  const curve = [100 * (only?.bend ?? 0) + within, ...points];
  const curved = kind.includes('curve') && single !== undefined && single.technique !== 'overbend';
  const beside = single !== undefined && hole !== single.hole;
  return {
    ...(dynamic !== undefined && dynamic !== 'mf' && { dynamic }),
    ...(accent && { accent }),
    ...(curved && (curve.length > 1 || within > 0) && { curve }),
    ...(beside && kind.includes('slide') && { slide: hole }),
    ...(beside && kind === 'shake' && { shake: hole }),
  };
};

/** A phrase and the harp its sounds were taken from. */
export const anyHarpPhrase: fc.Arbitrary<{ readonly harp: Harp; readonly phrase: Phrase }> = fc
  .record({
    harp: anyHarp,
    meter: fc.constantFrom(...(['4/4', '3/4', '12/8', '6/8'] as const)),
    notes: fc.array(
      fc.record({
        gap: fc.constantFrom(0, 0, 240, 480, 37, 1920, 4000),
        length: fc.oneof(
          fc.constantFrom(80, 120, 160, 240, 320, 480, 600, 720, 960, 1000),
          fc.integer({ min: 1, max: 3000 }),
        ),
        sound: fc.nat(),
        chord: fc.boolean(),
        manner: anyManner,
      }),
      { maxLength: 7 },
    ),
    tail: fc.constantFrom(0, 120, 480, 2500),
  })
  .map(({ harp, meter, notes, tail }) => {
    let at = 0;
    const placed = notes.flatMap(({ gap, length, sound, chord, manner }) => {
      const first = harp.sounds[sound % harp.sounds.length];
      if (first === undefined) return [];
      const second = harp.sounds.find(
        ({ hole, breath }) => hole === first.hole + 1 && breath === first.breath,
      );
      const sounds = [first, ...(chord && second !== undefined ? [second] : [])].map(phraseSound);
      const note = { at: asTicks(at + gap), length: asTicks(length), sounds, ...mannerFor(sounds, manner) };
      at += gap + length;
      return [note];
    });
    return { harp, phrase: { meter, length: asTicks(at + tail), notes: placed } };
  });

/** A phrase with anything a phrase can have. */
export const anyPhrase: fc.Arbitrary<Phrase> = anyHarpPhrase.map(({ phrase }) => phrase);
