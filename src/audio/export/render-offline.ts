/**
 * The band's music as samples, faster than it sounds. The music is rendered in pieces, each with the tails of its last
 * notes, and the pieces are added up as they go out: memory stays that of a few pieces however long the music is, the
 * cost grows with the length and no more, and every browser can do it. Two pieces are rendered at a time, while the
 * sounds of the next are computed and the one before is limited and taken away.
 */
import type { Section } from '../../core/arranger/program';
import type { FeelId } from '../../core/feels/feels';
import type { PartId } from '../../core/score/score';
import type { BandSound } from '../../core/song/band-sound';
import { keysOf } from '../band/note-sound';
import { type Bank, type BankCounts, createBank, type WorkerRoute } from '../bank/bank';
import { createBankWorker } from '../bank/create-bank-worker';
import { makeBuffer } from '../bank/make-buffer';
import { roomAt } from '../mixer/room-buffer';
import { notesBetween, type Push, pushSeconds, type ScheduledNote } from '../transport/scheduled-note';
import { placeSection, type Timeline } from '../transport/timeline';
import { createFinishLine, type FinishLine } from './finish-line';
import type { Finished } from './finish-messages';
import { heldAtMost } from './held-at-most';
import { type Piece, renderPiece, roomGainOf } from './render-piece';

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

/** Long enough that the tails of cymbals cost little, short enough that two of them take little room. */
const PIECE_SECONDS = 30;
/** The first piece is short, so that rendering begins while most sounds are still computed. */
const FIRST_SECONDS = 8;
/** Pieces rendered at a time: each has a thread of its own. */
const AT_A_TIME = 2;
/** Workers that compute sounds: nothing has to be heard meanwhile. */
const BANK_WORKERS = 2;
/** Highest level between samples, as for live sound. */
const CEILING = -1.2;
/** A sound that takes longer than this to compute is given up. */
const WAIT_MS = 20_000;
/** How far into the next piece notes are looked at for what they end in this one. */
const GIVE_WAY_SECONDS = 4;

interface Stage {
  readonly request: RenderRequest;
  readonly line: FinishLine;
  readonly timeline: Timeline;
  readonly bank: Bank;
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
  const maker = new OfflineAudioContext(1, 1, sampleRate);
  let lose = (_reason: string): void => {};
  const lost = new Promise<never>((_, reject) => {
    lose = (reason) => reject(new Error(`no sounds can be computed: ${reason}`));
  });
  const bank = createBank({
    sampleRate,
    createWorker: () => route(createBankWorker({ onMakeshift: () => {}, onLost: lose })),
    workers: BANK_WORKERS,
    makeBuffer: makeBuffer(maker),
    heldAtMost: heldAtMost(timeline, request.sound),
  });
  const line = createFinishLine({
    sampleRate,
    room: roomAt(sampleRate),
    roomGain: roomGainOf(request),
    ceiling: CEILING,
  });
  try {
    const pieces = renderPieces({
      request,
      line,
      timeline,
      bank,
      push: pushSeconds(request.push),
    });
    return await Promise.race([pieces, lost]);
  } finally {
    bank.dispose();
    line.close();
  }
};

const timelineOf = (sections: readonly Section[]): Timeline => {
  let at = 0;
  return sections.map((section) => {
    const placement = placeSection(section, at);
    at = placement.until;
    return placement;
  });
};

/** Where pieces begin and end, in seconds. */
const spansOf = (end: number): readonly (readonly [from: number, to: number])[] => {
  const starts = [0];
  for (let at = FIRST_SECONDS; at < end; at += PIECE_SECONDS) starts.push(at);
  return starts.map((from, i) => [from, starts[i + 1] ?? end]);
};

const within = ({ timeline, push, request }: Stage, from: number, to: number): readonly ScheduledNote[] => {
  const { parts } = request;
  return timeline
    .filter((placement) => placement.from < to + 1 && placement.until > from - 1)
    .flatMap((placement) => notesBetween(placement, from, to, push))
    .filter(({ event }) => parts === undefined || parts.includes(event.part));
};

/** The notes that begin between two times, and those after that end them, on a clock that begins with the piece. */
const pieceOf = (stage: Stage, from: number, to: number): Piece => {
  const here = (note: ScheduledNote): ScheduledNote => ({
    ...note,
    at: Math.max(0, note.at - from),
    until: note.until - from,
  });
  // A part pushed ahead of the first beat would begin before the file does: the first piece takes it in.
  return {
    from,
    seconds: to - from,
    notes: within(stage, from === 0 ? -1 : from, to).map(here),
    after: within(stage, to, to + GIVE_WAY_SECONDS).map(here),
  };
};

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

interface Rendering {
  readonly piece: Piece;
  readonly samples: Promise<AudioBuffer>;
}

const renderPieces = async (stage: Stage): Promise<Rendered> => {
  const { request, timeline, bank, line } = stage;
  const { sampleRate, signal, onProgress, sound, feel } = request;
  const spans = spansOf(timeline.at(-1)?.until ?? 0);
  const outlet = createOutlet(request);
  const rendering: Rendering[] = [];
  let [notes, sent] = [0, 0];
  let sending = Promise.resolve();
  const finishFirst = async (): Promise<void> => {
    const [first] = rendering;
    if (first === undefined) return;
    const samples = await first.samples;
    rendering.shift();
    // No more than one stretch waits to be taken: whoever is slow slows the rendering.
    await sending;
    signal?.throwIfAborted();
    notes += first.piece.notes.length;
    const finished = line.add({
      left: samples.getChannelData(0),
      right: samples.getChannelData(1),
      send: samples.getChannelData(2),
      frames: Math.round(first.piece.seconds * sampleRate),
    });
    sending = outlet.send(finished).then(() => {
      sent += 1;
      onProgress?.(sent / spans.length);
    });
    sending.catch(() => undefined);
  };
  for (const [from, to] of spans) {
    const piece = pieceOf(stage, from, to);
    const keys = keysOf(piece.notes, sound);
    bank.want([...rendering.flatMap((other) => keysOf(other.piece.notes, sound)), ...keys]);
    await bank.ready(keys, WAIT_MS);
    if (rendering.length === AT_A_TIME) await finishFirst();
    signal?.throwIfAborted();
    const samples = renderPiece({ sampleRate, sound, feel, bank }, piece);
    samples.catch(() => undefined);
    rendering.push({ piece, samples });
  }
  while (rendering.length > 0) await finishFirst();
  await sending;
  await outlet.send(line.rest());
  return { frames: outlet.frames(), sampleRate, notes, counts: bank.counts() };
};
