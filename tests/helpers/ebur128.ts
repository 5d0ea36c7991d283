import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** A loudness meter that is not ours: the registry's WebAssembly build of an EBU R 128 library. */
export interface OtherMeter {
  readonly integrated: (sampleRate: number, left: Float32Array, right: Float32Array) => number;
  /** In dBTP. */
  readonly truePeak: (sampleRate: number, left: Float32Array, right: Float32Array) => number;
}

type Measure = (rate: number, left: number, leftLength: number, right: number, rightLength: number) => number;

interface MeterExports {
  readonly memory: WebAssembly.Memory;
  readonly __wbindgen_malloc: (bytes: number) => number;
  readonly ebur128_integrated_stereo: Measure;
  readonly ebur128_true_peak_stereo: Measure;
}

const isMeter = (exports: object): exports is MeterExports =>
  ['memory', '__wbindgen_malloc', 'ebur128_integrated_stereo', 'ebur128_true_peak_stereo'].every(
    (name) => name in exports,
  );

/** The library calls back only to report that it broke. */
const broken = (): never => {
  throw new Error('the loudness library broke');
};

/** Loads the meter past its own glue code, which only a bundler can import. */
export const loadOtherMeter = async (): Promise<OtherMeter> => {
  const file = createRequire(import.meta.url).resolve('ebur128-wasm/ebur128_wasm_bg.wasm');
  const module = await WebAssembly.compile(readFileSync(file));
  const imports: WebAssembly.Imports = {};
  for (const { module: name, name: item } of WebAssembly.Module.imports(module)) {
    imports[name] = { ...imports[name], [item]: broken };
  }
  const { exports } = await WebAssembly.instantiate(module, imports);
  if (!isMeter(exports)) throw new Error('the loudness library has changed its shape');
  const pass = (samples: Float32Array): number => {
    const at = exports.__wbindgen_malloc(samples.length * 4);
    new Float32Array(exports.memory.buffer).set(samples, at / 4);
    return at;
  };
  const call =
    (measure: Measure) =>
    (sampleRate: number, left: Float32Array, right: Float32Array): number =>
      measure(sampleRate, pass(left), left.length, pass(right), right.length);
  return {
    integrated: call(exports.ebur128_integrated_stereo),
    truePeak: call(exports.ebur128_true_peak_stereo),
  };
};
