import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutAfter, type SampleSink, withoutSilentEnd } from '../../../../src/app/export/silent-ending';

/** A class, as encoders are: its methods need their object. */
class Collector implements SampleSink {
  readonly left: number[] = [];
  readonly right: number[] = [];
  readonly calls: string[] = [];

  async add(left: Float32Array, right: Float32Array): Promise<void> {
    expect(left.length).toBe(right.length);
    this.left.push(...left);
    this.right.push(...right);
  }
  async end(): Promise<void> {
    this.calls.push('end');
  }
  close(): void {
    this.calls.push('close');
  }
}

/** Hands samples over in pieces, wiping each array afterwards as a renderer may. */
const feed = async (sink: SampleSink, pieces: readonly (readonly number[])[]) => {
  for (const piece of pieces) {
    const [left, right] = [Float32Array.from(piece), Float32Array.from(piece, (value) => -value)];
    await sink.add(left, right);
    left.fill(9);
    right.fill(9);
  }
  await sink.end();
  sink.close();
};

/** Exact in 32 bits. */
const quietOrNot = fc.constantFrom(0, 0, 0, 2 ** -20, 0.25, -0.5);
const anyPieces = fc.array(fc.array(quietOrNot, { maxLength: 6 }), { maxLength: 6 });

describe('a file that dies away', () => {
  it('keeps everything to the last sound and nothing after it', async () => {
    await fc.assert(
      fc.asyncProperty(anyPieces, async (pieces) => {
        const sink = new Collector();
        await feed(withoutSilentEnd(sink), pieces);
        const all = pieces.flat();
        const until = all.findLastIndex((value) => Math.abs(value) > 1e-4) + 1;
        expect(sink.left).toEqual(all.slice(0, until));
        expect(sink.right).toEqual(all.slice(0, until).map((value) => -value));
        expect(sink.calls).toEqual(['end', 'close']);
      }),
    );
  });

  it('hears either side', async () => {
    const sink = new Collector();
    const trimmed = withoutSilentEnd(sink);
    await trimmed.add(Float32Array.of(0, 0, 0), Float32Array.of(0, 0.5, 0));
    await trimmed.end();
    expect([sink.left, sink.right]).toEqual([
      [0, 0],
      [0, 0.5],
    ]);
  });

  it('does not hold more than a minute of silence', async () => {
    const seconds: number[] = [];
    const counted: SampleSink = {
      add: async ({ length }) => void seconds.push(length),
      end: async () => undefined,
      close: () => undefined,
    };
    const trimmed = withoutSilentEnd(counted);
    const second = new Float32Array(48_000);
    for (let i = 0; i < 150; i += 1) await trimmed.add(second, second);
    expect(seconds.length).toBeGreaterThan(80);
  });
});

describe('a file that goes round', () => {
  it('has exactly the frames asked for, unchanged but for the last 240', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.nat({ max: 400 }), { maxLength: 6 }),
        fc.nat({ max: 1200 }),
        async (lengths, frames) => {
          const sink = new Collector();
          const pieces = lengths.map((length) => Array<number>(length).fill(0.5));
          await feed(cutAfter(sink, frames), pieces);
          const { left, right } = sink;
          const kept = Math.min(frames, pieces.flat().length);
          expect(left).toHaveLength(kept);
          const untouched = Math.max(0, frames - 240);
          expect(left.slice(0, untouched)).toEqual(pieces.flat().slice(0, untouched));
          expect(right).toEqual(left.map((value) => -value));
        },
      ),
    );
  });

  it('falls to nothing at the cut, step by step', async () => {
    const sink = new Collector();
    await feed(cutAfter(sink, 1000), [Array(900).fill(1), Array(500).fill(1)]);
    const { left } = sink;
    const end = left.slice(760);
    expect(end).toEqual(end.toSorted((a, b) => b - a));
    expect(left[760]).toBe(1);
    expect(left[880]).toBeCloseTo(0.5, 6);
    expect(left[999]).toBeCloseTo(1 / 240, 6);
  });
});
