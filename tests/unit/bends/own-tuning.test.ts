import { describe, expect, it } from 'vitest';
import { measuredCents, nextReed, readReed, reedsInTurn } from '../../../src/core/bends/own-tuning';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Sound } from '../../../src/core/harp/harp';
import { INTONATIONS, intonate } from '../../../src/core/harp/intonation';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { createSoundChooser } from '../../../src/core/hearing/choose-sounds';
import { asCents, asHz, asPitchClass, asSeconds, type Cents } from '../../../src/core/theory/units';

const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
const reference = asHz(442);
const reed = (id: string): Sound => {
  const found = harp.sounds.find((sound) => soundId(sound) === id);
  if (found === undefined) throw new Error(`No ${id}`);
  return found;
};
/** A note of so many Hz, as the ear tells it. */
const heard = (hz: number, seconds = 1, steady = true) =>
  createSoundChooser({ harp, reference }).choose(
    {
      id: 1,
      from: asSeconds(0),
      to: asSeconds(seconds),
      frequency: asHz(hz),
      level: -20,
      steady,
      joined: 'attack',
      vibrato: null,
      movement: { start: asCents(0), settling: asSeconds(0), end: asCents(0) },
    },
    true,
  );
const none: ReadonlyMap<string, Cents> = new Map();
const play = (hz: number, asked: Sound | null, readings = none) =>
  readReed(readings, { harp, reference, asked, note: heard(hz) });

describe('a harp’s own tuning', () => {
  it('asks for every reed, hole by hole', () => {
    expect(reedsInTurn(harp).map(soundId).slice(0, 5)).toEqual(['1B', '1D', '2B', '2D', '3B']);
    expect(reedsInTurn(harp)).toHaveLength(20);
    expect(nextReed(harp, new Map([['1B', asCents(0)]]))).toBe(reed('1D'));
    expect(nextReed(harp, new Map(reedsInTurn(harp).map((each) => [soundId(each), asCents(0)])))).toBeNull();
  });

  it('reads cents from equal temperament at the reference, a reed out of turn too', () => {
    // A4 is blow 6 of a harp whose blow 6 is G5: 9 semitones below is C4, 1 blow (ISO 16 with 442 Hz).
    const hz = 442 * 2 ** (-9 / 12) * 2 ** (-14 / 1200);
    expect(play(hz, reed('1B'))).toMatchObject({ id: '1B', said: '1 blow: −14 cents.' });
    expect(play(hz, reed('5D')).readings.get('1B')).toBe(-14);
  });

  it('takes the asked one of two reeds with one pitch, and neither unasked', () => {
    const g4 = 442 * 2 ** (-2 / 12);
    expect(play(g4, reed('2D')).id).toBe('2D');
    expect(play(g4, reed('3B')).id).toBe('3B');
    const unasked = play(g4, reed('1B'));
    expect([unasked.id, unasked.said]).toEqual([
      null,
      expect.stringMatching(/^That may be [23] .* or [23] .*Play 1 blow/),
    ]);
  });

  it('takes no bend, no touch and nothing that wavers, and says what to do', () => {
    const bent = 442 * 2 ** (1 / 12);
    expect(play(bent, reed('3D'))).toMatchObject({
      id: null,
      readings: none,
      said: expect.stringMatching(/bent a semitone.*plain/),
    });
    for (const note of [heard(442 * 2 ** (-9 / 12), 0.2), heard(442 * 2 ** (-9 / 12), 1, false)])
      expect(readReed(none, { harp, reference, asked: reed('1B'), note })).toMatchObject({
        id: null,
        said: expect.stringMatching(/longer/),
      });
  });

  it('doubts a draw note that hangs below the others', () => {
    const others = new Map(['1B', '2B', '3B', '4B'].map((id) => [id, asCents(0)]));
    expect(play(442 * 2 ** (2 / 12) * 2 ** (-32 / 1200), reed('3D'), others).said).toMatch(
      /well below the others/,
    );
  });

  it('brings a harp’s published table back from its notes: each within a cent', () => {
    // The table: tuning02.php, ohw.se, 2004, as the program has it under its name.
    const wanted = intonate(TUNINGS[0], 'compromise').cents;
    expect(INTONATIONS.compromise.source).toContain('ohw.se');
    let readings = none;
    for (const sound of reedsInTurn(harp)) {
      const cents = wanted[sound.breath][sound.hole - 1] ?? 0;
      readings = play(442 * 2 ** ((sound.pitch - 69 + cents / 100) / 12), sound, readings).readings;
    }
    expect(measuredCents(harp, readings)).toEqual(wanted);
    expect(measuredCents(harp, none).blow).toEqual(Array(10).fill(0));
  });
});
