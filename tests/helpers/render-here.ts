import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import { answerRequest } from '../../src/audio/bank/answer-request';
import type { BankWorker, WorkerRoute } from '../../src/audio/bank/bank';
import type { SoundAnswer, SoundRequest } from '../../src/audio/bank/bank-messages';
import { nameOfKey } from '../../src/audio/bank/sound-key';
import { type Rendered, type RenderRequest, renderSections } from '../../src/audio/export/render-offline';
import type { Program, Section } from '../../src/core/arranger/program';
import type { BandSound } from '../../src/core/song/band-sound';
import { allSections } from './all-sections';

/** A file as it was rendered, without a browser. */
export interface HeardFile extends Rendered {
  readonly left: Float32Array;
  readonly right: Float32Array;
  readonly longestChunk: number;
}

/** A program's own instruments. @param master gain of the master; at rest when absent */
export const soundFor = ({ style }: Program, master = RESTING_SOUND.mix.master): BandSound => ({
  ...RESTING_SOUND,
  bass: style.bass,
  chords: style.chords,
  kit: style.kit,
  mix: { ...RESTING_SOUND.mix, master },
});

/** Computes each sound once, whoever asks for it: several files of one song share nearly all of theirs. */
export const createSharedSounds = (): WorkerRoute => {
  const known = new Map<string, SoundAnswer>();
  const answer = (request: SoundRequest): SoundAnswer => {
    const { key, sampleRate, held } = request;
    const name = [nameOfKey(key), sampleRate, held].join(' ');
    const made = known.get(name) ?? answerRequest(request);
    known.set(name, made);
    return made;
  };
  return () => {
    const worker: BankWorker = {
      onmessage: null,
      onerror: null,
      terminate: () => {
        worker.onmessage = null;
      },
      postMessage: (request) =>
        setImmediate(() => worker.onmessage?.(new MessageEvent('message', { data: answer(request) }))),
    };
    return worker;
  };
};

/** Renders a program here, where there are no workers; what they would do is done in turn. */
export const renderHere = async (
  program: Program,
  route: WorkerRoute,
  changes: Partial<RenderRequest> & { readonly sections?: readonly Section[] } = {},
): Promise<HeardFile> => {
  const chunks: (readonly [Float32Array, Float32Array])[] = [];
  const rendered = await renderSections({
    sections: allSections(program),
    feel: program.style.feel,
    push: program.style.push,
    sound: soundFor(program),
    sampleRate: 48_000,
    route,
    onChunk: (...sides) => void chunks.push(sides),
    ...changes,
  });
  const whole = (side: 0 | 1): Float32Array => {
    const samples = new Float32Array(rendered.frames);
    let at = 0;
    for (const chunk of chunks) {
      samples.set(chunk[side], at);
      at += chunk[side].length;
    }
    return samples;
  };
  const longestChunk = Math.max(...chunks.map(([{ length }]) => length));
  return { ...rendered, left: whole(0), right: whole(1), longestChunk };
};
