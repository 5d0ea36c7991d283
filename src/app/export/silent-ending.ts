/** Takes samples of both sides, piece by piece, until `end`. */
export interface SampleSink {
  add(left: Float32Array, right: Float32Array): Promise<void>;
  end(): Promise<void>;
  close(): void;
}

/** Below −90 dBFS even a quiet room at full volume hides what rings on. */
const SILENCE = 10 ** (-90 / 20);
/** Frames over which music that is cut while it sounds is faded, so that the cut is not a click (5 ms at 48 kHz). */
const FADE_FRAMES = 240;
/** Silence longer than this (a minute at 48 kHz) is passed on, so that it does not pile up in memory. */
const MOST_HELD_FRAMES = 60 * 48_000;

type Piece = readonly [left: Float32Array, right: Float32Array];

/** Frames up to and with the last that can be heard. */
const audibleFrames = ([left, right]: Piece): number => {
  let end = left.length;
  while (end > 0 && Math.abs(left[end - 1] ?? 0) < SILENCE && Math.abs(right[end - 1] ?? 0) < SILENCE)
    end -= 1;
  return end;
};

const part = ([left, right]: Piece, from: number, to: number): Piece => [
  left.subarray(from, to),
  right.subarray(from, to),
];

/** Leaves out the silence after the last sound. Nothing else changes. */
export const withoutSilentEnd = (sink: SampleSink): SampleSink => {
  let held: Piece[] = [];
  let heldFrames = 0;
  const hold = (piece: Piece): void => {
    if (piece[0].length === 0) return;
    // The renderer may use its arrays again once they are taken.
    held.push([piece[0].slice(), piece[1].slice()]);
    heldFrames += piece[0].length;
  };
  const release = async (): Promise<void> => {
    const pieces = held;
    held = [];
    heldFrames = 0;
    for (const [left, right] of pieces) await sink.add(left, right);
  };
  return {
    end: () => sink.end(),
    close: () => sink.close(),
    add: async (left, right) => {
      const piece: Piece = [left, right];
      const end = audibleFrames(piece);
      if (end > 0 || heldFrames > MOST_HELD_FRAMES) await release();
      if (end > 0) await sink.add(...part(piece, 0, end));
      hold(part(piece, end, left.length));
    },
  };
};

/** How loud a frame before a cut is that fades over so many frames; 1 before them. */
const fadeAt = (frame: number, cut: number, fade: number): number => Math.min(1, (cut - frame) / fade);

/** Ends exactly after so many frames, whatever still rings, so that the music can go round and round. */
export const cutAfter = (sink: SampleSink, frames: number, over = 0): SampleSink => {
  const fade = Math.max(FADE_FRAMES, over);
  let taken = 0;
  const faded = (samples: Float32Array): Float32Array =>
    samples.map((value, index) => value * fadeAt(taken + index, frames, fade));
  return {
    end: () => sink.end(),
    close: () => sink.close(),
    add: async (left, right) => {
      const [one, other] = part([left, right], 0, Math.max(0, frames - taken));
      if (one.length === 0) return;
      const nearEnd = taken + one.length > frames - fade;
      const piece: Piece = nearEnd ? [faded(one), faded(other)] : [one, other];
      taken += one.length;
      await sink.add(...piece);
    },
  };
};
