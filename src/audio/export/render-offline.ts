/**
 * The band's music as samples, faster than it sounds. The music is rendered in pieces of some seconds, each with the
 * tails of its last notes, and the pieces are added up as they go out: memory stays that of one piece however long
 * the music is, the cost grows with the length and no more, and every browser can do it.
 */
import type { BandSound } from '../../core/song/band-sound';
import '../band/quiet-tone';
import { setContext } from 'tone/build/esm/core/context/GlobalContext.js';
import { OfflineContext } from 'tone/build/esm/core/context/OfflineContext.js';
import type { Section } from '../../core/arranger/program';
import type { FeelId } from '../../core/feels/feels';
import type { PartId } from '../../core/score/score';
import { createPlayer } from '../band/note-player';
import { keysOf, noteSound, soundsUntil } from '../band/note-sound';
import { type Bank, type BankCounts, createBank, type WorkerRoute, workersWorthHaving } from '../bank/bank';
import { createBankWorker } from '../bank/create-bank-worker';
import { makeBuffer } from '../bank/make-buffer';
import { voiceOf } from '../bank/sound-key';
import { FEEL_TRIMS } from '../mixer/feel-trims';
import { createLimiter } from '../mixer/limiter';
import { createMixer } from '../mixer/mixer';
import { ROOM_SECONDS, roomBuffer } from '../mixer/room-buffer';
import { notesBetween, type Push, pushSeconds, type ScheduledNote } from '../transport/scheduled-note';
import { placeSection, type Timeline } from '../transport/timeline';

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

/** Long enough that the tails cost little, short enough that the graph of one piece stays small. */
const PIECE_SECONDS = 12;
/** Highest level between samples, as for live sound. */
const CEILING = -1.2;
/** Rendering pauses this often to take in the notes of the next stretch, a little more than that at a time. */
const PAUSE_EVERY = 1;
const PAUSE_AHEAD = 0.1;
/** A sound that takes longer than this to compute is given up. */
const WAIT_MS = 20_000;
/** How far into the next piece notes are looked at for what they end in this one. */
const GIVE_WAY_SECONDS = 4;
const NO_SAMPLES = new Float32Array(0);

interface Stage {
  readonly request: RenderRequest;
  readonly room: AudioBuffer;
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
    workers: workersWorthHaving(),
    makeBuffer: makeBuffer(maker),
  });
  try {
    const pieces = renderPieces({
      request,
      room: roomBuffer(maker),
      timeline,
      bank,
      push: pushSeconds(request.push),
    });
    return await Promise.race([pieces, lost]);
  } finally {
    bank.dispose();
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

const renderPieces = async ({ request, ...rest }: Stage): Promise<Rendered> => {
  const { sampleRate, signal, onChunk, onProgress } = request;
  const stage = { request, ...rest };
  const end = stage.timeline.at(-1)?.until ?? 0;
  const pieces = Math.ceil(end / PIECE_SECONDS);
  const join = createJoin(PIECE_SECONDS * sampleRate);
  const limiter = createLimiter({ sampleRate, ceiling: CEILING });
  let skip = limiter.delay;
  let frames = 0;
  let notes = 0;
  const send = async (left: Float32Array, right: Float32Array) => {
    limiter.process(left, right);
    const from = Math.min(skip, left.length);
    skip -= from;
    frames += left.length - from;
    await onChunk(left.subarray(from), right.subarray(from));
    signal?.throwIfAborted();
  };
  // While a piece is rendered, the sounds of the next are computed and the one before is limited and taken away.
  let sending = Promise.resolve();
  let due = await notesOfPiece(stage, 0, []);
  for (let piece = 0; piece < pieces; piece += 1) {
    signal?.throwIfAborted();
    const now = due;
    const next = piece + 1 < pieces ? notesOfPiece(stage, piece + 1, now) : Promise.resolve([]);
    const rendered = await renderPiece(stage, piece, now);
    await sending;
    signal?.throwIfAborted();
    notes += now.length;
    const [left, right] = join.add(rendered);
    sending = send(left, right).then(() => onProgress?.((piece + 1) / pieces));
    // Waited for further on: until then nobody hears that it failed.
    sending.catch(() => undefined);
    due = await next;
  }
  await sending;
  const [left, right] = join.rest(limiter.delay);
  await send(left, right);
  return { frames, sampleRate, notes, counts: stage.bank.counts() };
};

const within = ({ timeline, push, request }: Stage, from: number, to: number): readonly ScheduledNote[] => {
  const { parts } = request;
  return timeline
    .filter((placement) => placement.from < to + 1 && placement.until > from - 1)
    .flatMap((placement) => notesBetween(placement, from, to, push))
    .filter(({ event }) => parts === undefined || parts.includes(event.part));
};

/** The notes of a piece, once their sounds are there. @param kept notes whose sounds are still needed */
const notesOfPiece = async (
  stage: Stage,
  piece: number,
  kept: readonly ScheduledNote[],
): Promise<readonly ScheduledNote[]> => {
  const { bank, request } = stage;
  // A part pushed ahead of the first beat would begin before the file does: the first piece takes it in.
  const notes = within(stage, piece === 0 ? -1 : piece * PIECE_SECONDS, (piece + 1) * PIECE_SECONDS);
  const keys = keysOf(notes, request.sound);
  bank.want([...keysOf(kept, request.sound), ...keys]);
  await bank.ready(keys, WAIT_MS);
  return notes;
};

const renderPiece = async (
  stage: Stage,
  piece: number,
  notes: readonly ScheduledNote[],
): Promise<AudioBuffer> => {
  const { request, bank } = stage;
  const { sampleRate, sound } = request;
  const from = piece * PIECE_SECONDS;
  const shifted = notes.map((note) => ({
    ...note,
    at: Math.max(0, note.at - from),
    until: note.until - from,
  }));
  const ends = shifted.map((note) => {
    const match = noteSound(bank, note, sound);
    return match ? soundsUntil(note, match.found) : 0;
  });
  const seconds = Math.max(PIECE_SECONDS, ...ends) + ROOM_SECONDS + 0.05;
  const context = new OfflineAudioContext(2, Math.ceil(seconds * sampleRate), sampleRate);
  const tone = new OfflineContext(context);
  setContext(tone);
  const mixer = createMixer({ context: tone, output: context.destination, room: stage.room });
  mixer.setMix(sound.mix, 0);
  mixer.setTrim(FEEL_TRIMS[request.feel], 0);
  const player = createPlayer({
    context,
    find: (note) => noteSound(bank, note, sound),
    connect: (gain, { event: { part, pitch } }) => mixer.connect(gain, part, voiceOf(part, sound), pitch),
  });
  const next = from + PIECE_SECONDS;
  const after = within(stage, next, next + GIVE_WAY_SECONDS).map((note) => ({ ...note, at: note.at - from }));
  actInTime(context, [
    ...shifted.map((note) => ({ at: note.at, act: () => player.start(note) })),
    ...after.map((note) => ({ at: note.at, act: () => player.giveWay(note) })),
  ]);
  const rendered = await context.startRendering();
  mixer.dispose();
  return rendered;
};

interface Action {
  readonly at: number;
  readonly act: () => void;
}

/**
 * Starts notes shortly before they sound where the browser can pause rendering: a source that waits costs as much as
 * one that sounds.
 */
const actInTime = (context: OfflineAudioContext, actions: readonly Action[]): void => {
  const inOrder = [...actions].sort((one, other) => one.at - other.at);
  let next = inOrder.shift();
  const actBefore = (time: number) => {
    for (; next !== undefined && next.at < time; next = inOrder.shift()) next.act();
  };
  if (typeof context.suspend !== 'function') {
    actBefore(Number.POSITIVE_INFINITY);
    return;
  }
  actBefore(PAUSE_EVERY + PAUSE_AHEAD);
  for (let time = PAUSE_EVERY; time < PIECE_SECONDS; time += PAUSE_EVERY) {
    const to =
      time + PAUSE_EVERY < PIECE_SECONDS ? time + PAUSE_EVERY + PAUSE_AHEAD : Number.POSITIVE_INFINITY;
    void context.suspend(time).then(() => {
      actBefore(to);
      return context.resume();
    });
  }
};

/** Adds up pieces that overlap by their tails. */
const createJoin = (pieceFrames: number) => {
  const tails: [Float32Array, Float32Array] = [NO_SAMPLES, NO_SAMPLES];
  const split = (rendered: AudioBuffer, side: 0 | 1): Float32Array => {
    const whole = rendered.getChannelData(side);
    const tail = tails[side];
    const sum = tail.length > whole.length ? new Float32Array(tail.length) : whole;
    if (sum !== whole) sum.set(whole);
    for (let index = 0; index < tail.length; index += 1) sum[index] = (sum[index] ?? 0) + (tail[index] ?? 0);
    tails[side] = sum.slice(pieceFrames);
    return sum.slice(0, pieceFrames);
  };
  return {
    add: (rendered: AudioBuffer): readonly [Float32Array, Float32Array] => [
      split(rendered, 0),
      split(rendered, 1),
    ],
    /** What is left, with so many frames of silence after it. */
    rest: (silence: number): readonly [Float32Array, Float32Array] => {
      const padded = (tail: Float32Array) => {
        const out = new Float32Array(tail.length + silence);
        out.set(tail);
        return out;
      };
      return [padded(tails[0]), padded(tails[1])];
    },
  };
};
