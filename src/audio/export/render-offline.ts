/**
 * The band's music as samples, faster than it sounds, stretch by stretch: while workers compute the sounds of the next
 * stretch another one mixes and finishes the last. What rings goes on from stretch to stretch, so that memory stays that
 * of a few of them however long the music is, and every browser makes the same samples.
 */
import type { Section } from '../../core/arranger/program';
import type { FeelId } from '../../core/feels/feels';
import type { PartId } from '../../core/score/score';
import type { BandSound } from '../../core/song/band-sound';
import { keysOf } from '../band/note-sound';
import { type Bank, type BankCounts, createBank, type WorkerRoute } from '../bank/bank';
import { createBankWorker } from '../bank/create-bank-worker';
import { FEEL_TRIMS } from '../mixer/feel-trims';
import { roomAt } from '../mixer/room-at';
import { notesBetween, type Push, pushSeconds, type ScheduledNote } from '../transport/scheduled-note';
import { placeSection, type Timeline } from '../transport/timeline';
import { fileRoomBlock } from './file-room';
import { createFinishLine, type FinishLine } from './finish-line';
import type { Finished } from './finisher';
import { heldAtMost } from './held-at-most';
import { type HandedSound, mixNotes } from './mix-notes';

export interface RenderRequest {
  /** In the order they sound. */
  readonly sections: readonly Section[];
  readonly feel: FeelId;
  /** Milliseconds each part plays behind the beat, as a style has them. */
  readonly push: Push;
  readonly sound: BandSound;
  readonly sampleRate: number;
  /** The parts to render; all when absent. */
  readonly parts?: readonly PartId[];
  /** Takes the next samples, both sides of equal length; rendering waits for it. */
  readonly onChunk: (left: Float32Array, right: Float32Array) => void | Promise<void>;
  /** 0–1. */
  readonly onProgress?: (share: number) => void;
  readonly signal?: AbortSignal;
  /** What requests for sounds go through on their way to the workers. */
  readonly route?: WorkerRoute;
}

/** What was rendered. */
export interface Rendered {
  readonly frames: number;
  readonly sampleRate: number;
  readonly notes: number;
  readonly counts: BankCounts;
}

/** Stretches of music under way at a time: one is mixed while the sounds of the next are computed. */
const AT_A_TIME = 3;
/** A stretch is so many of the room's blocks long: some four seconds, which are written at once. */
const BLOCKS = 4;
/** Workers that compute sounds: nothing has to be heard meanwhile. */
const BANK_WORKERS = 2;
/** Highest level between samples, as for live sound. */
const CEILING = -1.2;
/** A sound that takes longer than this to compute is given up. */
const WAIT_MS = 20_000;
interface Stage {
  readonly request: RenderRequest;
  readonly line: FinishLine;
  readonly timeline: Timeline;
  readonly bank: Bank<HandedSound>;
  readonly push: Push;
}

/**
 * Renders sections and hands the samples out piece by piece. Rejects with the signal's reason when it is aborted and
 * with a RangeError when there is no section.
 */
export const renderSections = async (request: RenderRequest): Promise<Rendered> => {
  if (request.sections.length === 0) throw new RangeError('rendering needs at least one section, got none');
  request.signal?.throwIfAborted();
  const { sampleRate, route = (worker) => worker } = request;
  const timeline = timelineOf(request.sections);
  let lose = (_reason: string): void => {};
  const lost = new Promise<never>((_, reject) => {
    lose = (reason) => reject(new Error(`no sounds can be computed: ${reason}`));
  });
  const room = roomAt(sampleRate).atHalfRate;
  const { feel, sound } = request;
  const line = createFinishLine({
    sampleRate,
    room,
    mix: sound.mix,
    trim: FEEL_TRIMS[feel],
    ceiling: CEILING,
  });
  let sounds = 0;
  const bank = createBank<HandedSound>({
    sampleRate,
    createWorker: () => route(createBankWorker({ onMakeshift: () => {}, onLost: lose })),
    workers: BANK_WORKERS,
    makeBuffer: (samples, loop) => {
      sounds += 1;
      const handed = { id: sounds, duration: samples.length / sampleRate };
      line.know(handed.id, { samples, loop });
      return handed;
    },
    onGivenUp: ({ id }) => line.forget(id),
    heldAtMost: heldAtMost(timeline, sound),
  });
  try {
    const frames = BLOCKS * fileRoomBlock(room);
    const all = renderStretches({ request, line, timeline, bank, push: pushSeconds(request.push) }, frames);
    return await Promise.race([all, lost]);
  } finally {
    bank.dispose();
    line.close();
  }
};

/** Sections one after another, from the beginning of a file. */
export const timelineOf = (sections: readonly Section[]): Timeline => {
  let at = 0;
  return sections.map((section) => {
    const placement = placeSection(section, at);
    at = placement.until;
    return placement;
  });
};

const within = ({ timeline, push, request }: Stage, from: number, to: number): readonly ScheduledNote[] => {
  const { parts } = request;
  return timeline
    .filter((placement) => placement.from < to + 1 && placement.until > from - 1)
    .flatMap((placement) => notesBetween(placement, from, to, push))
    .filter(({ event }) => parts === undefined || parts.includes(event.part));
};

/** The notes that begin within a stretch. A part pushed ahead of the first beat begins with the file. */
const notesOf = (stage: Stage, from: number, to: number): readonly ScheduledNote[] =>
  within(stage, from === 0 ? -1 : from, to).map((note) => ({ ...note, at: Math.max(0, note.at) }));

/** Hands finished samples out, one stretch after another. */
const createOutlet = ({ signal, onChunk }: RenderRequest) => {
  let frames = 0;
  let before = Promise.resolve();
  return {
    frames: () => frames,
    send: (finished: Promise<Finished>): Promise<void> => {
      const previous = before;
      before = (async () => {
        const { left, right } = await finished;
        await previous;
        signal?.throwIfAborted();
        frames += left.length;
        await onChunk(left, right);
        signal?.throwIfAborted();
      })();
      // Waited for further on: until then nobody hears that it failed.
      before.catch(() => undefined);
      return before;
    },
  };
};

/** The notes of a stretch of frames and the sounds they need. */
const wantedIn = (stage: Stage, from: number, to: number) => {
  const { sampleRate, sound } = stage.request;
  const notes = from < to ? notesOf(stage, from / sampleRate, to / sampleRate) : [];
  return { to, notes, keys: keysOf(notes, sound) };
};

/** @param stretch frames rendered at a time */
const renderStretches = async (stage: Stage, stretch: number): Promise<Rendered> => {
  const { request, timeline, bank, line } = stage;
  const { sampleRate, signal, onProgress } = request;
  // An even number, as the room takes frames two by two.
  const whole = 2 * Math.round(((timeline.at(-1)?.until ?? 0) * sampleRate) / 2);
  const outlet = createOutlet(request);
  const underWay: Promise<void>[] = [];
  let notes = 0;
  let next = wantedIn(stage, 0, Math.min(whole, stretch));
  for (let from = 0; from < whole; from += stretch) {
    const { to, notes: here, keys } = next;
    next = wantedIn(stage, to, Math.min(whole, to + stretch));
    bank.want([...keys, ...next.keys]);
    await bank.ready(keys, WAIT_MS);
    // No more than these wait to be taken: whoever is slow slows the rendering.
    if (underWay.length === AT_A_TIME) await underWay.shift();
    signal?.throwIfAborted();
    notes += here.length;
    const sending = outlet
      .send(line.next(mixNotes(here, bank, request), to - from))
      .then(() => onProgress?.(to / whole));
    sending.catch(() => undefined);
    underWay.push(sending);
  }
  await Promise.all(underWay);
  await outlet.send(line.rest());
  return { frames: outlet.frames(), sampleRate, notes, counts: bank.counts() };
};
