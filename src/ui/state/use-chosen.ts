import type { Settings } from '../../core/settings/settings';
import { useSelected } from './session-context';

/** A part of the choices as they are made, those that wait for the next chorus included. */
export const useChosen = <Part>(part: (settings: Settings) => Part): Part =>
  useSelected(({ waiting, settings }) => part(waiting?.settings ?? settings));
