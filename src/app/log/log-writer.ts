import type { BandStatus } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import { tempoAt } from '../../core/arranger/section-time';
import type { BendResults } from '../../core/bends/bend-results';
import { bendSum, chorusBends, chorusFigures, chorusVerdict } from '../../core/log/chorus-figures';
import type { LogEntry, LogKind } from '../../core/log/log-entry';
import { type LogEvent, logStep, type OpenEntry } from '../../core/log/log-events';
import type { ChorusReport } from '../../core/takes/chorus-report';
import type { TurnResult } from '../phrases/phrases-state';
import { factsOf, isSameSong } from './log-facts';
import type { LogReads, LogStand } from './log-state';
import type { WallClock } from './wall-clock';

/** Follows what is played and heard, and writes it down. */
export interface LogWriter {
  onPlayhead(position: Playhead | null): void;
  onStatus(status: BandStatus): void;
  /** The entry that is open is not to be written any more where it is among these; null means all. */
  forget(ids: readonly string[] | null): void;
  dispose(): void;
}

const kindNow = ({ warmUp, bends }: Pick<LogReads, 'warmUp' | 'bends'>): LogKind => {
  if (bends.turn !== null) return 'bends';
  return warmUp === null ? 'song' : 'warm-up';
};

/** The tempo at a place. */
/** Tries that are in the later results and not in the earlier ones. */
const newTries = (before: readonly BendResults[], after: readonly BendResults[]) => {
  const known = new Map(before.map((each) => [each.id, each]));
  return after.flatMap((results) => {
    const last = results.tries.at(-1);
    return results === known.get(results.id) || last === known.get(results.id)?.tries.at(-1) || !last
      ? []
      : [{ name: results.name, made: last }];
  });
};

/** The name of a call: that of the phrase in the library, or what calls are called together. */
const callName = ({ phrasebook }: LogReads, { call }: TurnResult): string => {
  const text = JSON.stringify(call.notes);
  return phrasebook.phrases.find(({ phrase }) => JSON.stringify(phrase.notes) === text)?.name ?? 'Calls';
};

const judgedEvent = (report: ChorusReport, open: OpenEntry): LogEvent => {
  const heard = chorusFigures(report.heard);
  const whole = open.bar?.last === true && open.bar.chorus === report.chorus;
  const verdict = whole ? chorusVerdict(heard) : null;
  return {
    kind: 'judged',
    tempo: open.bar?.tempo ?? open.entry.laps.at(-1)?.tempo ?? 1,
    clean: verdict === null ? null : verdict === 'clean',
    heard: heard.notes === 0 ? null : heard,
    bends: chorusBends(report.heard),
  };
};

/** Writes the entry that is open. */
interface Pen {
  open(): OpenEntry | null;
  take(event: LogEvent): void;
  begin(kind: LogKind): void;
  end(): void;
  /** Lets the open entry be as it was written last. */
  drop(): void;
}

const createPen = ({ store, newSeed }: LogStand, clock: WallClock, write: (entry: LogEntry) => void): Pen => {
  let open: OpenEntry | null = null;
  const take = (event: LogEvent): void => {
    const step = logStep(open, event);
    open = step.open;
    if (step.write !== null && store.getState().settings.keepLog) write(step.write);
  };
  return {
    open: () => open,
    take,
    begin: (kind) => {
      const state = store.getState();
      if (!state.settings.keepLog) return;
      const at = clock.now();
      const id = `log-${at}-${newSeed()}`;
      take({ kind: 'began', at, id, day: clock.day(), facts: factsOf(state, kind) });
    },
    end: () => take({ kind: 'ended', at: clock.now() }),
    drop: () => {
      open = null;
    },
  };
};

const followBends = (pen: Pen, clock: WallClock, seen: LogReads, now: LogReads): void => {
  const isOpen = (): boolean => pen.open()?.entry.kind === 'bends';
  if (now.bends.turn !== null && !isOpen()) pen.begin('bends');
  if (now.bends.results !== seen.bends.results && isOpen())
    for (const { name, made } of newTries(seen.bends.results, now.bends.results))
      pen.take({ kind: 'bend', at: clock.now(), sum: bendSum(name, made.hit, made.cents) });
  if (now.bends.turn === null && isOpen()) pen.end();
};

const followTrade = (pen: Pen, seen: LogReads, now: LogReads): void => {
  const { last } = now.trades;
  if (last === null || last === seen.trades.last || last.mark === null) return;
  // A mark of the player's own over that of the ear is no second try.
  if (seen.trades.last?.turn === last.turn && seen.trades.last.mark !== null) return;
  pen.take({
    kind: 'phrase',
    sum: { name: callName(now, last), tries: 1, passed: last.mark === 'clean' ? 1 : 0 },
  });
};

/** What the player said of a chorus; said again, the first word stands, since sums cannot be taken back. */
const followMarks = (pen: Pen, seen: LogReads, now: LogReads): void => {
  const { last } = now.choruses;
  if (last === null || !last.bySelf || last.outcome === null || last === seen.choruses.last) return;
  if (seen.choruses.last?.number === last.number && seen.choruses.last.outcome !== null) return;
  const { tempo, outcome } = last;
  pen.take({ kind: 'judged', tempo, clean: outcome === 'clean', heard: null, bends: [] });
};

const follow = (pen: Pen, clock: WallClock, seen: LogReads, now: LogReads): void => {
  const open = pen.open();
  if (now.ear.report !== seen.ear.report && now.ear.report !== null && open !== null)
    pen.take(judgedEvent(now.ear.report, open));
  if (now.trades !== seen.trades) followTrade(pen, seen, now);
  if (now.choruses !== seen.choruses) followMarks(pen, seen, now);
  if (now.bends !== seen.bends) followBends(pen, clock, seen, now);
  if (now.warmUp === null && seen.warmUp !== null && pen.open()?.entry.kind === 'warm-up') pen.end();
  if (!now.settings.keepLog) pen.drop();
};

/** Turns what the page goes through into events of the log. @param write keeps an entry as it is at that moment. */
export const createLogWriter = (
  stand: LogStand,
  clock: WallClock,
  write: (entry: LogEntry) => void,
): LogWriter => {
  const { store } = stand;
  const pen = createPen(stand, clock, write);
  let seen: LogReads = store.getState();
  const leave = store.subscribe((now) => {
    if (now === seen) return;
    const before = seen;
    seen = now;
    follow(pen, clock, before, now);
  });
  const isOpenOf = (kind: LogKind): boolean => {
    const open = pen.open();
    return open !== null && isSameSong(open.entry, factsOf(store.getState(), kind));
  };
  const kind = (): LogKind => kindNow(store.getState());
  return {
    onPlayhead: (position) => {
      if (position === null || store.getState().status.kind !== 'playing') return;
      if (!isOpenOf(kind())) pen.begin(kind());
      const { section, bar } = position;
      const song = section.kind === 'chorus' && store.getState().warmUp === null;
      pen.take({
        kind: 'bar',
        at: clock.now(),
        chorus: song ? section.chorus : null,
        last: bar === section.chart.bars.length - 1,
        tempo: tempoAt(position.section, position.ticks) ?? 0,
      });
    },
    onStatus: (status) => {
      const at = clock.now();
      if (status.kind === 'playing' && isOpenOf(kind())) pen.take({ kind: 'resumed', at });
      else if (status.kind === 'playing') pen.begin(kind());
      else if (['paused', 'interrupted'].includes(status.kind) || pen.open()?.entry.kind === 'warm-up')
        pen.take({ kind: 'paused', at });
      else if (pen.open()?.entry.kind === 'song') pen.end();
    },
    forget: (ids) => {
      const open = pen.open();
      if (open !== null && (ids === null || ids.includes(open.entry.id))) pen.drop();
    },
    dispose: () => {
      leave();
      pen.end();
    },
  };
};
