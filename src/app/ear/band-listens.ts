import type { Playhead } from '../../core/arranger/playhead';
import type { EarStand } from './ear-state';
import type { Hearing } from './hearing';

/** Lets the band know whether the harp plays. */
export interface BandListens {
  /** To be told of the playhead once a bar. @param listening whether the microphone is open. */
  onPlayhead(position: Playhead | null, listening: boolean): void;
  dispose(): void;
}

/**
 * Tells the band bar by bar whether the harp was heard in the bar before: its chords thin out for who plays and answer who
 * rests. Does nothing unless that was asked for.
 */
export const createBandListens = (
  { store, orders }: Pick<EarStand, 'store' | 'orders'>,
  hearing: Pick<Hearing, 'onNote'>,
): BandListens => {
  const sounding = new Set<number>();
  let heard = false;
  const leave = hearing.onNote(({ note }) => {
    heard = true;
    if (note.to === null) sounding.add(note.id);
    else sounding.delete(note.id);
  });
  const tell = (harpHeard: 'plays' | 'rests' | null): void => {
    if ((store.getState().harpHeard ?? null) === harpHeard) return;
    store.setState({ harpHeard });
    orders.follow();
  };
  return {
    onPlayhead: (position, listening) => {
      const { settings } = store.getState();
      if (position === null || !listening) sounding.clear();
      const plays = heard || sounding.size > 0;
      heard = false;
      if (position === null || !listening || !settings.bandListens) tell(null);
      else if (position.section.kind === 'chorus') tell(plays ? 'plays' : 'rests');
    },
    dispose: leave,
  };
};
