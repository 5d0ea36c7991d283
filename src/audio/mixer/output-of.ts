const outputs = new WeakMap<BaseAudioContext, AudioNode>();

/** The one node through which everything leaves a context, so that what is sent out can be known sample by sample. */
export const outputOf = (context: BaseAudioContext): AudioNode => {
  const known = outputs.get(context);
  if (known !== undefined) return known;
  const output = context.createGain();
  output.connect(context.destination);
  outputs.set(context, output);
  return output;
};
