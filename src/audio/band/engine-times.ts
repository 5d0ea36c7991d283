/** How far the engine looks ahead, and how long it waits. */

/** Music that must be ready before the first beat, in seconds. */
export const READY_AHEAD = 2;
/**
 * Longest waits for it, in ms: at the start; while the old music goes on; and while the old instruments do, which the
 * window still holds notes of for a while.
 */
export const WAIT = { start: 1500, change: 150, instruments: 1200 };
/** From the call to the first note: covers the audio thread's lead, and handing over the first notes. */
export const LEAD = 0.06;
/** Most that a part is pushed and placed ahead of the beat, in seconds; what has begun earlier is taken up where it is. */
export const MOST_AHEAD = 0.08;
/** The mixer's gate is shut this long after it was told to, in seconds; then sources can end unheard. */
export const CLOSED_AFTER = 0.03;
/** How often the transport looks ahead, in ms. */
export const PULSE_MS = 100;
/** Changes closer than this are taken over together, so that dragging the tempo does not stutter. */
export const CHANGE_EVERY_MS = 80;

/** Waits, in ms. */
export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));
