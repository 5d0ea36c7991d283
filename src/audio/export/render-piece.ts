/** One piece of a file: the notes that begin in it with their tails, through a mixer of its own. */
import '../band/quiet-tone';
import { setContext } from 'tone/build/esm/core/context/GlobalContext.js';
import { OfflineContext } from 'tone/build/esm/core/context/OfflineContext.js';
import type { FeelId } from '../../core/feels/feels';
import type { BandSound } from '../../core/song/band-sound';
import { createPlayer } from '../band/note-player';
import { noteSound, soundAt, soundsUntil } from '../band/note-sound';
import type { Bank } from '../bank/bank';
import { voiceOf } from '../bank/sound-key';
import { FEEL_TRIMS } from '../mixer/feel-trims';
import { masterGain } from '../mixer/mix-gains';
import { createMixer } from '../mixer/mixer';
import type { ScheduledNote } from '../transport/scheduled-note';

/** What every piece of a file is rendered with. */
export interface PieceGround {
  readonly sampleRate: number;
  readonly sound: BandSound;
  readonly feel: FeelId;
  readonly bank: Bank;
}

/** Notes of a piece, their times in seconds from its beginning. */
export interface Piece {
  /** When it begins, in seconds of the file. */
  readonly from: number;
  /** Length without tails, in seconds. */
  readonly seconds: number;
  readonly notes: readonly ScheduledNote[];
  /** Notes after its end that may end what still sounds. */
  readonly after: readonly ScheduledNote[];
}

/** Rendering pauses this often to take in the notes of the next stretch, a little more than that at a time. */
const PAUSE_EVERY = 1;
const PAUSE_AHEAD = 0.1;

interface Action {
  readonly at: number;
  readonly act: () => void;
}

/**
 * Starts notes shortly before they sound where the browser can pause rendering: a source that waits costs as much as
 * one that sounds.
 */
const actInTime = (context: OfflineAudioContext, seconds: number, actions: readonly Action[]): void => {
  const inOrder = [...actions].sort((one, other) => one.at - other.at);
  let next = 0;
  const actBefore = (time: number) => {
    for (let action = inOrder[next]; action !== undefined && action.at < time; action = inOrder[next]) {
      action.act();
      next += 1;
    }
  };
  if (typeof context.suspend !== 'function') {
    actBefore(Number.POSITIVE_INFINITY);
    return;
  }
  actBefore(PAUSE_EVERY + PAUSE_AHEAD);
  for (let time = PAUSE_EVERY; time < seconds; time += PAUSE_EVERY) {
    const to = time + PAUSE_EVERY < seconds ? time + PAUSE_EVERY + PAUSE_AHEAD : Number.POSITIVE_INFINITY;
    void context.suspend(time).then(() => {
      actBefore(to);
      return context.resume();
    });
  }
};

/** Places behind a mixer: both sides of the band, and what is sent to the room, as three channels of one buffer. */
const threeChannels = (context: OfflineAudioContext) => {
  const all = context.createChannelMerger(3);
  const band = context.createChannelSplitter(2);
  band.connect(all, 0, 0);
  band.connect(all, 1, 1);
  const sendTo = context.createGain();
  sendTo.connect(all, 0, 2);
  all.connect(context.destination);
  return { band, sendTo };
};

/** Gain of what a room would bring back to the band's sum: programme level and master. */
export const roomGainOf = ({ sound, feel }: Pick<PieceGround, 'sound' | 'feel'>): number =>
  10 ** (FEEL_TRIMS[feel] / 20) * masterGain(sound.mix);

/**
 * Renders a piece to the end of its last tail: left, right, and what is sent to the room. The sounds of its notes must be
 * in the bank.
 */
export const renderPiece = async (
  { sampleRate, sound, feel, bank }: PieceGround,
  { from, seconds, notes, after }: Piece,
): Promise<AudioBuffer> => {
  const ends = notes.map((note) => {
    const match = noteSound(bank, note, sound);
    return match ? soundsUntil(note, match.found) : 0;
  });
  const whole = ends.reduce((latest, end) => Math.max(latest, end), seconds) + 0.05;
  const context = new OfflineAudioContext(3, Math.ceil(whole * sampleRate), sampleRate);
  const tone = new OfflineContext(context);
  setContext(tone);
  const { band, sendTo } = threeChannels(context);
  const mixer = createMixer({ context: tone, output: band, room: { sendTo }, origin: -from });
  mixer.setMix(sound.mix, 0);
  mixer.setTrim(FEEL_TRIMS[feel], 0);
  const player = createPlayer({
    context,
    find: (note) => noteSound(bank, note, sound),
    connect: (gain, note) => {
      const { part, pitch } = note.event;
      mixer.connect(gain, part, voiceOf(part, soundAt(note, sound)), pitch);
    },
  });
  actInTime(context, seconds, [
    ...notes.map((note) => ({ at: note.at, act: () => player.start(note) })),
    ...after.map((note) => ({ at: note.at, act: () => player.giveWay(note) })),
  ]);
  const rendered = await context.startRendering();
  mixer.dispose();
  return rendered;
};
