import type { PartId } from './score';

/** What the parts are called. */
export const PART_NAMES: Readonly<Record<PartId, string>> = {
  drums: 'Drums',
  bass: 'Bass',
  chords: 'Chords',
  second: 'Second chords',
  lead: 'Lead',
  click: 'Click',
};
