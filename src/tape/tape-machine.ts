/** Recordings: read from files, heard through away from the page, and played back. */
import { monoOf, readWav } from '../core/formats/read-wav';
import type { HeardNote } from '../core/hearing/heard-note';
import type { EarAnswer } from '../mic/ear-messages';
import type { Recording } from '../mic/hear-through';
import { type EarWorker, WEB_MICROPHONE } from '../mic/mic-ground';
import type { MicGround } from '../mic/microphone';

/** The sound of a file, mono. */
export type DecodedSound = Pick<Recording, 'samples' | 'sampleRate'>;

/** How a recording is heard through. */
export interface HearingReins {
  readonly signal: AbortSignal;
  /** 0–1. */
  readonly onProgress: (share: number) => void;
}

/** Reads, hears and plays recordings with what the browser has. */
export interface TapeMachine {
  /** Reads WAV and whatever the browser can decode. Rejects in words where it cannot. */
  decode(file: Blob): Promise<DecodedSound>;
  /** The notes of a recording that have ended. Rejects when it is aborted, or no worker can be had. */
  hear(recording: Recording, reins: HearingReins): Promise<readonly HeardNote[]>;
  /** Plays samples once; returns what stops them. `onEnd` is called in either case, once. */
  play(sound: DecodedSound, ground: MicGround, onEnd: () => void): () => void;
}

/** Hz that every file is brought to: what the ear was made for. */
const RATE = 48_000;

/** Rates that need no change. */
const RATES = [44_100, RATE];

const isWav = (bytes: Uint8Array): boolean => String.fromCharCode(...bytes.subarray(0, 4)) === 'RIFF';

const resampled = async ({ samples, sampleRate }: DecodedSound): Promise<DecodedSound> => {
  if (RATES.includes(sampleRate) || samples.length === 0) return { samples, sampleRate };
  const context = new OfflineAudioContext(1, Math.ceil((samples.length * RATE) / sampleRate), RATE);
  const buffer = context.createBuffer(1, samples.length, sampleRate);
  buffer.getChannelData(0).set(samples);
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.connect(context.destination);
  source.start();
  return { samples: (await context.startRendering()).getChannelData(0), sampleRate: RATE };
};

/** WAV is read by our own reader, which takes what recorders write and browsers refuse; all else by the browser. */
const decode = async (file: Blob): Promise<DecodedSound> => {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (isWav(bytes)) {
    const reading = readWav(bytes);
    if (reading.kind === 'wrong') throw new Error(reading.why);
    return resampled({ samples: monoOf(reading.sound), sampleRate: reading.sound.sampleRate });
  }
  const context = new OfflineAudioContext(1, 1, RATE);
  const buffer = await context.decodeAudioData(bytes.buffer);
  const channels = Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i));
  return { samples: monoOf({ sampleRate: buffer.sampleRate, channels }), sampleRate: buffer.sampleRate };
};

const hearIn =
  (createWorker: () => EarWorker): TapeMachine['hear'] =>
  (recording, { signal, onProgress }) =>
    new Promise((resolve, reject) => {
      const worker = createWorker();
      const notes: HeardNote[] = [];
      const end = (done: () => void): void => {
        worker.terminate();
        signal.removeEventListener('abort', abort);
        done();
      };
      const abort = (): void => end(() => reject(signal.reason));
      if (signal.aborted) return abort();
      signal.addEventListener('abort', abort);
      worker.onerror = () => end(() => reject(new Error('The ear could not be loaded')));
      worker.onmessage = ({ data }: MessageEvent<EarAnswer>) => {
        if (data.kind !== 'recording') return;
        notes.push(...data.notes);
        onProgress(data.share);
        if (data.share >= 1) end(() => resolve(notes));
      };
      const samples = recording.samples.slice();
      const sent = recording.sent?.slice();
      worker.postMessage({ kind: 'recording', ...recording, samples, ...(sent && { sent }) }, [
        samples.buffer,
        ...(sent ? [sent.buffer] : []),
      ]);
    });

const play: TapeMachine['play'] = ({ samples, sampleRate }, { context, output }, onEnd) => {
  const buffer = context.createBuffer(1, Math.max(1, samples.length), sampleRate);
  buffer.getChannelData(0).set(samples);
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.connect(output);
  source.onended = () => {
    source.disconnect();
    onEnd();
  };
  source.start();
  return () => source.stop();
};

/** The machine of this browser. @param createWorker starts an ear; replaced in tests. */
export const createTapeMachine = (
  createWorker: () => EarWorker = WEB_MICROPHONE.createWorker,
): TapeMachine => ({
  decode,
  hear: hearIn(createWorker),
  play,
});
