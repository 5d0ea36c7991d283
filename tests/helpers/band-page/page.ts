/** A page with the band and nothing else, driven by browser tests through `window.bench`. */
import type { BandSound, BandStatus } from '../../../src/audio/band';
import { createBand } from '../../../src/audio/create-band';
import type { EngineCounts } from '../../../src/audio/engine';
import type { Rendered } from '../../../src/audio/render-offline';
import type { Program, Section } from '../../../src/core/score/program';
import type { PartId } from '../../../src/core/score/score';

export interface RenderOrder {
  readonly program: Program;
  readonly sections: readonly Section[];
  readonly sound: BandSound;
  readonly sampleRate: number;
  readonly parts?: readonly PartId[];
}

export interface RenderResult extends Rendered {
  readonly milliseconds: number;
  /** 32-bit floats, little-endian, in base64: left, then right. */
  readonly pcm: string;
}

const toBase64 = (samples: readonly Float32Array[]): string => {
  let text = '';
  for (const part of samples) {
    const bytes = new Uint8Array(part.buffer, part.byteOffset, part.byteLength);
    for (let at = 0; at < bytes.length; at += 0x8000) {
      text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    }
  }
  return btoa(text);
};

const render = async (order: RenderOrder): Promise<RenderResult> => {
  const { renderSections } = await import('../../../src/audio/render-offline');
  const left: Float32Array[] = [];
  const right: Float32Array[] = [];
  const began = performance.now();
  const rendered = await renderSections({
    ...order,
    feel: order.program.style.feel,
    push: order.program.style.push,
    onChunk: (one, other) => {
      left.push(one.slice());
      right.push(other.slice());
    },
  });
  const milliseconds = performance.now() - began;
  return { ...rendered, milliseconds, pcm: toBase64([...left, ...right]) };
};

const band = createBand();
const statuses: BandStatus['kind'][] = [];
band.onStatus(({ kind }) => statuses.push(kind));

const bench = { band, statuses, render };

export type Bench = typeof bench & { counts?: () => EngineCounts };

declare global {
  interface Window {
    bench: Bench;
  }
}

window.bench = bench;
