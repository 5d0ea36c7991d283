import { asEpochMs, type EpochMs } from '../../core/theory/units';

/** The player's own clock. */
export interface WallClock {
  now(): EpochMs;
  /** The day as the player has it: `2026-11-25`. */
  day(): string;
}

/** The clock of this machine. */
export const wallClock: WallClock = {
  now: () => asEpochMs(Date.now()),
  day: () => {
    const now = new Date();
    const two = (value: number): string => String(value).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  },
};
