import { describe, expect, it } from 'vitest';
import { rotorWave } from '../../../../src/audio/mixer/rotor';

/** The slow speed of the trade's cabinets (common practice, no source). */
const TURNS = 0.8;

/** The Web Audio standard's `PeriodicWave` of one partial, so many seconds after its oscillator started. */
const waveAt = ({ cosine, sine }: ReturnType<typeof rotorWave>, seconds: number): number =>
  cosine * Math.cos(2 * Math.PI * TURNS * seconds) + sine * Math.sin(2 * Math.PI * TURNS * seconds);

describe('the rotary speaker', () => {
  it('is where the music has it, whenever it was made', () => {
    const times = [0.1, 3.3, 8, 17.77, 38, 1234.5];
    for (const at of times) {
      const turn = Math.sin(2 * Math.PI * TURNS * at);
      for (const made of times.filter((time) => time <= at))
        expect(waveAt(rotorWave(made), at - made)).toBeCloseTo(turn, 9);
    }
  });
});
