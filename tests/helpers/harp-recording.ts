/** Recordings of the program's own harp voice, as files a browser takes for a microphone. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { harmonica } from '../../src/audio/voices/harmonica';
import { asHz, asMidi } from '../../src/core/theory/units';
import { wavFile } from './hearing/wav-file';

const SAMPLE_RATE = 48_000;

/** A note of the voice; `cents` off equal temperament. */
export interface RecordedNote {
  readonly midi: number;
  readonly from: number;
  readonly to: number;
  readonly cents?: number;
  /** Amplitude, 1 when absent: several notes at once need less each. */
  readonly amplitude?: number;
}

/** Samples of these notes over so many seconds, with faint noise as a room has. */
export const harpSamples = (notes: readonly RecordedNote[], seconds: number): Float32Array => {
  const out = Float32Array.from({ length: seconds * SAMPLE_RATE }, (_, i) => 1e-4 * Math.sin(i * i));
  for (const { midi, from, to, cents = 0, amplitude = 1 } of notes) {
    const hz = asHz(440 * 2 ** ((midi - 69 + cents / 100) / 12));
    const { samples, loop } = harmonica({
      midi: asMidi(midi),
      hz,
      velocity: 96,
      sampleRate: SAMPLE_RATE,
      seed: 1,
    });
    const start = Math.round(from * SAMPLE_RATE);
    const length = Math.round((to - from) * SAMPLE_RATE);
    for (let i = 0; i < length; i += 1) {
      const at = loop !== null && i >= loop.to ? loop.from + ((i - loop.from) % (loop.to - loop.from)) : i;
      const fade = Math.min(1, (length - i) / (0.02 * SAMPLE_RATE));
      out[start + i] += 2 * amplitude * fade * (samples[at] ?? 0);
    }
  }
  return out;
};

/** Writes a recording to a file of its own; `dispose` takes it away again. */
export const harpRecording = (notes: readonly RecordedNote[], seconds: number) => {
  const folder = mkdtempSync(join(tmpdir(), 'harp-'));
  const path = join(folder, 'harp.wav');
  writeFileSync(path, wavFile([harpSamples(notes, seconds)], { code: 1, bits: 16, sampleRate: SAMPLE_RATE }));
  return { path, dispose: () => rmSync(folder, { recursive: true, force: true }) };
};
