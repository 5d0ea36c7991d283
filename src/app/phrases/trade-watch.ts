import type { BandStatus } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import type { Section } from '../../core/arranger/program';
import { secondsPerTickAt } from '../../core/arranger/section-time';
import { phraseLead } from '../../core/phrase/phrase-lead';
import { quantise } from '../../core/practice/quantise';
import { FRESH_RUN, type TradeRun } from '../../core/practice/trade-run';
import type { Call } from '../../core/practice/trading';
import { varyAnswer } from '../../core/practice/vary-answer';
import { chartFor } from '../../core/song/chosen-chart';
import { tradingFor } from '../../core/song/leads';
import { createRandom, seedFrom } from '../../core/theory/random';
import { asBpm, asMidi, asTicks } from '../../core/theory/units';
import type { SelfMark } from '../../core/today/grade';
import type { EarCommands } from '../ear/ear';
import type { EarState } from '../ear/ear-state';
import type { Joined, Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { judgeTurn, leadSwing, type PlayedTurn } from './judge-turn';
import type { PhrasesState, TradeCommands, TurnResult } from './phrases-state';
import { type LoneNote, playAlone } from './play-phrase';
import { createTurnNotes } from './turn-notes';

type Needs = Stand<PhrasesState & Song & EarState, Pick<EarCommands, 'hearing'>>;

/** Trading at work. */
export type TradeWatch = Required<Pick<Joined<TradeCommands>, 'onPlayhead' | 'onStatus' | 'dispose'>> &
  TradeCommands;

/** Beats before the end of a turn at which it is judged, so that what follows can still be another call. */
const BEFORE_END = 0.75;
/** Beats before its turn from which a note belongs to it: an upbeat, or a player ahead of the band. */
const UPBEAT = 0.75;
/** Beats a minute slower after an answer that was not clean, and the slowest it gets. */
const SLOWER = { by: 6, least: 40 } as const;

/** Marks and answers that are remembered. */
const MOST_MARKS = 99;
const REMEMBERED = 8;

/** A turn of the player's that goes on. */
interface Watched {
  readonly call: Call;
  readonly section: Section;
  readonly start: number;
  readonly room: number;
}

/** Follows the turns of a trading: collects what is heard in each, judges it, and says what comes next. */
export const createTradeWatch = (stand: Needs): TradeWatch => new Watch(stand);

class Watch implements TradeWatch {
  private readonly stand: Needs;
  private readonly state: Needs['store']['getState'];
  private readonly notes = createTurnNotes();
  /** The ear joins beside this: it can be asked only once all have. */
  private unsubscribe: (() => void) | null = null;
  private watched: Watched | null = null;
  /** Taps of the chorus that plays: ticks of its section. */
  private taps: { readonly chorus: number; readonly ticks: number }[] = [];
  private stopTimer = (): void => {};
  private stopPlaying = (): void => {};
  private wasPlaying = false;
  /** The tempo to come back to once a slower answer was clean; null while nothing was slowed. */
  private ownTempo: number | null = null;

  constructor(stand: Needs) {
    this.stand = stand;
    this.state = stand.store.getState;
  }

  readonly onPlayhead = (position: Playhead | null): void => {
    const { settings, warmUp, tradeRun } = this.state();
    this.notes.follow(position);
    if (position === null || position.section.kind !== 'chorus') return;
    if (!settings.trade.on || warmUp !== null) return;
    const { chorus } = position.section;
    const moved = tradeRun.repeats.length > 0 || tradeRun.heard.length > 0;
    if (moved && chorus !== tradeRun.chorus) this.setRun({ chorus });
    if (this.watched !== null && this.watched.section.chorus !== chorus) this.finish();
    this.begin(position);
  };

  readonly onStatus = ({ kind }: BandStatus): void => {
    const playing = kind === 'playing';
    this.unsubscribe ??= this.stand.ask().hearing().onPlayed(this.notes.take);
    if (playing && !this.wasPlaying) {
      this.stopPlaying();
      this.stand.store.setState({ tradeRun: FRESH_RUN });
      this.setTrades({ marks: [], hearing: null });
    }
    if (!playing) {
      this.stopTimer();
      this.watched = null;
      this.ownTempo = null;
    }
    this.wasPlaying = playing;
  };

  readonly markAnswer = (mark: SelfMark): void => {
    const { watched } = this;
    const { last, marks } = this.state().trades;
    if (watched !== null) {
      this.stopTimer();
      this.watched = null;
      this.conclude({ ...judgeTurn(this.playedTurn(watched)), mark, bySelf: true, sentence: '' });
      this.goOn(watched.call.turn, mark);
    } else if (last !== null) {
      const known = last.mark === null ? marks : marks.slice(0, -1);
      this.setTrades({ last: { ...last, mark, bySelf: true }, marks: [...known, mark] });
    }
  };

  readonly tapAnswer = (): void => {
    const position = this.stand.band.playhead();
    if (position === null || position.section.kind !== 'chorus') return;
    const { chorus } = position.section;
    this.taps = [...this.taps.filter((each) => each.chorus === chorus), { chorus, ticks: position.ticks }];
  };

  readonly callAgain = (): void => {
    if (this.watched !== null) this.repeatAfter(this.watched.call.turn);
  };

  readonly hearTurn = (which: 'call' | 'answer'): void => {
    const { state, stand } = this;
    this.stopPlaying();
    const { last, hearing } = state().trades;
    const wanted = last !== null && hearing !== which && state().status.kind !== 'playing';
    this.setTrades({ hearing: wanted ? which : null });
    if (!wanted) return;
    const played = which === 'call' ? this.calledNotes(last) : heardNotes(last);
    const end = (): void => this.setTrades({ hearing: null });
    this.stopPlaying = playAlone(stand, played, last.secondsPerTick, end);
  };

  dispose(): void {
    this.unsubscribe?.();
    this.stopTimer();
    this.stopPlaying();
  }

  private calledNotes({ call }: TurnResult): readonly LoneNote[] {
    const { settings, now } = this.state();
    return phraseLead(call, { harp: now.tune.harp, at: asTicks(0), swing: leadSwing({ settings }) });
  }

  private setTrades(change: Partial<PhrasesState['trades']>): void {
    this.stand.store.setState(({ trades }) => ({ trades: { ...trades, ...change } }));
  }

  private setRun(change: Partial<TradeRun>): void {
    this.stand.store.setState(({ tradeRun }) => ({ tradeRun: { ...tradeRun, ...change } }));
    this.stand.orders.follow();
  }

  private tradingNow(chorus: number) {
    const { settings, ownCharts, now, tradeRun } = this.state();
    const { harp, chart } = now.tune;
    const form = chartFor(settings, ownCharts, chart.key);
    return { trading: tradingFor(settings, { chart: form, harp, chorus }, tradeRun), chart: form, harp };
  }

  /** The bars that are the player's in a call's turn. */
  private ownBars(call: Call): { readonly bar: number; readonly bars: number } {
    return this.state().settings.partner.mode === 'lead' ? call : call.answer;
  }

  private playedTurn({ call, section, start, room }: Watched): PlayedTurn {
    const { chart, harp } = this.tradingNow(section.chorus);
    const { settings, ear } = this.state();
    const upbeat = UPBEAT * chart.meter.beatTicks;
    const played = this.notes.between(start - upbeat, start + room);
    // Without a microphone what comes from a keyboard is there; where nothing came the player marks it.
    const heard = ear.status.kind === 'listening' || played.length > 0 ? played : null;
    const secondsPerTick = secondsPerTickAt(section, start);
    const taps = this.taps
      .filter(
        ({ chorus, ticks }) => chorus === section.chorus && ticks >= start - upbeat && ticks < start + room,
      )
      .map(({ ticks }) => ticks);
    return { call, settings, chart, harp, start, room, secondsPerTick, heard, taps };
  }

  /** Where the player leads: what was heard is what the partner answers, with another end. */
  private answerAsPartner({ call, chart, harp, heard, room, start, settings }: PlayedTurn): void {
    if (heard === null) return;
    const loose = heard.flatMap(({ sound, together, ticks, length }) =>
      sound === null ? [] : [{ at: ticks - start, length, sounds: [sound, ...together] }],
    );
    const swing = leadSwing({ settings });
    const phrase = varyAnswer(quantise(loose, { meter: chart.meter.name, length: room, swing, steps: 2 }), {
      bars: chart.bars.slice(call.answer.bar, call.answer.bar + call.answer.bars),
      harp,
      technique: settings.technique,
      random: createRandom(seedFrom(settings.style.seed, 'partner', call.turn)),
    });
    const others = this.state().tradeRun.heard.filter((each) => each.turn !== call.turn);
    this.setRun({ heard: [...others.slice(-REMEMBERED), { turn: call.turn, phrase }] });
  }

  private slowDown(): void {
    const { settings } = this.state();
    this.ownTempo ??= settings.tempo;
    const tempo = asBpm(Math.max(SLOWER.least, settings.tempo - SLOWER.by));
    this.stand.apply({ ...settings, tempo });
  }

  private speedUp(): void {
    if (this.ownTempo === null) return;
    const { settings } = this.state();
    const tempo = Math.min(this.ownTempo, settings.tempo + SLOWER.by);
    if (tempo === this.ownTempo) this.ownTempo = null;
    this.stand.apply({ ...settings, tempo: asBpm(tempo) });
  }

  private repeatAfter(turn: number): void {
    this.setRun({ repeats: [...this.state().tradeRun.repeats, turn] });
  }

  /** What comes after an answer, as the player wants it. */
  private goOn(turn: number, mark: SelfMark): void {
    const { after } = this.state().settings.partner;
    if (after === 'slower' && mark === 'clean') this.speedUp();
    if (after === 'on' || mark === 'clean') return;
    if (after === 'slower') this.slowDown();
    this.repeatAfter(turn);
  }

  private conclude(result: TurnResult): void {
    const { marks } = this.state().trades;
    this.setTrades({
      last: result,
      marks: result.mark === null ? marks : [...marks.slice(-MOST_MARKS), result.mark],
    });
  }

  /** Judges the turn that goes on; once. */
  private readonly finish = (): void => {
    this.stopTimer();
    const over = this.watched;
    this.watched = null;
    if (over === null) return;
    const turn = this.playedTurn(over);
    if (turn.settings.partner.mode === 'lead') this.answerAsPartner(turn);
    const result = judgeTurn(turn);
    this.conclude(result);
    if (result.mark !== null) this.goOn(result.turn, result.mark);
  };

  private begin({ section, bar }: Playhead): void {
    const formBar = section.barNumbers[bar] ?? null;
    if (formBar === null) return;
    const { trading, chart } = this.tradingNow(section.chorus);
    const mine = trading?.turns[formBar] === (trading?.mode === 'lead' ? 'lead' : 'answer');
    const call = trading?.calls.find((each) => {
      const own = this.ownBars(each);
      return formBar >= own.bar && formBar < own.bar + own.bars;
    });
    if (call === undefined || !mine) return;
    const own = this.ownBars(call);
    const start = section.chart.bars[Math.max(0, bar - (formBar - own.bar))]?.at ?? 0;
    const barLength = chart.bars[formBar]?.length ?? 0;
    if (this.watched?.call.turn !== call.turn)
      this.watched = { call, section, start, room: own.bars * barLength };
    if (formBar < own.bar + own.bars - 1) return;
    const left = barLength - BEFORE_END * chart.meter.beatTicks;
    this.stopTimer();
    this.stopTimer = this.stand.later(left * secondsPerTickAt(section, start), this.finish);
  }
}

/** What was heard of an answer, from its beginning on. */
const heardNotes = ({ heard }: TurnResult): readonly LoneNote[] =>
  (heard ?? []).map(({ at, length, pitch }) => ({ at: Math.max(0, at), length, pitch: asMidi(pitch) }));
