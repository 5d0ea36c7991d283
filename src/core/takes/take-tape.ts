/** The last minutes of what was played and of what the band sent meanwhile, in blocks, with a bounded size. */

/** The same moments of both sides, mono, 16 bits. */
export interface TapeBlock {
  /** Seconds of the audio clock at the first sample. */
  readonly at: number;
  readonly heard: Int16Array;
  readonly sent: Int16Array;
}

/** What a tape holds, in one piece. */
export interface TapeContents {
  readonly heard: Int16Array;
  readonly sent: Int16Array;
  /** Seconds of the take at a time of the audio clock; null where nothing was recorded then. */
  readonly timeOf: (at: number) => number | null;
}

/** The latest sound from the microphone, kept up to a length. */
export interface Tape {
  push(block: TapeBlock): void;
  /** Seconds kept. */
  seconds(): number;
  bytes(): number;
  /** Time of the audio clock of the oldest sample; null while empty. */
  since(): number | null;
  contents(): TapeContents;
  clear(): void;
}

const BYTES_A_SAMPLE = 2;
const SIDES = 2;
/** Times this near an edge of what was recorded count as within. Seconds. */
const EDGE = 0.02;

/** Bytes that so many seconds take. */
export const tapeBytes = (seconds: number, sampleRate: number): number =>
  Math.round(seconds * sampleRate) * BYTES_A_SAMPLE * SIDES;

const joined = (blocks: readonly TapeBlock[], side: 'heard' | 'sent'): Int16Array => {
  const whole = new Int16Array(blocks.reduce((sum, { heard }) => sum + heard.length, 0));
  let at = 0;
  for (const block of blocks) {
    whole.set(block[side], at);
    at += block.heard.length;
  }
  return whole;
};

/** An empty tape that holds so many seconds at most: what is older makes room. Pauses of listening take no room. */
export const createTape = (sampleRate: number, most: number): Tape => {
  let blocks: TapeBlock[] = [];
  let frames = 0;
  return {
    push(block) {
      blocks.push(block);
      frames += block.heard.length;
      for (let oldest = blocks[0]; oldest && frames - oldest.heard.length >= most * sampleRate; ) {
        frames -= oldest.heard.length;
        blocks.shift();
        oldest = blocks[0];
      }
    },
    seconds: () => frames / sampleRate,
    bytes: () => tapeBytes(frames / sampleRate, sampleRate),
    since: () => blocks[0]?.at ?? null,
    contents() {
      const kept = [...blocks];
      let before = 0;
      const starts = kept.map(({ at, heard }) => {
        const start = { at, until: at + heard.length / sampleRate, before };
        before += heard.length / sampleRate;
        return start;
      });
      return {
        heard: joined(kept, 'heard'),
        sent: joined(kept, 'sent'),
        timeOf: (at) => {
          const found = starts.findLast((each) => at >= each.at - EDGE && at <= each.until + EDGE);
          return found === undefined ? null : found.before + Math.max(0, at - found.at);
        },
      };
    },
    clear() {
      blocks = [];
      frames = 0;
    },
  };
};
