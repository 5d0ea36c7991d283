import { panGains } from '../mixer/pan-law';
import { ROTOR } from '../mixer/rotor';

/** The organ's turning speaker in samples, as `mixer/rotary.ts` makes it of nodes; it turns by the time of the file. */
export interface TurningSpeaker {
  /** Adds what comes of the next samples to both sides. */
  addTo(left: Float32Array, right: Float32Array, samples: Float32Array, from: number): void;
}

/** Creates a speaker that has heard nothing. */
export const createTurningSpeaker = (sampleRate: number): TurningSpeaker => {
  const reach = Math.ceil((ROTOR.path + ROTOR.change) * sampleRate) + 2;
  let line = new Float32Array(reach);
  return {
    addTo: (left, right, samples, from) => {
      const before = line.subarray(line.length - reach);
      const heard = new Float32Array(reach + samples.length);
      heard.set(before);
      heard.set(samples, reach);
      line = heard;
      for (const side of [-1, 1]) {
        const [toLeft, toRight] = panGains(side * ROTOR.side);
        for (let i = 0; i < samples.length; i += 1) {
          const wave = Math.sin(2 * Math.PI * ROTOR.turns * ((from + i) / sampleRate));
          const place = reach + i - (ROTOR.path - side * ROTOR.change * wave) * sampleRate;
          const index = Math.floor(place);
          const one = heard[index] ?? 0;
          const delayed = one + (place - index) * ((heard[index + 1] ?? 0) - one);
          const sound = 0.5 * delayed * (1 + side * ROTOR.swell * wave);
          left[i] = (left[i] ?? 0) + sound * toLeft;
          right[i] = (right[i] ?? 0) + sound * toRight;
        }
      }
    },
  };
};
