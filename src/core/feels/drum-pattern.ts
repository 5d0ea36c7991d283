import type { DrumLane } from '../score/drum-kit';

/**
 * A drum pattern: what each lane plays in four-beat bars, `|` bar line, one mark a step: g ghost, o soft, x played,
 * X accent, ? a ghost now and then, ! a full stroke now and then, . rest.
 */
export type DrumPattern = Readonly<Partial<Record<DrumLane, string>>>;
