/** Ears under one measure: ours, and detectors of others over windows of 1024 samples, one every 256. */
import { Macleod, YIN } from 'pitchfinder';
import { PitchDetector } from 'pitchy';
import type { PitchFrame } from '../../../src/core/hearing/pitch-frame';
import { createPitchTracker } from '../../../src/core/hearing/pitch-tracker';
import { reachableRanges } from '../../../src/core/hearing/reachable';
import { asHz, asSeconds } from '../../../src/core/theory/units';
import type { Take } from './take';

export interface Detector {
  readonly name: string;
  readonly listen: (take: Take) => readonly PitchFrame[];
}

const WINDOW = 1024;
const STEP = 256;

/** Hz, 0 where a window has no pitch. */
type Find = (window: Float32Array) => number;

const inWindows =
  (create: (sampleRate: number) => Find) =>
  ({ samples, sampleRate }: Take): readonly PitchFrame[] => {
    const find = create(sampleRate);
    const frames: PitchFrame[] = [];
    for (let end = WINDOW; end <= samples.length; end += STEP) {
      const frequency = find(samples.subarray(end - WINDOW, end));
      frames.push({
        known: asSeconds(end / sampleRate),
        centre: asSeconds((end - WINDOW / 2) / sampleRate),
        frequency,
        clarity: frequency > 0 ? 1 : 0,
        level: 0,
      });
    }
    return frames;
  };

const ours =
  (subtracting: boolean) =>
  ({ samples, sampleRate, band, harp, reference }: Take): readonly PitchFrame[] => {
    const ranges = reachableRanges(harp, asHz(reference));
    const known = subtracting && band !== null;
    const tracker = createPitchTracker({ sampleRate, ranges, band: known });
    return known ? tracker.push(samples, band) : tracker.push(samples);
  };

/** Clarity below which the first does not answer: its author's advice is 0.9 to 0.95. */
const CLEAR = 0.9;

export const DETECTORS: readonly Detector[] = [
  { name: 'ours', listen: ours(false) },
  { name: 'ours, band known', listen: ours(true) },
  {
    name: 'pitchy (McLeod)',
    listen: inWindows((sampleRate) => {
      const detector = PitchDetector.forFloat32Array(WINDOW);
      return (window) => {
        const [frequency, clarity] = detector.findPitch(window, sampleRate);
        return clarity >= CLEAR ? frequency : 0;
      };
    }),
  },
  {
    name: 'pitchfinder YIN',
    listen: inWindows((sampleRate) => {
      const detect = YIN({ sampleRate });
      return (window) => detect(window) ?? 0;
    }),
  },
  {
    name: 'pitchfinder McLeod',
    listen: inWindows((sampleRate) => {
      const detect = Macleod({ sampleRate, bufferSize: WINDOW });
      return (window) => {
        const { freq, probability } = detect(window);
        return probability >= CLEAR && freq > 0 ? freq : 0;
      };
    }),
  },
];
