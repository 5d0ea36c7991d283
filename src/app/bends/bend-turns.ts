import { type BendTask, bendTask, exercisesFor } from '../../core/bends/bend-exercise';
import { type BendListener, createBendListener } from '../../core/bends/bend-listener';
import { naturalOf } from '../../core/bends/bend-targets';
import type { BendVerdict } from '../../core/bends/bend-verdict';
import type { Sound } from '../../core/harp/harp';
import { soundId } from '../../core/harp/tab';
import { asSeconds } from '../../core/theory/units';
import type { EarCommands } from '../ear/ear';
import type { Hearing } from '../ear/hearing';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { BendReads, BendsState, BendTurn } from './bends-state';

/** The stand, as bend practice finds it. */
export type BendStand = Stand<BendReads, Pick<EarCommands, 'hearing'>>;

/** What is to be practised. */
export type Asked = Pick<BendTurn, 'target' | 'exercise' | 'given'>;

/** Turns at a sound, one after the other, without a hand on the machine. */
export interface BendTurns {
  start(turn: Asked): void;
  stop(): void;
  /** Takes the player's own word for a try. */
  mark(hit: boolean): void;
  dispose(): void;
}

/** What became of a turn: heard, or marked by the player. */
export type TurnOutcome =
  | { readonly by: 'ear'; readonly verdict: BendVerdict }
  | { readonly by: 'player'; readonly hit: boolean };

interface Parts {
  readonly stand: BendStand;
  /** The sound of the next turn where sounds are given. */
  readonly nextAfter: (target: Sound) => Sound;
  readonly onOutcome: (turn: BendTurn, outcome: TurnOutcome) => void;
}

/** Seconds of a turn (by design, no source): how long leads sound, when a turn opens, how long it is waited for. */
const TONE = 1.2;
const DRONE = 8;
const OPENS = { tone: TONE + 0.3, drone: 0.9, nothing: 0.3 } as const;
const WAIT = 6;
const VERDICT = 2.5;
/** So many turns without a note, and the player is taken to have left. */
const LEFT = 2;
const GONE = 'Stopped: nothing was heard for two turns. Start again when you are ready.';

const OCTAVE = 12;

/** Whether a try would be heard. */
const hears = ({ ear }: BendReads): boolean => ear.status.kind === 'listening';

/** What a turn asks for, on the harp in hand and over the song. */
export const taskOf = (
  { settings, tune }: Pick<SongState, 'settings' | 'tune'>,
  { target, exercise }: Pick<BendTurn, 'target' | 'exercise'>,
): BendTask =>
  bendTask(target, {
    harp: tune.harp,
    reference: settings.reference,
    exercise,
    level: settings.bends.level,
    tonic: tune.chart.key,
  });

/** Creates what leads through turns. */
export const createBendTurns = (parts: Parts): BendTurns => new HandsFreeTurns(parts);

class HandsFreeTurns implements BendTurns {
  private readonly stand: BendStand;
  private readonly onOutcome: Parts['onOutcome'];
  private readonly nextAfter: Parts['nextAfter'];
  private readonly hearing: Hearing;
  private readonly leaving: readonly (() => void)[];
  private listener: BendListener | null = null;
  private takeBack = (): void => {};
  private run = 0;
  private silent = 0;

  constructor({ stand, onOutcome, nextAfter }: Parts) {
    this.stand = stand;
    this.nextAfter = nextAfter;
    this.onOutcome = onOutcome;
    this.hearing = stand.ask().hearing();
    this.leaving = [
      this.hearing.onHeard(({ frames }) => {
        const verdict = this.listener?.take(frames) ?? null;
        if (verdict !== null) this.finish({ by: 'ear', verdict });
      }),
      // A microphone that comes takes over from the player's own word.
      stand.store.subscribe((state) => {
        if (state.bends.turn?.step === 'mark' && hears(state)) this.open();
      }),
    ];
  }

  readonly start = (asked: Asked): void => {
    this.end('');
    this.silent = 0;
    this.show({ turn: { ...asked, step: 'lead', verdict: null }, ended: '' });
    void this.lead();
  };

  readonly stop = (): void => this.end('');

  readonly mark = (hit: boolean): void => this.finish({ by: 'player', hit });

  dispose(): void {
    this.end('');
    for (const leave of this.leaving) leave();
  }

  private turn(): BendTurn | null {
    return this.stand.store.getState().bends.turn;
  }

  private show(change: Partial<BendsState['bends']>): void {
    this.stand.store.setState(({ bends }) => ({ bends: { ...bends, ...change } }));
  }

  private wait(seconds: number, then: () => void): void {
    this.takeBack();
    this.takeBack = this.stand.later(seconds, then);
  }

  private end(why: string): void {
    this.run += 1;
    this.takeBack();
    this.listener = null;
    if (this.turn() === null) return;
    this.hearing.aim([]);
    this.show({ turn: null, ended: why });
  }

  /** Lets be heard what is aimed for, and opens the turn after it. */
  private async lead(): Promise<void> {
    const before = this.turn();
    if (before === null) return;
    const { run } = this;
    const { store, band } = this.stand;
    const target = before.given && before.step === 'verdict' ? this.nextAfter(before.target) : before.target;
    const exercise = exercisesFor(target).includes(before.exercise) ? before.exercise : 'hold';
    this.show({ turn: { ...before, target, exercise, step: 'lead' } });
    const natural = naturalOf(target, store.getState().tune.harp);
    this.hearing.aim([target, ...(natural === null ? [] : [natural])].map(soundId));
    const { lead } = store.getState().settings.bends;
    const { pitch } = target;
    if (lead === 'tone') await band.audition('lead', pitch, asSeconds(TONE), 0);
    if (lead === 'drone') await band.audition('lead', pitch - OCTAVE, asSeconds(DRONE), 0);
    if (run === this.run) this.wait(OPENS[lead], () => this.open());
  }

  private open(): void {
    const turn = this.turn();
    if (turn === null) return;
    const state = this.stand.store.getState();
    if (!hears(state)) {
      this.show({ turn: { ...turn, step: 'mark' } });
      return;
    }
    this.listener = createBendListener(taskOf(state, turn));
    this.show({ turn: { ...turn, step: 'yours' } });
    this.wait(WAIT, () => {
      // A microphone that went meanwhile says nothing about the player.
      if (hears(this.stand.store.getState())) this.finish({ by: 'ear', verdict: { kind: 'nothing' } });
      else this.open();
    });
  }

  private finish(outcome: TurnOutcome): void {
    const turn = this.turn();
    if (turn === null) return;
    this.listener = null;
    const verdict = outcome.by === 'ear' ? outcome.verdict : null;
    this.silent = verdict?.kind === 'nothing' ? this.silent + 1 : 0;
    this.show({ turn: { ...turn, step: 'verdict', verdict } });
    this.onOutcome(turn, outcome);
    if (this.silent >= LEFT) this.end(GONE);
    else this.wait(VERDICT, () => void this.lead());
  }
}
