/** Plays notes as one-shot buffer sources and keeps hold of all that may still sound. */
import type { PartId } from '../../core/score/score';
import type { FoundSound } from '../bank/sound-cache';
import { isHeld, type ScheduledNote } from '../transport/scheduled-note';
import type { NoteSink } from '../transport/transport';
import { heldUntil, type NoteSound } from './note-sound';

/** The gain of a note over time: level from the start, then down to 0 within `release` from `until`. */
interface Envelope {
  readonly at: number;
  readonly level: number;
  readonly until: number;
  readonly release: number;
}

interface Sounding {
  readonly part: PartId;
  readonly pitch: number;
  readonly source: AudioBufferSourceNode;
  readonly gain: GainNode;
  envelope: Envelope;
}

export interface PlayerOptions {
  readonly context: BaseAudioContext;
  /** Connects a note's gain to the mixer. */
  readonly connect: (gain: GainNode, note: ScheduledNote) => void;
  readonly find: (note: ScheduledNote) => NoteSound | null;
}

/** Starts sounds of the bank at their times and ends them. */
export interface Player extends NoteSink {
  /** Ends what a note would end if it were started. */
  giveWay(note: ScheduledNote): void;
  /** Ends everything at a time, drums too. */
  end(at: number): void;
  /** Number of sources that may still sound. */
  live(): number;
}

/**
 * Time constant of cuts, in seconds: over in 8 ms, which is felt as at once and does not click. Exponential approaches
 * begin where the level is even when the page is late, and a note that goes on through a cut keeps its level, since
 * what falls and what rises add up to one.
 */
const CUT = 0.002;
/** After so long nothing of a cut note is left (−80 dB). */
const CUT_OVER = 0.02;
/** Shortest fade at a note's own end. */
const FADE = 0.008;

/** General MIDI keys of the hi-hat (closed, pedal, open): striking one ends the open one. */
const HI_HATS: ReadonlySet<number> = new Set([42, 44, 46]);
const OPEN_HI_HAT = 46;

const endOf = ({ until, release }: Envelope): number => until + release;

const gainAt = ({ level, until, release }: Envelope, time: number): number =>
  time <= until ? level : level * Math.max(0, 1 - (time - until) / release);

const offsetIn = ({ loop }: FoundSound<AudioBuffer>['sound'], seconds: number): number =>
  loop === null || seconds < loop.to ? seconds : loop.from + ((seconds - loop.from) % (loop.to - loop.from));

/** Creates a player on a context; it makes its own nodes and forgets them when they have ended. */
export const createPlayer = (options: PlayerOptions): Player => new BufferPlayer(options);

class BufferPlayer implements Player {
  private readonly context: BaseAudioContext;
  private readonly connect: PlayerOptions['connect'];
  private readonly findSound: PlayerOptions['find'];
  private readonly sounding = new Set<Sounding>();

  constructor({ context, connect, find }: PlayerOptions) {
    this.context = context;
    this.connect = connect;
    this.findSound = find;
  }

  start(note: ScheduledNote): void {
    this.sweep();
    const match = this.findSound(note);
    if (match === null) return;
    const { sound, rate } = match.found;
    if (sound.loop === null && note.offset * rate >= sound.samples.duration) return;
    const { part, pitch } = note.event;
    const at = Math.max(note.at, this.context.currentTime);
    const envelope = {
      at,
      level: match.level,
      until: Math.max(heldUntil(note, match.found), at + CUT_OVER),
      release: isHeld(part) ? Math.max(sound.release, FADE) : FADE,
    };
    this.giveWay(note);
    const source = this.context.createBufferSource();
    source.buffer = sound.samples;
    this.setPitch(source, note, rate, at);
    if (sound.loop) {
      source.loop = true;
      source.loopStart = sound.loop.from;
      source.loopEnd = sound.loop.to;
    }
    const gain = this.context.createGain();
    source.connect(gain);
    this.connect(gain, note);
    const entry: Sounding = { part, pitch, source, gain, envelope };
    source.onended = () => this.forget(entry);
    source.start(at, offsetIn(sound, note.offset * rate));
    this.sounding.add(entry);
    this.shape(entry, note.offset > 0);
  }

  cut(at: number): void {
    for (const entry of [...this.sounding]) {
      if (entry.envelope.at >= at) this.remove(entry);
      else if (isHeld(entry.part)) this.fade(entry, at);
    }
  }

  end(at: number): void {
    for (const entry of [...this.sounding]) {
      if (entry.envelope.at >= at) this.remove(entry);
      else this.fade(entry, at);
    }
  }

  live(): number {
    this.sweep();
    return this.sounding.size;
  }

  private setPitch(source: AudioBufferSourceNode, note: ScheduledNote, rate: number, at: number): void {
    const from = note.event.glideFrom ?? 0;
    if (from === 0 || note.glideSeconds <= 0) {
      source.playbackRate.value = rate;
      return;
    }
    const whole = note.glideSeconds + note.offset;
    const left = from * (note.glideSeconds / whole);
    source.playbackRate.setValueAtTime(rate * 2 ** (left / 12), at);
    source.playbackRate.exponentialRampToValueAtTime(rate, at + note.glideSeconds);
  }

  /** A string or key struck again stops its last note; a hi-hat closes the open one. */
  giveWay({ event: { part, pitch }, at }: ScheduledNote): void {
    for (const entry of this.sounding) {
      if (entry.part !== part || entry.envelope.at >= at || endOf(entry.envelope) <= at) continue;
      const same = isHeld(part) && entry.pitch === pitch;
      const choked = part === 'drums' && entry.pitch === OPEN_HI_HAT && HI_HATS.has(pitch);
      if (same || choked) this.fade(entry, at);
    }
  }

  private fade(entry: Sounding, at: number): void {
    const { envelope } = entry;
    const { gain } = entry.gain;
    if (endOf(envelope) <= at + FADE) return;
    gain.cancelScheduledValues(at);
    if (at > envelope.until) gain.linearRampToValueAtTime(gainAt(envelope, at), at);
    gain.setTargetAtTime(0, at, CUT);
    entry.source.stop(at + CUT_OVER);
    entry.envelope = { ...envelope, until: Math.min(envelope.until, at), release: CUT_OVER };
  }

  private shape({ gain: { gain }, source, envelope }: Sounding, entered: boolean): void {
    const { at, level, until } = envelope;
    // A source may give a sample just before the time it starts at: the gain must be right before that.
    gain.value = entered ? 0 : level;
    gain.setValueAtTime(entered ? 0 : level, at);
    if (entered) gain.setTargetAtTime(level, at, CUT);
    gain.setValueAtTime(level, until);
    gain.linearRampToValueAtTime(0, endOf(envelope));
    source.stop(endOf(envelope) + FADE);
  }

  private remove(entry: Sounding): void {
    entry.source.onended = null;
    entry.source.stop();
    this.forget(entry);
  }

  private forget(entry: Sounding): void {
    entry.source.disconnect();
    entry.gain.disconnect();
    this.sounding.delete(entry);
  }

  /** The ended event waits for a free page; what is long over is let go without it. */
  private sweep(): void {
    const past = this.context.currentTime - 1;
    for (const entry of [...this.sounding]) if (endOf(entry.envelope) < past) this.remove(entry);
  }
}
