/** A mono buffer of a context from samples at its rate. */
export const makeBuffer =
  (context: BaseAudioContext) =>
  (samples: Float32Array<ArrayBuffer>): AudioBuffer => {
    const buffer = context.createBuffer(1, samples.length, context.sampleRate);
    buffer.copyToChannel(samples, 0);
    return buffer;
  };
