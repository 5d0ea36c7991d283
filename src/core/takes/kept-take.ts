import { isRecord } from '../theory/is-record';
import { keptText } from '../theory/kept-text';
import type { TakeSound } from './take-sound';

/** A take that is kept under a name. */
export interface KeptTake {
  /** Made from its sound: the same take has the same id wherever it was kept. */
  readonly id: string;
  readonly name: string;
  readonly sound: TakeSound;
}

/** What a list shows of it. */
export interface AboutTake {
  readonly id: string;
  readonly name: string;
  readonly seconds: number;
  readonly bytes: number;
}

/** Most bytes of all kept takes: what a browser on a small machine can still read at once. */
export const MOST_TAKE_BYTES = 120e6;

/** Samples a second that sound cards and files have. */
const RATES = { least: 8000, most: 192_000 } as const;

/** Name, length in seconds and size in bytes of a take. */
export const aboutTake = ({ id, name, sound: { heard, sent, sampleRate } }: KeptTake): AboutTake => ({
  ...{ id, name },
  seconds: heard.length / sampleRate,
  bytes: heard.byteLength + (sent?.byteLength ?? 0),
});

/** Thirty-two bits of what lies in some samples (FNV-1a, Fowler, Noll and Vo). */
const digest = (samples: Int16Array): number => {
  let hash = 0x811c9dc5;
  for (const sample of samples) hash = Math.imul(hash ^ (sample & 0xffff), 0x01000193);
  return hash >>> 0;
};

/** A take under a name. */
export const keptTake = (name: string, sound: TakeSound): KeptTake => {
  const { heard, sent } = sound;
  const mark = [heard, ...(sent === null ? [] : [sent])].map((side) => digest(side).toString(36)).join('-');
  return {
    id: `take-${heard.length}-${mark}`,
    name: keptText(name) || 'Take without a name',
    sound,
  };
};

/**
 * Reads a take from storage or a file. Never throws; null where there is no sound.
 * @param samplesOf reads the samples of a side, which a file has as text; null where there are none.
 */
export const parseKeptTake = (
  value: unknown,
  samplesOf: (value: unknown) => Int16Array | null,
): KeptTake | null => {
  if (!isRecord(value)) return null;
  const { name, sampleRate, late } = value;
  const heard = samplesOf(value.heard);
  const sent = samplesOf(value.sent);
  if (heard === null || heard.length === 0) return null;
  if (typeof sampleRate !== 'number' || !(sampleRate >= RATES.least && sampleRate <= RATES.most)) return null;
  return keptTake(typeof name === 'string' ? name : '', {
    ...{ sampleRate, heard },
    sent: sent !== null && sent.length === heard.length ? sent : null,
    late: typeof late === 'number' && Math.abs(late) < 2 ? late : 0,
  });
};

/** A take as it is stored, or with its samples as text put into a file. */
export const storableTake = <Samples>(
  { id, name, sound: { heard, sent, sampleRate, late } }: KeptTake,
  samples: (side: Int16Array) => Samples,
) => ({
  ...{ id, name, sampleRate, late },
  heard: samples(heard),
  sent: sent === null ? null : samples(sent),
});
