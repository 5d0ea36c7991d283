import { useSelected } from '../state/session-context';

/** Whether what is heard is shown now: not while the band plays where the player wants to see it afterwards. */
export const useEarShown = (): boolean =>
  useSelected(
    ({ ear, settings, status }) =>
      (ear.status.kind === 'listening' || ear.status.kind === 'silent') &&
      (settings.earShows === 'playing' || status.kind !== 'playing'),
  );
