/** The band once its audio part is loaded: joins transport, bank, player and mixer on one audio context. */

import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import type { PartId } from '../../core/score/score';
import type { BandSound } from '../../core/song/band-sound';
import { asMidi, asTicks } from '../../core/theory/units';
import { type Bank, createBank, workersWorthHaving } from '../bank/bank';
import { makeBuffer } from '../bank/make-buffer';
import { type SoundKey, voiceOf } from '../bank/sound-key';
import { FEEL_TRIMS } from '../mixer/feel-trims';
import { createMixer, type Mixer } from '../mixer/mixer';
import { type BarCaller, createBarCaller } from '../transport/bar-caller';
import type { SectionSource } from '../transport/form-place';
import { positionAt } from '../transport/heard-position';
import { createHeardClock, type HeardClock, readContext } from '../transport/output-clock';
import { startPulse } from '../transport/pulse';
import { createTransport } from '../transport/rolling-transport';
import { allNotes, notesBetween, type ScheduledNote } from '../transport/scheduled-note';
import { placeSection } from '../transport/timeline';
import type { Transport } from '../transport/transport';
import type { AuditionNote, Engine, EngineCounts, EngineOptions } from './engine';
import { createPlayer, type Player } from './note-player';
import { keysOf, noteSound } from './note-sound';

/** Music that must be ready before the first beat, in seconds. */
const READY_AHEAD = 2;
/**
 * Longest waits for it, in ms: at the start; while the old music goes on; and while the old instruments do, which the
 * window still holds notes of for a while.
 */
const WAIT = { start: 1500, change: 150, instruments: 1200 };
/** From the call to the first beat: covers the audio thread's lead and a part pushed ahead of the beat. */
const LEAD = 0.12;
/** The mixer's gate is shut this long after it was told to, in seconds; then sources can end unheard. */
const CLOSED_AFTER = 0.03;
const PULSE_MS = 100;
/** Changes closer than this are taken over together, so that dragging the tempo does not stutter. */
const CHANGE_EVERY_MS = 80;
/** Slow enough to follow by ear, in seconds. */
const AUDITION_GLIDE = 0.45;
const AUDITION_VELOCITY = 90;

/** Builds the band's engine. */
export const createEngine = (options: EngineOptions): Engine => new BandEngine(options);

const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

class BandEngine implements Engine {
  private readonly context: AudioContext;
  private readonly source: SectionSource;
  private readonly onEnd: () => void;
  private readonly mixer: Mixer;
  private readonly bank: Bank;
  private readonly player: Player;
  private readonly asidePlayer: Player;
  private readonly transport: Transport;
  private readonly clock: HeardClock;
  private readonly caller: BarCaller;
  private sound: BandSound | null = null;
  private program: Program | null = null;
  private run = 0;
  private changing = false;
  private pulse: (() => void) | null = null;
  private wantedFor: Section | null = null;

  constructor(options: EngineOptions) {
    const { context, tone, limiter, room, source, createWorker } = options;
    this.context = context;
    this.source = source;
    this.onEnd = options.onEnd;
    this.mixer = createMixer({ context: tone, output: limiter.input, room });
    this.bank = createBank({
      sampleRate: context.sampleRate,
      createWorker,
      workers: workersWorthHaving(),
      makeBuffer: makeBuffer(context),
    });
    const find = (note: ScheduledNote) => noteSound(this.bank, note, this.mustSound());
    this.player = createPlayer({
      context,
      find,
      connect: (gain, part, pitch) => this.mixer.connect(gain, part, this.voice(part), pitch),
    });
    this.asidePlayer = createPlayer({ context, find, connect: (gain) => this.mixer.connectAside(gain) });
    this.transport = createTransport({
      now: () => context.currentTime,
      source,
      sink: this.player,
      cutAfter: Math.max(0.03, (context.baseLatency || 0) + 0.01),
    });
    this.clock = createHeardClock(() => readContext(context, limiter.delay));
    this.caller = createBarCaller({
      heardTime: () => this.clock.time(),
      timeline: () => this.transport.timeline(),
      call: options.onBar,
    });
  }

  async play(program: Program, sound: BandSound, fromBar: number): Promise<boolean> {
    this.halt();
    this.run += 1;
    const { run } = this;
    this.program = program;
    this.setSound(sound);
    const opening = this.opening(program, fromBar);
    this.bank.want(this.keysOf(opening));
    await this.bank.ready(this.keysOf(opening.filter(({ at }) => at < READY_AHEAD)), WAIT.start);
    if (run !== this.run) return false;
    const latest = this.program;
    this.mixer.setTrim(FEEL_TRIMS[latest.style.feel]);
    const at = this.context.currentTime + LEAD;
    this.clock.resync();
    this.mixer.open(at - LEAD / 2);
    this.transport.start(latest, fromBar, at);
    this.pulse = startPulse(PULSE_MS, () => this.beat());
    return true;
  }

  stop(): void {
    this.run += 1;
    this.halt();
    this.caller.stop();
  }

  change(program: Program): void {
    this.program = program;
    if (this.playing() && !this.changing) void this.takeOver();
  }

  seek(bar: number): void {
    this.transport.seek(bar);
    this.wantAhead();
  }

  setSound(sound: BandSound): void {
    const before = this.sound;
    this.sound = sound;
    this.mixer.setMix(sound.mix);
    const instruments = ({ bass, chords, kit, tuning, own }: BandSound) =>
      JSON.stringify([bass, chords, kit, tuning, own]);
    if (before && instruments(before) !== instruments(sound) && this.transport.playing()) void this.refill();
  }

  async audition(part: PartId, wanted: AuditionNote, sound: BandSound): Promise<void> {
    const { midi, seconds, glideFrom } = wanted;
    this.sound ??= sound;
    this.mixer.setMix(this.sound.mix);
    const note = (at: number): ScheduledNote => ({
      event: {
        part,
        at: asTicks(0),
        length: asTicks(1),
        pitch: asMidi(midi),
        velocity: AUDITION_VELOCITY,
        glideFrom,
      },
      at,
      until: at + seconds,
      offset: 0,
      glideSeconds: glideFrom === 0 ? 0 : AUDITION_GLIDE,
      stroke: 0,
    });
    const keys = this.keysOf([note(0)]);
    this.bank.hurry(keys);
    await this.bank.ready(keys, WAIT.start);
    this.asidePlayer.start(note(this.context.currentTime + 0.02));
  }

  heard(): Playhead | null {
    return positionAt(this.transport.timeline(), this.clock.time());
  }

  upcoming(): Section | null {
    return this.transport.sectionAfter(this.clock.time());
  }

  playing(): boolean {
    return this.pulse !== null;
  }

  resync(): void {
    this.clock.resync();
    if (this.playing()) this.beat();
  }

  counts(): EngineCounts {
    return {
      ...this.bank.counts(),
      late: this.transport.late(),
      live: this.player.live(),
      bytes: this.bank.bytes(),
    };
  }

  dispose(): void {
    this.stop();
    this.bank.dispose();
    this.mixer.dispose();
  }

  private voice(part: PartId) {
    return voiceOf(part, this.mustSound());
  }

  private mustSound(): BandSound {
    if (this.sound === null) throw new Error('the band has no sound set');
    return this.sound;
  }

  private keysOf(notes: readonly ScheduledNote[]): SoundKey[] {
    return keysOf(notes, this.mustSound());
  }

  /** The notes of the first two sections, timed from the first beat. */
  private opening(program: Program, fromBar: number): readonly ScheduledNote[] {
    const first = this.source(program, 0, fromBar);
    if (first === null) return [];
    const placed = placeSection(first, 0);
    const second = first.last ? null : this.source(program, 1, fromBar);
    return [...allNotes(placed), ...(second ? allNotes(placeSection(second, placed.until)) : [])];
  }

  private halt(): void {
    this.pulse?.();
    this.pulse = null;
    this.wantedFor = null;
    this.mixer.close(this.context.currentTime);
    this.transport.stop();
    this.player.end(this.context.currentTime + CLOSED_AFTER);
  }

  private beat(): void {
    this.transport.tick();
    this.caller.look();
    this.wantAhead();
    if (this.transport.playing() || this.heard() !== null) return;
    this.run += 1;
    this.pulse?.();
    this.pulse = null;
    this.transport.stop();
    this.caller.stop();
    this.onEnd();
  }

  /** Asks for what the rest of this section and the next need, once a section. */
  private wantAhead(force = false): void {
    const section = this.transport.sectionAfter(this.context.currentTime);
    if (!force && section === this.wantedFor) return;
    this.wantedFor = section;
    this.bank.want(this.keysOf(this.transport.ahead()));
  }

  private async takeOver(): Promise<void> {
    const { run } = this;
    this.changing = true;
    for (let done: Program | null = null; this.program !== null && done !== this.program; ) {
      const { program } = this;
      const needed = this.keysOf(this.transport.preview(program, READY_AHEAD));
      this.bank.hurry(needed);
      await this.bank.ready(needed, WAIT.change);
      if (run !== this.run) break;
      if (program !== this.program) continue;
      this.mixer.setTrim(FEEL_TRIMS[program.style.feel]);
      this.transport.change(program);
      this.wantAhead(true);
      done = program;
      await pause(CHANGE_EVERY_MS);
      if (run !== this.run) break;
    }
    this.changing = false;
  }

  private async refill(): Promise<void> {
    const { run } = this;
    const needed = this.keysOf(notesSoon(this.transport, this.context.currentTime));
    this.bank.hurry(needed);
    await this.bank.ready(needed, WAIT.instruments);
    if (run !== this.run) return;
    this.transport.refill();
    this.wantAhead(true);
  }
}

const notesSoon = (transport: Transport, now: number): readonly ScheduledNote[] =>
  transport
    .timeline()
    .filter(({ open }) => open)
    .flatMap((placement) => notesBetween(placement, now, now + READY_AHEAD, {}));
