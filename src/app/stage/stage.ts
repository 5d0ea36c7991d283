import type { FullScreen } from '../../screen/full-screen';
import type { WakeLock, Waking } from '../../screen/wake-lock';
import type { Join } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { WarmingUp } from '../warm-up/warm-up-state';
import type { StageState } from './stage-state';

export interface StageCommands {
  /** Opens the view for playing, or leaves it. */
  toggleStage(): void;
  leaveStage(): void;
}

/** The screen, as far as a page can have it. */
export interface StageDevices {
  readonly wakeLock: WakeLock;
  readonly fullScreen: FullScreen;
}

const DARK_SCREEN: Readonly<Partial<Record<Waking, string>>> = {
  refused:
    'The screen may go dark while you play: this device does not let the page keep it on. Set a longer time in its display settings, or plug it in.',
  missing:
    'The screen may go dark while you play: this browser cannot keep it on. Set a longer time in the device’s display settings.',
};

type State = StageState & Pick<SongState, 'status'> & WarmingUp;

const wantsLight = ({ stage, status, warmUp }: State): boolean =>
  stage.open || warmUp !== null || status.kind === 'playing' || status.kind === 'interrupted';

/**
 * Opens and leaves the view for playing, and keeps the screen awake while it is open or the band runs. Without a screen
 * to speak of it opens in the window.
 */
export const joinStage: Join<
  StageState,
  StageCommands,
  StageDevices | undefined,
  Pick<SongState, 'status'> & WarmingUp
> = ({ store, board }, devices) => {
  let said = false;
  const set = (change: Partial<StageState['stage']>): void =>
    store.setState(({ stage }) => ({ stage: { ...stage, ...change } }));
  const onWaking = (waking: Waking): void => {
    set({ waking });
    const text = DARK_SCREEN[waking];
    if (waking === 'held') board.dismiss('screen');
    if (text === undefined || said) return;
    said = true;
    board.post({ id: 'screen', tone: 'note', text });
  };
  const leaveStage = (): void => {
    if (!store.getState().stage.open) return;
    set({ open: false });
    devices?.fullScreen.leave();
  };
  const openStage = (): void => {
    set({ open: true });
    devices?.fullScreen.enter();
  };
  const unsubscribers = [
    devices?.wakeLock.onChange(onWaking),
    devices?.fullScreen.onLeft(leaveStage),
    store.subscribe((state) => devices?.wakeLock.want(wantsLight(state))),
  ];
  return {
    commands: {
      leaveStage,
      toggleStage: () => (store.getState().stage.open ? leaveStage() : openStage()),
    },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe?.();
      devices?.wakeLock.dispose();
    },
  };
};
