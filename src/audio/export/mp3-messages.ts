/** Asks the worker that encodes MP3 for something; it answers each in turn. */
export type Mp3Order =
  | { readonly kind: 'open'; readonly sampleRate: number; readonly bitrate: number }
  | { readonly kind: 'samples'; readonly left: Float32Array; readonly right: Float32Array }
  | { readonly kind: 'end' };
