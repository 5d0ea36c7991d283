import type { DrumLane } from '../score/drum-kit';
import type { Kit } from '../score/voices';

/**
 * Velocities of the marks g (ghost), o (soft), x, X (accent) per lane: kick 80–100, backbeat 95–115, ghosts 20–40,
 * ride 70–90, feathered kick 30–45 (common practice, no source).
 */
export const STROKES: Readonly<Record<DrumLane, Readonly<Record<string, number>>>> = {
  kick: { g: 38, o: 62, x: 86, X: 98 },
  stick: { g: 30, o: 50, x: 78, X: 92 },
  snare: { g: 30, o: 50, x: 80, X: 100 },
  slap: { g: 34, o: 54, x: 80, X: 98 },
  swirl: { g: 30, o: 42, x: 54, X: 62 },
  low: { g: 40, o: 60, x: 84, X: 100 },
  mid: { g: 40, o: 60, x: 82, X: 98 },
  high: { g: 40, o: 58, x: 80, X: 96 },
  hat: { g: 38, o: 56, x: 72, X: 86 },
  open: { g: 40, o: 54, x: 68, X: 82 },
  foot: { g: 34, o: 44, x: 58, X: 70 },
  crash: { g: 56, o: 70, x: 86, X: 100 },
  ride: { g: 46, o: 62, x: 74, X: 86 },
  bell: { g: 44, o: 58, x: 70, X: 82 },
};

/** Share of a beat each lane's note lasts in the score; one-shots ring by themselves. */
export const STROKE_LENGTH: Readonly<Partial<Record<DrumLane, number>>> = {
  crash: 1.9,
  ride: 0.5,
  bell: 0.5,
  open: 0.45,
  swirl: 1.8,
};

/** What brushes strike where sticks would: taps for the hat, slaps for backbeats (General MIDI 2 brush kit: 38 tap, 39 slap, 40 swirl; from memory). */
export const laneForKit = (kit: Kit, lane: DrumLane, mark: string): DrumLane => {
  if (kit === 'sticks') return lane;
  if (lane === 'hat' || lane === 'open') return 'snare';
  if (lane === 'stick') return 'slap';
  if (lane === 'snare' && mark === 'X') return 'slap';
  return lane;
};

/** Share of the stick velocity that brushes give a lane they strike instead. */
export const BRUSH_STRENGTH: Readonly<Partial<Record<DrumLane, number>>> = {
  hat: 0.55,
  open: 0.6,
  ride: 0.85,
  bell: 0.8,
  crash: 0.7,
};
