import type { BandStatus } from '../../audio/band/band';
import { noteNames } from '../../core/theory/other-names';
import { keyName } from '../../core/theory/pitch';
import type { MediaAction, MediaKeys, MediaState } from '../../screen/media-keys';
import type { SetRunCommands } from '../book/set-run';
import type { Join } from '../song/feature';
import type { PlayCommands } from '../song/play-commands';
import type { SongState } from '../song/song-state';

type Asks = Pick<PlayCommands, 'play' | 'stop' | 'pause'> & Pick<SetRunCommands, 'nextSong' | 'previousSong'>;

const stateOf = ({ kind }: BandStatus): MediaState => {
  if (kind === 'playing') return 'playing';
  return kind === 'paused' || kind === 'interrupted' ? 'paused' : 'none';
};

/** Media keys and the lock screen play, pause and stop the band, and turn the songs of a set, while it is under way. */
export const joinMediaKeys: Join<object, object, MediaKeys | undefined, SongState, Asks> = (
  { store, band, ask },
  keys,
) => {
  const show = (): void => {
    const { tune, settings } = store.getState();
    const names = noteNames(settings.noteNames);
    keys?.show(stateOf(band.status()), {
      title: `${tune.chart.title} in ${names.key(tune.chart.tonic)}`,
      by: names.key(`${keyName(tune.harp.key, 'major')} harp`),
    });
  };
  const answer = (action: MediaAction): void => {
    const commands = ask();
    const isPaused = band.status().kind === 'paused';
    const answers: Readonly<Record<MediaAction, () => void>> = {
      play: () => (isPaused ? commands.pause() : void commands.play()),
      pause: () => void (isPaused || commands.pause()),
      stop: commands.stop,
      nexttrack: commands.nextSong,
      previoustrack: commands.previousSong,
    };
    answers[action]();
  };
  let { tune, settings } = store.getState();
  const ending = [
    keys?.onAction(answer),
    store.subscribe((state) => {
      if (state.tune === tune && state.settings.noteNames === settings.noteNames) return;
      ({ tune, settings } = state);
      show();
    }),
  ];
  return {
    commands: {},
    onStatus: show,
    dispose: () => {
      for (const end of ending) end?.();
      keys?.dispose();
    },
  };
};
