/** A filter that keeps its state from call to call. */
export type Filter = (sample: number) => number;

interface Coefficients {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/** Below this a state is silence; smaller numbers still would slow the processor down (denormals). */
const SILENCE = 1e-30;

const section = ({ b0, b1, b2, a1, a2 }: Coefficients): Filter => {
  let s1 = 0;
  let s2 = 0;
  return (x) => {
    const y = b0 * x + s1;
    s1 = b1 * x - a1 * y + s2;
    s2 = b2 * x - a2 * y;
    if (Math.abs(s1) < SILENCE) s1 = 0;
    if (Math.abs(s2) < SILENCE) s2 = 0;
    return y;
  };
};

/** Quality factors of the two second-order sections of a fourth-order Butterworth filter. */
const BUTTERWORTH_4 = [1 / (2 * Math.cos(Math.PI / 8)), 1 / (2 * Math.cos((3 * Math.PI) / 8))] as const;

const inSeries = (sections: readonly Filter[]): Filter => {
  const [first, second] = sections;
  if (first === undefined || second === undefined) throw new RangeError('A filter here has two sections');
  return (x) => second(first(x));
};

/** Coefficients by the bilinear transform (W3C Audio EQ Cookbook, R. Bristow-Johnson). */
const designed = (kind: 'low' | 'high', ratio: number, q: number): Coefficients => {
  const w = 2 * Math.PI * ratio;
  const alpha = Math.sin(w) / (2 * q);
  const cos = Math.cos(w);
  const a0 = 1 + alpha;
  const edge = (kind === 'low' ? 1 - cos : 1 + cos) / 2 / a0;
  const middle = kind === 'low' ? 2 * edge : -2 * edge;
  return { b0: edge, b1: middle, b2: edge, a1: (-2 * cos) / a0, a2: (1 - alpha) / a0 };
};

/** Fourth-order Butterworth low-pass. `cutoff` and `sampleRate` in Hz, the cutoff below half the rate. */
export const lowPass = (cutoff: number, sampleRate: number): Filter =>
  inSeries(BUTTERWORTH_4.map((q) => section(designed('low', cutoff / sampleRate, q))));

/** Fourth-order Butterworth high-pass. `cutoff` and `sampleRate` in Hz, the cutoff below half the rate. */
export const highPass = (cutoff: number, sampleRate: number): Filter =>
  inSeries(BUTTERWORTH_4.map((q) => section(designed('high', cutoff / sampleRate, q))));
