/**
 * The band as the page sees it. Costs nothing until the first gesture, which makes the audio context (browsers ask
 * for that) and loads the rest; every trouble on the way becomes a status.
 */
import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import type { OutsideEvent } from '../../core/midi/outside-event';
import type { PartId } from '../../core/score/score';
import type { BandSound } from '../../core/song/band-sound';
import { messageOf } from '../../core/theory/thrown';
import type { Seconds } from '../../core/theory/units';
import { createListeners } from '../../listeners/listeners';
import { outputOf } from '../mixer/output-of';
import type { Band, BandStatus, LentOutput } from './band';
import { type BandGround, WEB_GROUND } from './band-ground';
import { createContextRest } from './context-rest';
import type { Engine } from './engine';
import type { BandEvents } from './load-band';
import { createLoans } from './loans';
import { RESTING_SOUND } from './resting-sound';
import { contextFrom, startContext } from './start-context';

/** Creates the band, asleep. */
export const createBand = (ground: BandGround = WEB_GROUND): Band => new LazyBand(ground);

class LazyBand implements Band {
  private readonly ground: BandGround;
  private readonly bars = createListeners<Playhead | null>();
  private readonly statuses = createListeners<BandStatus>();
  private readonly makeshifts = createListeners<void>();
  private readonly outsides = createListeners<readonly OutsideEvent[]>();
  readonly onBar = this.bars.add;
  readonly onStatus = this.statuses.add;
  readonly onMakeshift = this.makeshifts.add;
  readonly onOutside = this.outsides.add;
  private readonly onVisible = () => this.engine?.resync();
  private current: BandStatus = { kind: 'asleep' };
  private context: AudioContext | null = null;
  private engine: Engine | null = null;
  private loading: Promise<Engine> | null = null;
  private sound: BandSound | null = null;
  private program: Program | null = null;
  private run = 0;
  /** The bar that a play which found the context silent begins at as soon as it runs. */
  private waitingFrom: number | null = null;
  private readonly rest = createContextRest({
    idle: () => this.isResting(),
    sounding: () => this.engine?.sounding() === true,
    rest: () => void this.context?.suspend().catch(() => undefined),
  });
  /** The context runs for others whatever the band does. */
  private readonly loans = createLoans(() => this.isResting() && this.rest.soon());

  constructor(ground: BandGround) {
    this.ground = ground;
    if (typeof document !== 'undefined') document.addEventListener('visibilitychange', this.onVisible);
  }

  status(): BandStatus {
    return this.current;
  }

  async play(program: Program, sound: BandSound, fromBar: number): Promise<BandStatus> {
    this.run += 1;
    const { run } = this;
    this.sound = sound;
    this.program = program;
    this.waitingFrom = null;
    const engine = await this.wake();
    if (run !== this.run) return this.current;
    if (engine !== null) await this.begin(engine, fromBar);
    else if (this.isSilenced()) this.waitingFrom = fromBar;
    return this.current;
  }

  pause(): void {
    if (this.current.kind !== 'playing' || !this.engine?.pause()) return;
    this.run += 1;
    this.settle();
  }

  async prepare(program: Program, sound: BandSound, fromBar: number): Promise<void> {
    if (this.engine !== null) this.engine.prepare(program, sound, fromBar);
    else if (this.loading === null)
      await this.ground.prepare?.(program, sound, fromBar).catch(() => undefined);
  }

  async resume(): Promise<BandStatus> {
    if (this.current.kind === 'paused') return this.goOn();
    const { context } = this;
    if (context !== null && this.current.kind === 'interrupted') {
      await this.startContext(context);
      this.look(context);
    }
    return this.current;
  }

  stop(): void {
    this.run += 1;
    this.waitingFrom = null;
    this.engine?.stop();
    if (['playing', 'paused', 'interrupted'].includes(this.current.kind)) this.set({ kind: 'ready' });
    if (this.current.kind === 'ready') this.rest.soon();
  }

  change(program: Program): void {
    this.program = program;
    this.engine?.change(program);
  }

  seek(bar: number): void {
    if (this.isUnderWay()) this.engine?.seek(bar);
    if (this.waitingFrom !== null) this.waitingFrom = bar;
  }

  setSound(sound: BandSound): void {
    this.sound = sound;
    this.engine?.setSound(sound);
  }

  async audition(part: PartId, midi: number, seconds: Seconds, glideFrom: number): Promise<void> {
    const engine = await this.wake();
    const sound = this.sound ?? RESTING_SOUND;
    await this.rest.notWhile(async () => engine?.audition(part, { midi, seconds, glideFrom }, sound));
  }

  playhead(): Playhead | null {
    return this.isUnderWay() ? (this.engine?.playhead() ?? null) : null;
  }

  playheadAt(time: Seconds): Playhead | null {
    return this.engine?.playheadAt(time) ?? null;
  }

  async lend(): Promise<LentOutput | null> {
    const context = this.openContext();
    if (context === null) return null;
    const giveBack = this.loans.take();
    this.rest.notNow();
    await this.startContext(context);
    return { context, output: outputOf(context), giveBack };
  }

  upcoming(): Section | null {
    return this.isUnderWay() ? (this.engine?.upcoming() ?? null) : null;
  }

  dispose(): void {
    this.stop();
    if (typeof document !== 'undefined') document.removeEventListener('visibilitychange', this.onVisible);
    this.discard();
    this.set({ kind: 'asleep' });
  }

  private set(status: BandStatus): void {
    if (JSON.stringify(status) === JSON.stringify(this.current)) return;
    this.current = status;
    this.statuses.tell(status);
  }

  /** The status that follows from what the engine and the context are doing. */
  private settle(): void {
    const running = this.context?.state === 'running';
    if (this.engine?.playing()) this.set({ kind: running ? 'playing' : 'interrupted' });
    else if (this.engine?.paused()) this.set({ kind: 'paused' });
    else if (running) this.set({ kind: 'ready' });
    else this.set({ kind: this.context?.state === 'interrupted' ? 'interrupted' : 'blocked' });
    if (this.isResting()) this.rest.soon();
  }

  /** Brings context and engine up; null when that did not succeed, with the reason in the status. */
  private async wake(): Promise<Engine | null> {
    const context = this.openContext();
    if (context === null) return null;
    const started = this.startContext(context);
    this.rest.notNow();
    try {
      if (this.engine === null || context.state !== 'running') this.set({ kind: 'loading' });
      this.loading ??= this.ground.loadEngine(context, this.eventsOf(context));
      const engine = await this.loading;
      if (context !== this.context) {
        engine.dispose();
        return null;
      }
      this.engine = engine;
    } catch (error) {
      this.loading = null;
      this.set({ kind: 'failed', why: 'load', detail: messageOf(error) });
      return null;
    }
    await started;
    if (context !== this.context) return null;
    // Whatever it was when the wait ended: loading may have taken longer than the context did.
    if (this.current.kind !== 'playing' || context.state !== 'running') this.settle();
    return context.state === 'running' ? this.engine : null;
  }

  private async goOn(): Promise<BandStatus> {
    this.run += 1;
    const { run } = this;
    const engine = await this.wake();
    if (run === this.run && engine !== null) await this.settleWhen(() => engine.goOn());
    return this.current;
  }

  private async begin(engine: Engine, fromBar: number): Promise<void> {
    const { program, sound } = this;
    if (program !== null && sound !== null) await this.settleWhen(() => engine.play(program, sound, fromBar));
  }

  private async settleWhen(begin: () => Promise<boolean>): Promise<void> {
    try {
      if (await this.rest.notWhile(begin)) this.settle();
    } catch (error) {
      this.set({ kind: 'failed', why: 'device', detail: messageOf(error) });
    }
  }

  private eventsOf(context: AudioContext): BandEvents {
    return {
      onBar: (position) => this.bars.tell(position),
      onEnd: () => this.settle(),
      onMakeshift: () => this.makeshifts.tell(),
      onOutside: (events) => this.outsides.tell(events),
      onLost: (detail) => {
        if (context === this.context) this.lose('load', detail);
      },
    };
  }

  private openContext(): AudioContext | null {
    if (this.context !== null && this.context.state !== 'closed') return this.context;
    this.discard();
    const context = contextFrom(this.ground);
    if ('kind' in context) {
      this.set(context);
      return null;
    }
    this.context = context;
    const onState = () => this.look(context);
    context.addEventListener('statechange', onState);
    context.addEventListener('error', onState);
    return context;
  }

  private startContext(context: AudioContext): Promise<void> {
    return startContext(context, () => this.look(context));
  }

  /** Makes the status follow what the context does now. */
  private look(context: AudioContext): void {
    if (context !== this.context) return;
    this.engine?.resync();
    if (context.state === 'closed') this.lose('device', 'The audio device was closed');
    if (this.current.kind !== 'playing' && !this.isSilenced()) return;
    this.settle();
    if (context.state !== 'running' || this.waitingFrom === null || this.engine === null) return;
    const from = this.waitingFrom;
    this.waitingFrom = null;
    void this.begin(this.engine, from);
  }

  /** In the middle of a song, heard or paused. */
  private isUnderWay(): boolean {
    return this.engine !== null && (this.engine.playing() || this.engine.paused());
  }

  /** Silent by the player's own wish, and nobody else uses the context: it may rest. */
  private isResting(): boolean {
    return !this.loans.any() && ['asleep', 'ready', 'paused'].includes(this.current.kind);
  }

  private isSilenced(): boolean {
    return this.current.kind === 'interrupted' || this.current.kind === 'blocked';
  }

  private lose(why: 'load' | 'device', detail: string): void {
    this.run += 1;
    this.waitingFrom = null;
    this.discard();
    this.bars.tell(null);
    this.set({ kind: 'failed', why, detail });
  }

  private discard(): void {
    const { engine, context } = this;
    this.rest.notNow();
    this.engine = null;
    this.loading = null;
    this.context = null;
    engine?.dispose();
    if (context !== null && context.state !== 'closed') void context.close().catch(() => undefined);
  }
}
