/** Plays notes as one-shot buffer sources and keeps hold of all that may still sound. */
import type { PartId } from '../../core/score/score';
import type { FoundSound } from '../bank/sound-cache';
import { isHeld, type ScheduledNote } from '../transport/scheduled-note';
import type { NoteSink } from '../transport/transport';
import {
  CUT,
  CUT_OVER,
  cutEnvelope,
  type Envelope,
  endOf,
  endsBy,
  envelopeOf,
  FADE,
  gainAt,
  glideOf,
  makesWay,
  onSample,
  ringsOut,
} from './note-envelope';
import type { NoteSound } from './note-sound';

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
    const at = Math.max(onSample(note.at, this.context.sampleRate), this.context.currentTime);
    const envelope = envelopeOf(note, match, at);
    this.giveWay(note);
    const source = this.context.createBufferSource();
    source.buffer = sound.samples;
    const { ratio, seconds } = glideOf(note);
    source.playbackRate.value = rate;
    if (seconds > 0) {
      source.playbackRate.setValueAtTime(rate * ratio, at);
      source.playbackRate.exponentialRampToValueAtTime(rate, at + seconds);
    }
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
    const entered = note.offset > 0;
    if (!entered && ringsOut(envelope, match.found)) gain.gain.value = envelope.level;
    else this.shape(entry, entered);
    source.stop(endOf(envelope) + FADE);
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

  giveWay(note: ScheduledNote): void {
    const at = onSample(note.at, this.context.sampleRate);
    for (const entry of this.sounding) if (makesWay(entry, note.event, at)) this.fade(entry, at);
  }

  private fade(entry: Sounding, time: number): void {
    const { envelope } = entry;
    const { gain } = entry.gain;
    // Between two samples what falls from there would begin with the level of the sample before.
    const at = onSample(time, this.context.sampleRate);
    if (endsBy(envelope, at)) return;
    gain.cancelScheduledValues(at);
    if (at > envelope.until) gain.linearRampToValueAtTime(gainAt(envelope, at), at);
    gain.setTargetAtTime(0, at, CUT);
    entry.source.stop(at + CUT_OVER);
    entry.envelope = cutEnvelope(envelope, at);
  }

  private shape({ gain: { gain }, envelope }: Sounding, entered: boolean): void {
    const { at, level, until } = envelope;
    // A source may give a sample just before the time it starts at: the gain must be right before that.
    gain.value = entered ? 0 : level;
    gain.setValueAtTime(entered ? 0 : level, at);
    if (entered) gain.setTargetAtTime(level, at, CUT);
    gain.setValueAtTime(level, until);
    gain.linearRampToValueAtTime(0, endOf(envelope));
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
