import { encodePcm, wavHeader } from '../../src/core/formats/wav';

/** A WAV file in base64, as a script in a page can be handed it: the samples times a gain, cut off at full scale. */
export const wavText = (samples: Float32Array, gain: number, sampleRate: number): string => {
  const format = { sampleRate, channels: 1, bits: 16 } as const;
  const pcm = encodePcm([samples.map((value) => gain * value)], format.bits);
  return Buffer.concat([wavHeader(format, samples.length), pcm]).toString('base64');
};
