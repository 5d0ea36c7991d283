import type { PcmForm } from '../../audio/export/answer-pcm';
import type { AudioCompressor, Encoding } from '../../audio/export/compression';
import type { PcmEncoder } from '../../audio/export/pcm-file';
import type { SoundPreparation } from '../../audio/export/prepare-sounds';
import type { Rendered, RenderRequest } from '../../audio/export/render-offline';
import type { Section } from '../../core/arranger/program';
import { type AudioTags, wavInfo } from '../../core/formats/audio-tags';
import { longestWav, type WavFormat, wavEnd, wavHeader } from '../../core/formats/wav';
import type { Style } from '../../core/players/style';
import type { PartId } from '../../core/score/score';
import { DEFAULT_MIX } from '../../core/settings/defaults';
import type { BandSound } from '../../core/song/band-sound';
import { messageOf } from '../../core/theory/thrown';
import type { FileSaver, GrowingFile } from '../../storage/save-file';
import type { ShareSheet } from '../../storage/share-sheet';
import { EncoderTrouble, mustBeWritten, SavingTrouble } from './export-trouble';
import { cutAfter, type SampleSink, withoutSilentEnd } from './silent-ending';

/** Turns sections into samples; see `renderSections` of the audio part. */
export type Renderer = (request: RenderRequest) => Promise<Rendered>;

export interface TakeAwayDevices {
  /** Fetches the part of the program that renders; rejects when it cannot be had. */
  readonly loadRenderer: () => Promise<Renderer>;
  /** Has the sounds of a file that may be asked for next made ready; rejects when the part that does it cannot be had. */
  readonly prepareSounds: (preparation: SoundPreparation) => Promise<void>;
  readonly saver: FileSaver;
  /** The sheet that hands on what was saved; absent where the platform has none. */
  readonly share?: Pick<ShareSheet, 'begin' | 'takes' | 'offer' | 'offerLink'>;
  /** Fetches the part of the program that compresses; rejects when it cannot be had. */
  readonly loadCompressor: () => Promise<AudioCompressor>;
  /** Fetches the part of the program that writes plain samples; rejects when it cannot be had. */
  readonly loadPcm: () => Promise<(form: PcmForm) => PcmEncoder>;
}

/** One file to make: its name and the parts in it. */
export interface AudioFile {
  readonly name: string;
  readonly parts: readonly PartId[];
}

export interface AudioOrder {
  readonly tags: AudioTags;
  readonly files: readonly AudioFile[];
  readonly sections: readonly Section[];
  readonly style: Style;
  readonly sound: BandSound;
  readonly format: WavFormat | Encoding;
  /** Seconds after which the files end whatever still rings; `null` lets the last sound die away. */
  readonly cutAt: number | null;
  /** Seconds over which it fades before that; a moment where absent. */
  readonly fade?: number;
}

/** What a job is told and asked while it runs. */
export interface JobReins {
  readonly signal: AbortSignal;
  readonly report: (fileName: string, share: number) => void;
}

/** Samples are taken in some four seconds' worth at a time, between which the page gets its turn: each writing costs by itself. */
const SLICE_FRAMES = 192_000;

const isEncoding = (format: WavFormat | Encoding): format is Encoding => 'bitrate' in format;

/** Throws SavingTrouble when music of so many seconds is too long for one WAV file. */
export const mustFitWav = (format: WavFormat, seconds: number): void => {
  if (seconds * format.sampleRate <= longestWav(format)) return;
  const hours = longestWav(format) / format.sampleRate / 3600;
  throw new SavingTrouble(
    `One WAV file holds ${hours.toFixed(1)} hours at most in this form. Choose fewer choruses.`,
  );
};

/** What makes audio. Rejects with SavingTrouble when it cannot be had. */
const fetched = async <Part>(load: () => Promise<Part>): Promise<Part> => {
  try {
    return await load();
  } catch {
    throw new SavingTrouble(
      'The part of the program that makes audio could not be loaded. Save again; if it stays away, open Combshed in another tab and save there. Your choices are kept.',
    );
  }
};

/** The header goes first with no length, and is written again when the length is known. */
const openWav = async (
  file: GrowingFile,
  format: WavFormat,
  { style, tags }: AudioOrder,
  loadPcm: TakeAwayDevices['loadPcm'],
): Promise<SampleSink> => {
  const info = wavInfo(tags);
  const open = await fetched(loadPcm);
  const pcm = open({ bits: format.bits, seed: style.seed });
  let frames = 0;
  mustBeWritten(await file.write(wavHeader(format, 0)));
  /** What was encoded last is written while the next is encoded. */
  let last: Promise<void> = Promise.resolve();
  return {
    add: async (left, right) => {
      frames += left.length;
      const bytes = pcm.encode(left, right);
      const before = last;
      last = before.then(async () => mustBeWritten(await file.write(await bytes)));
      // Each failure is told by the next wait for it, and by no other way.
      for (const each of [bytes, last]) each.catch(() => undefined);
      await before;
    },
    end: async () => {
      await last;
      mustBeWritten(await file.write(wavEnd(format, frames)));
      mustBeWritten(await file.write(info));
      mustBeWritten(await file.rewriteStart(wavHeader(format, frames, info.length)));
    },
    close: pcm.close,
  };
};

/** A disk that is full says so itself; all else is the encoder's. */
const encoderTrouble = ({ name }: Encoding, error: unknown): SavingTrouble =>
  error instanceof SavingTrouble ? error : new EncoderTrouble(name, messageOf(error));

const openSink = async (
  file: GrowingFile,
  order: AudioOrder,
  { loadCompressor, loadPcm }: TakeAwayDevices,
): Promise<SampleSink> => {
  const { format, tags, style } = order;
  if (!isEncoding(format)) return openWav(file, format, order, loadPcm);
  const write = async (bytes: Uint8Array) => mustBeWritten(await file.write(bytes));
  const rewriteStart = async (bytes: Uint8Array) => mustBeWritten(await file.rewriteStart(bytes));
  const compressor = await fetched(loadCompressor);
  const tried = async <Value>(act: () => Value | Promise<Value>): Promise<Value> => {
    try {
      return await act();
    } catch (error) {
      throw encoderTrouble(format, error);
    }
  };
  const compressed = await tried(() =>
    compressor.open({ encoding: format, tags, serial: style.seed, write, rewriteStart }),
  );
  return {
    add: (left, right) => tried(() => compressed.add(left, right)),
    end: () => tried(() => compressed.end()),
    close: () => compressed.close(),
  };
};

/** A quiet room's volume is no reason for a quiet file: the master rests where loudness was set. */
const soundOfFile = (sound: BandSound): BandSound => ({
  ...sound,
  mix: { ...sound.mix, master: DEFAULT_MIX.master },
});

interface Work {
  readonly order: AudioOrder;
  readonly render: Renderer;
  readonly devices: TakeAwayDevices;
  readonly signal: AbortSignal;
}

const fill = async (
  growing: GrowingFile,
  { parts }: AudioFile,
  { order, render, devices, signal }: Work,
  onProgress: (share: number) => void,
): Promise<Rendered> => {
  const file = await openSink(growing, order, devices);
  const { cutAt, fade, format } = order;
  const sink =
    cutAt === null
      ? withoutSilentEnd(file)
      : cutAfter(file, Math.round(cutAt * format.sampleRate), Math.round((fade ?? 0) * format.sampleRate));
  try {
    const rendered = await render({
      sections: order.sections,
      feel: order.style.feel,
      push: order.style.push,
      sound: soundOfFile(order.sound),
      sampleRate: format.sampleRate,
      parts,
      signal,
      onProgress,
      onChunk: async (left, right) => {
        for (let from = 0; from < left.length; from += SLICE_FRAMES) {
          signal.throwIfAborted();
          const to = from + SLICE_FRAMES;
          await sink.add(left.subarray(from, to), right.subarray(from, to));
        }
      },
    });
    signal.throwIfAborted();
    await sink.end();
    return rendered;
  } finally {
    sink.close();
  }
};

const makeFile = async (
  file: AudioFile,
  work: Work,
  onProgress: (share: number) => void,
): Promise<Rendered> => {
  const { format } = work.order;
  const type = isEncoding(format) ? format.mediaType : 'audio/wav';
  const growing = await work.devices.saver.open(file.name, type);
  try {
    const rendered = await fill(growing, file, work, onProgress);
    mustBeWritten(await growing.save());
    return rendered;
  } catch (error) {
    await growing.discard();
    throw error;
  }
};

/**
 * Renders every file of an order and hands each over as soon as it is done. Resolves with the number of sounds that
 * could not be computed and are missing. Rejects with SavingTrouble, or with the signal's reason when aborted.
 */
export const saveAudioFiles = async (
  order: AudioOrder,
  devices: TakeAwayDevices,
  { signal, report }: JobReins,
): Promise<number> => {
  const render = await fetched(devices.loadRenderer);
  let missing = 0;
  for (const [index, file] of order.files.entries()) {
    signal.throwIfAborted();
    const progress = (share: number) => report(file.name, (index + share) / order.files.length);
    progress(0);
    const { counts } = await makeFile(file, { order, render, devices, signal }, progress);
    missing += counts.missing;
  }
  return missing;
};
