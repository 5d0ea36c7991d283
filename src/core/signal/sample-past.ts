/** The latest samples of a stream, in one piece. */
export interface SamplePast {
  /** The latest are those before `end`. */
  readonly samples: Float64Array;
  /** Moves with every push. */
  readonly end: number;
  /** Takes the next samples in. */
  push(next: Float64Array): void;
}

/** Keeps so many; silence before the first. There is room for twice as many, so that they are seldom moved. */
export const createSamplePast = (kept: number): SamplePast => new Past(kept);

class Past implements SamplePast {
  readonly samples: Float64Array;
  end: number;
  private readonly kept: number;

  constructor(kept: number) {
    this.samples = new Float64Array(2 * kept);
    this.end = kept;
    this.kept = kept;
  }

  push(next: Float64Array): void {
    const { samples, kept } = this;
    if (this.end + next.length > samples.length) {
      samples.copyWithin(0, this.end - kept, this.end);
      this.end = kept;
    }
    samples.set(next, this.end);
    this.end += next.length;
  }
}
