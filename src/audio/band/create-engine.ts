/** The band once its audio part is loaded: joins transport, bank, player and mixer on one audio context. */

import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import type { PartId } from '../../core/score/score';
import type { BandSound } from '../../core/song/band-sound';
import { type Bank, createBank, workersWorthHaving } from '../bank/bank';
import { makeBuffer } from '../bank/make-buffer';
import { type SoundKey, voiceOf } from '../bank/sound-key';
import { FEEL_TRIMS } from '../mixer/feel-trims';
import { createMixer, type Mixer } from '../mixer/mixer';
import { type BarCaller, createBarCaller } from '../transport/bar-caller';
import type { SectionSource } from '../transport/form-position';
import { type HeldPlace, heldAtBar, heldInstead, heldUpcoming } from '../transport/held-place';
import { createOutputClock, type OutputClock, readContext } from '../transport/output-clock';
import { playheadAt } from '../transport/playhead-at';
import { startPulse } from '../transport/pulse';
import { createTransport } from '../transport/rolling-transport';
import type { ScheduledNote } from '../transport/scheduled-note';
import type { Transport } from '../transport/transport';
import type { AuditionNote, Engine, EngineCounts, EngineOptions } from './engine';
import { aheadOf, auditionNote, notesFromHeld, notesSoon, openingNotes } from './engine-notes';
import { CHANGE_EVERY_MS, CLOSED_AFTER, LEAD, PULSE_MS, pause, READY_AHEAD, WAIT } from './engine-times';
import { createPlayer, type Player } from './note-player';
import { keysOf, noteSound, sameInstruments, soundAt } from './note-sound';
import { bothSinks, createOutsideFeed, type OutsideFeed } from './outside-feed';

/** Builds the band's engine. */
export const createEngine = (options: EngineOptions): Engine => new BandEngine(options);

class BandEngine implements Engine {
  private readonly context: AudioContext;
  private readonly source: SectionSource;
  private readonly onEnd: () => void;
  private readonly onBar: EngineOptions['onBar'];
  private readonly mixer: Mixer;
  private readonly bank: Bank;
  private readonly player: Player;
  private readonly asidePlayer: Player;
  private readonly transport: Transport;
  private readonly clock: OutputClock;
  private readonly caller: BarCaller;
  private readonly outside: OutsideFeed;
  private readonly delay: number;
  private sound: BandSound | null = null;
  private program: Program | null = null;
  private held: HeldPlace | null = null;
  private run = 0;
  private changing = false;
  private pulse: (() => void) | null = null;
  private wantedFor: Section | null = null;

  constructor(options: EngineOptions) {
    const { context, tone, master, source, createWorker } = options;
    this.context = context;
    this.source = source;
    this.onEnd = options.onEnd;
    this.onBar = options.onBar;
    this.mixer = createMixer(tone, master);
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
      connect: (gain, note) => this.mixer.connect(gain, note.event.part, this.voice(note), note.event.pitch),
    });
    this.asidePlayer = createPlayer({ context, find, connect: (gain) => this.mixer.connectAside(gain) });
    this.outside = createOutsideFeed({
      timeline: () => this.transport.timeline(),
      outputTime: () => this.clock.time(),
      pageTime: () => performance.now(),
      tell: options.onOutside,
    });
    this.transport = createTransport({
      now: () => context.currentTime,
      source,
      sink: bothSinks(this.player, this.outside),
      cutAfter: Math.max(0.03, (context.baseLatency || 0) + 0.01),
    });
    this.delay = master.delay;
    this.clock = createOutputClock(() => readContext(context, master.delay + (this.sound?.lag ?? 0)));
    this.caller = createBarCaller({
      outputTime: () => this.clock.time(),
      timeline: () => this.transport.timeline(),
      call: options.onBar,
    });
  }

  async play(program: Program, sound: BandSound, fromBar: number): Promise<boolean> {
    this.halt();
    this.run += 1;
    this.program = program;
    this.setSound(sound);
    return this.begin(openingNotes(this.source, program, fromBar), (at) =>
      this.transport.start(this.program ?? program, fromBar, at),
    );
  }

  pause(): boolean {
    const heard = this.playhead();
    if (!this.playing() || heard === null) return false;
    this.run += 1;
    const held = this.transport.hold(heard);
    this.halt();
    this.held = held && heldInstead(this.source, held, this.program ?? held.program);
    return this.paused();
  }

  async goOn(): Promise<boolean> {
    const { held } = this;
    if (held === null || this.sound === null) return false;
    this.run += 1;
    return this.begin(notesFromHeld(this.source, held), (at) => {
      this.transport.goOn(this.held ?? held, at);
      this.held = null;
    });
  }

  paused(): boolean {
    return this.held !== null;
  }

  prepare(program: Program, sound: BandSound, fromBar: number): void {
    if (this.playing() || this.paused()) return;
    this.bank.want(keysOf(openingNotes(this.source, program, fromBar), sound));
  }

  stop(): void {
    this.run += 1;
    this.halt();
    this.caller.stop();
  }

  change(program: Program): void {
    this.program = program;
    if (this.held) this.held = heldInstead(this.source, this.held, program);
    else if (this.playing() && !this.changing) void this.takeOver();
  }

  seek(bar: number): void {
    if (this.held) {
      this.held = heldAtBar(this.source, this.held, bar);
      this.onBar(this.held.playhead);
      return;
    }
    this.transport.seek(bar);
    this.wantAhead();
  }

  setSound(sound: BandSound): void {
    const before = this.sound;
    this.sound = sound;
    this.mixer.setMix(sound.mix);
    if (before && !sameInstruments(before, sound) && this.transport.playing()) void this.refill();
  }

  async audition(part: PartId, wanted: AuditionNote, sound: BandSound): Promise<void> {
    this.sound ??= sound;
    this.mixer.setMix(this.sound.mix);
    const note = (ahead: number) => auditionNote(part, wanted, this.context.currentTime + ahead);
    if (wanted.seconds === 0) return this.asidePlayer.giveWay(note(0.03));
    const keys = this.keysOf([note(0)]);
    this.bank.hurry(keys);
    await this.bank.ready(keys, WAIT.start);
    this.asidePlayer.start(note(0.02));
  }

  playhead(): Playhead | null {
    if (this.held) return this.held.playhead;
    return playheadAt(this.transport.timeline(), this.clock.time());
  }

  playheadAt(time: number): Playhead | null {
    return playheadAt(this.transport.timeline(), time - this.delay - (this.sound?.lag ?? 0));
  }

  upcoming(): Section | null {
    if (this.held) return heldUpcoming(this.source, this.held);
    return this.transport.sectionAfter(this.clock.time());
  }

  playing(): boolean {
    return this.pulse !== null;
  }

  sounding(): boolean {
    return this.playing() || this.player.live() + this.asidePlayer.live() > 0;
  }

  resync(): void {
    this.clock.resync();
    if (this.playing()) this.beat();
  }

  counts(): EngineCounts {
    const { transport, player, bank } = this;
    return { ...bank.counts(), late: transport.late(), live: player.live(), bytes: bank.bytes() };
  }

  dispose(): void {
    this.stop();
    this.bank.dispose();
    this.mixer.dispose();
  }

  private voice(note: ScheduledNote) {
    return voiceOf(note.event.part, soundAt(note, this.mustSound()));
  }

  private mustSound(): BandSound {
    if (this.sound === null) throw new Error('the band has no sound set');
    return this.sound;
  }

  private keysOf(notes: readonly ScheduledNote[]): SoundKey[] {
    return keysOf(notes, this.mustSound());
  }

  /** Begins the music once the first sounds are there. False when another call took over before. */
  private async begin(first: readonly ScheduledNote[], start: (at: number) => void): Promise<boolean> {
    const { run } = this;
    this.bank.want(this.keysOf(first));
    await this.bank.ready(this.keysOf(first.filter(({ at }) => at < READY_AHEAD)), WAIT.start);
    if (run !== this.run) return false;
    if (this.program !== null) this.mixer.setTrim(FEEL_TRIMS[this.program.style.feel]);
    const at = this.context.currentTime + LEAD + aheadOf(first);
    this.clock.resync();
    this.mixer.open(this.context.currentTime + LEAD / 2, at);
    start(at);
    this.pulse = startPulse(PULSE_MS, () => this.beat());
    return true;
  }

  private halt(): void {
    this.held = null;
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
    this.outside.beat();
    this.wantAhead();
    if (this.transport.playing() || this.playhead() !== null) return;
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
    const needed = this.keysOf(notesSoon(this.transport, this.context.currentTime, READY_AHEAD));
    this.bank.hurry(needed);
    await this.bank.ready(needed, WAIT.instruments);
    if (run !== this.run) return;
    this.transport.refill();
    this.wantAhead(true);
  }
}
