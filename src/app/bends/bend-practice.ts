import {
  type BendResults,
  figuresOf,
  harpKind,
  joinResults,
  noResults,
  parseBendResults,
  type Standing,
  tryOf,
  withTry,
} from '../../core/bends/bend-results';
import { bendTargets } from '../../core/bends/bend-targets';
import { nextTarget } from '../../core/bends/next-target';
import { reachByResults } from '../../core/bends/reach-by-results';
import type { Harp, Sound } from '../../core/harp/harp';
import { soundId, spokenHole } from '../../core/harp/tab';
import { listed } from '../../core/theory/wording';
import type { Hearing } from '../ear/hearing';
import { openShelf } from '../keeping/shelf';
import { type BendStand, type BendTurns, createBendTurns } from './bend-turns';
import type { BendsState } from './bends-state';

/** Practising bends, once it was fetched. */
export interface BendPractice extends BendTurns {
  /** What is heard, for whatever else is read from single notes. */
  readonly hearing: Hearing;
  /** The sound to practise next, by what is kept; null for a harp without bends. */
  next(present: Sound | null): Sound | null;
  /** Lets results decide what is in reach, and shows them on the harp; or lets them rest. */
  followResults(on: boolean): void;
  /** Deletes what is kept of one sound of the harp in hand, or of all of them. */
  forget(sound: Sound | null): void;
}

const soundsListed = (sounds: readonly Sound[]): string => listed(sounds.map(spokenHole));

/** What to tell the player when results have changed the reach; never silent about what goes. */
const reachSentence = (gained: readonly Sound[], lost: readonly Sound[]): string =>
  [
    ...(gained.length > 0
      ? [`By your results ${soundsListed(gained)} ${gained.length === 1 ? 'is' : 'are'} in reach now.`]
      : []),
    ...(lost.length > 0
      ? [
          `By your results ${soundsListed(lost)} ${lost.length === 1 ? 'does' : 'do'} not come yet and ${lost.length === 1 ? 'is' : 'are'} left out. Undo brings ${lost.length === 1 ? 'it' : 'them'} back; so does a press under Harp.`,
        ]
      : []),
  ].join(' ');

const standingsOf = (results: readonly BendResults[], harp: Harp): ReadonlyMap<string, Standing> => {
  const kind = harpKind(harp);
  return new Map(
    results.flatMap((each): readonly (readonly [string, Standing])[] => {
      const standing = each.kind === kind ? figuresOf(each).standing : null;
      return standing === null ? [] : [[each.name, standing]];
    }),
  );
};

/** Keeps results, and lets them decide about the reach where the player has it so. */
const createResults = (stand: BendStand) => {
  const { store, kept, keeper, board, apply } = stand;
  const show = (change: Partial<BendsState['bends']>): void =>
    store.setState(({ bends }) => ({ bends: { ...bends, ...change } }));
  const harpNow = (): Harp => store.getState().tune.harp;
  const showStandings = (): void => {
    const { byResults } = store.getState().settings.bends;
    show({ standings: byResults ? standingsOf(shelf.items(), harpNow()) : null });
  };
  const shelf = openShelf<BendResults>({
    ...{ kept, keeper, name: 'bends', noun: 'bend result', parse: parseBendResults },
    join: joinResults,
    onChange: (results) => {
      show({ results });
      showStandings();
    },
    onNotice: board.post,
  });
  show({ results: shelf.items() });
  showStandings();
  let shown = [harpNow(), store.getState().settings.bends.byResults] as const;
  const leave = store.subscribe(({ tune, settings }) => {
    if (tune.harp === shown[0] && settings.bends.byResults === shown[1]) return;
    shown = [tune.harp, settings.bends.byResults];
    showStandings();
  });
  const resultsOfId = (name: string): BendResults | undefined => {
    const { id } = noResults(harpKind(harpNow()), name);
    return shelf.items().find((each) => each.id === id);
  };
  const decide = (standings: ReadonlyMap<string, Standing>): void => {
    const { settings } = store.getState();
    const { technique, gained, lost } = reachByResults(harpNow(), settings.technique, standings);
    if (technique === settings.technique) return;
    apply({ ...settings, technique });
    board.post({ id: 'reach', tone: 'note', text: reachSentence(gained, lost) });
  };
  return {
    resultsOf: (sound: Sound): BendResults =>
      resultsOfId(soundId(sound)) ?? noResults(harpKind(harpNow()), soundId(sound)),
    put: shelf.put,
    remove: shelf.remove,
    decide,
    next: (present: Sound | null): Sound | null =>
      nextTarget({ order: bendTargets(harpNow()), resultsOf: resultsOfId }, present),
    all: () => standingsOf(shelf.items(), harpNow()),
    dispose: () => {
      leave();
      shelf.dispose();
    },
  };
};

/** Sets bend practice to work. */
export const createBendPractice = (stand: BendStand): BendPractice => {
  const { store, apply } = stand;
  const results = createResults(stand);
  const turns = createBendTurns({
    stand,
    nextAfter: (target) => results.next(target) ?? target,
    onOutcome: ({ target, exercise }, outcome) => {
      const made =
        outcome.by === 'ear'
          ? tryOf(exercise, outcome.verdict)
          : { exercise, hit: outcome.hit, cents: null, settling: null, marked: true };
      if (made === null) return;
      const before = results.resultsOf(target);
      const after = withTry(before, made);
      results.put(after);
      const standing = figuresOf(after).standing;
      // What the player set by hand stands until results say something new.
      const news = standing !== null && standing !== figuresOf(before).standing;
      if (news && store.getState().settings.bends.byResults)
        results.decide(new Map([[soundId(target), standing]]));
    },
  });
  const { harp } = store.getState().tune;
  let kind = harpKind(harp);
  const leave = store.subscribe(({ tune, bends }) => {
    const now = harpKind(tune.harp);
    if (now === kind) return;
    kind = now;
    if (bends.turn !== null) turns.stop();
  });
  return {
    hearing: stand.ask().hearing(),
    start: turns.start,
    stop: turns.stop,
    mark: turns.mark,
    next: results.next,
    followResults: (byResults) => {
      const { settings } = store.getState();
      apply({ ...settings, bends: { ...settings.bends, byResults } });
      if (byResults) results.decide(results.all());
    },
    forget: (sound) => {
      const { tune } = store.getState();
      const sounds = sound === null ? tune.harp.sounds : [sound];
      for (const each of sounds) {
        const { id, tries } = results.resultsOf(each);
        if (tries.length > 0) results.remove(id);
      }
    },
    dispose: () => {
      leave();
      turns.dispose();
      results.dispose();
    },
  };
};
