declare module 'music-tempo' {
  /** Finds beats in mono samples at 44.1 kHz. */
  class MusicTempo {
    constructor(samples: readonly number[]);
    readonly tempo: number;
    /** Times of beats in seconds. */
    readonly beats: readonly number[];
  }
  export = MusicTempo;
}
