import type { Band } from '../../audio/band/band';
import type { Sound } from '../../core/harp/harp';
import type { Settings } from '../../core/settings/settings';
import { withTake } from '../../core/song/another-take';
import { audibleSoundOf } from '../../core/song/song-program';
import { restingViews } from '../../core/song/views';
import { asSeconds, type Midi } from '../../core/theory/units';
import type { NoticeBoard } from '../keeping/notice-board';
import type { Slice } from '../slice';
import { type BandOrders, isUnderWay } from './band-orders';
import type { Song, SongState } from './song-state';
import { statusNotice } from './status-notice';

/** What the page can ask for: playing. */
export interface PlayCommands {
  play(): Promise<void>;
  stop(): void;
  toggle(): void;
  /** Pauses the band, or lets it go on from the bar it was paused in; a warm-up is not paused. */
  pause(): void;
  /** Mutes all of the band, or lets it be heard again. */
  mute(on: boolean): void;
  moveTo(bar: number): void;
  moveBy(bars: number): void;
  /** The chorus being heard becomes the last, with an ending. */
  lastTime(on: boolean): void;
  /** Lets a sound be heard; a bend glides down from its natural note. */
  listen(sound: Sound): void;
  /** Lets a pitch be heard, whether the harp has it or not. */
  listenTo(pitch: Midi): void;
  dismiss(notice: string): void;
}

/** Seconds a single sound is held when the player asks to hear it. */
const LISTEN_SECONDS = 1.2;

interface Needs {
  readonly store: Slice<Song, SongState>;
  readonly band: Band;
  readonly orders: BandOrders;
  readonly board: NoticeBoard;
  /** Called before the band begins anew. */
  readonly takeUpRecorded: () => void;
  /** Carries out what nobody chose: the take of this Play. */
  readonly follow: (make: (settings: Settings) => Settings) => void;
  readonly endWarmUp: () => void;
  readonly skipWarmUpStep: () => void;
}

/** The commands that play, stop and move. */
export const createPlayCommands = ({
  store,
  band,
  orders,
  board,
  takeUpRecorded,
  follow,
  endWarmUp,
  skipWarmUpStep,
}: Needs): PlayCommands => {
  const state = store.getState;
  const stop = (): void => {
    if (state().warmUp !== null) endWarmUp();
    band.stop();
  };
  const play = async (): Promise<void> => {
    if (band.status().kind === 'interrupted') return goOn();
    if (state().warmUp !== null) return skipWarmUpStep();
    takeUpRecorded();
    if (!state().settings.sameTake) follow((settings) => withTake(settings, orders.nextTake()));
    await orders.play(state().cursor);
    tellTrouble();
  };
  const goOn = async (): Promise<void> => {
    await band.resume();
    tellTrouble();
  };
  const tellTrouble = (): void => {
    // Told once more even where nothing has changed: the player has just asked.
    const notice = statusNotice(band.status());
    if (notice) board.post(notice);
  };
  const moveTo = (bar: number): void => {
    const { tune, cursor } = state();
    const bars = tune.chart.bars.length;
    const to = ((bar % bars) + bars) % bars;
    if (isUnderWay(band)) {
      band.seek(to);
      store.setState({ cursor: to });
    } else if (to !== cursor) {
      store.setState(restingViews(tune, to));
    }
  };
  return {
    play,
    stop,
    toggle: () => {
      const { kind } = band.status();
      if (kind === 'playing' || kind === 'paused' || (kind !== 'interrupted' && state().warmUp !== null))
        stop();
      else void play();
    },
    pause: () => {
      if (state().warmUp !== null) return;
      if (band.status().kind === 'paused') void goOn();
      else band.pause();
    },
    mute: (muted) => {
      store.setState({ muted });
      band.setSound(audibleSoundOf(state()));
    },
    moveTo,
    moveBy: (bars) => moveTo((state().now.formBar ?? state().cursor) + bars),
    lastTime: (on) => {
      const playhead = band.playhead();
      store.setState({ lastChorus: on && playhead !== null ? playhead.section.chorus : null });
      orders.follow();
    },
    listen: ({ pitch, bend }) => void band.audition('lead', pitch, asSeconds(LISTEN_SECONDS), bend),
    listenTo: (pitch) => void band.audition('lead', pitch, asSeconds(LISTEN_SECONDS), 0),
    dismiss: board.dismiss,
  };
};
