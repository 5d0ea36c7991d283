import type { Playhead } from '../../core/arranger/playhead';
import { chorusFigures, chorusVerdict } from '../../core/log/chorus-figures';
import { fadeAfter, hiddenTone } from '../../core/practice/fading';
import { type ChorusOutcome, climb, type LadderPlace } from '../../core/practice/tempo-ladder';
import { TEMPO_RANGE } from '../../core/settings/tempo';
import { asBpm } from '../../core/theory/units';
import type { EarState } from '../ear/ear-state';
import type { Join, Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { type ChorusesState, NO_CHORUSES, type PlayedChorus } from './choruses-state';

/** What the page can ask for about choruses that are over. */
export interface ChorusCommands {
  /** Says how the last chorus was, where no ear has. */
  markChorus(outcome: Exclude<ChorusOutcome, null>): void;
  /** Shows all that has faded again; it fades anew from there. */
  showAgain(): void;
}

type Reads = Song & EarState;

/** What the ear has heard of a chorus; null where it did not listen, or too little was played. */
const heardOutcome = ({ ear }: Reads, chorus: number): ChorusOutcome =>
  ear.report?.chorus === chorus ? chorusVerdict(chorusFigures(ear.report.heard)) : null;

/** Tells whole choruses from those that were broken off. */
const createChorusWatch = (onWhole: (chorus: number) => void) => {
  let now: { readonly chorus: number; readonly lastBar: boolean } | null = null;
  return {
    follow: (position: Playhead | null): void => {
      const before = now;
      const section = position?.section;
      now =
        section?.kind === 'chorus'
          ? { chorus: section.chorus, lastBar: position?.bar === section.chart.bars.length - 1 }
          : null;
      if (before?.lastBar && before.chorus !== now?.chorus && position !== null) onWhole(before.chorus);
    },
    forget: (): void => {
      now = null;
    },
  };
};

const createMoves = ({ store, apply }: Stand<ChorusesState & Reads>) => {
  const show = (change: Partial<ChorusesState['choruses']>): void =>
    store.setState(({ choruses }) => ({ choruses: { ...choruses, ...change } }));
  const climbTo = (place: LadderPlace): void => {
    const { settings } = store.getState();
    show({ place });
    if (place.tempo !== settings.tempo) apply({ ...settings, tempo: asBpm(place.tempo) });
  };
  return { show, climbTo };
};

/** What comes of choruses: the tempo ladder climbs, and what is to be known by heart fades. */
export const joinChoruses: Join<ChorusesState, ChorusCommands, undefined, Reads> = (stand) => {
  const { store } = stand;
  const state = store.getState;
  const { show, climbTo } = createMoves(stand);
  /** The place the last chorus was played from, so that a mark given later counts from there. */
  let from: LadderPlace = NO_CHORUSES.place;
  let fadedFrom = NO_CHORUSES.fade;
  const conclude = (last: PlayedChorus): void => {
    const { settings } = state();
    show({
      last,
      fade: settings.fromMemory ? fadeAfter(fadedFrom, last.outcome) : 'nothing',
      tone: hiddenTone(settings.style.seed, last.number + 1),
    });
    if (settings.ladder.by === 'off') return;
    // The player may have chosen another tempo since: that one counts.
    climbTo(climb(settings.ladder, from, last.outcome, TEMPO_RANGE.low));
  };
  const watch = createChorusWatch((number) => {
    const { settings, choruses } = state();
    const { tempo } = settings;
    from = { tempo, since: choruses.place.tempo === tempo ? choruses.place.since : 0 };
    fadedFrom = choruses.fade;
    conclude({ number, tempo, outcome: heardOutcome(state(), number), bySelf: false });
  });
  return {
    commands: {
      markChorus: (outcome) => {
        const { last } = state().choruses;
        if (last !== null) conclude({ ...last, outcome, bySelf: true });
      },
      showAgain: () => {
        fadedFrom = 'nothing';
        show({ fade: 'nothing' });
      },
    },
    onPlayhead: (position) => {
      if (state().warmUp === null) watch.follow(position);
    },
    onStatus: ({ kind }) => {
      if (kind === 'paused' || kind === 'interrupted' || kind === 'playing') return;
      watch.forget();
      show({ ...NO_CHORUSES, place: { tempo: state().settings.tempo, since: 0 } });
    },
  };
};
