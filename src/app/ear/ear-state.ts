import type { Calibration } from '../../core/hearing/calibration';
import type { LevelVerdict } from '../../core/hearing/level-verdict';
import type { ChorusReport } from '../../core/takes/chorus-report';
import type { MicDevice, MicStatus } from '../../mic/microphone';
import type { Stand } from '../song/feature';
import type { Song, SongState } from '../song/song-state';

/** What is measured, in its order: the quiet room, the way of short tones, the band, the player along with it. */
export type CalibrationStep = 'quiet' | 'chirps' | 'band' | 'along';

/** The ear, as the page shows it. What changes with every note is live instead. */
export interface EarState {
  readonly ear: {
    readonly status: MicStatus;
    /** The microphones there are; those without a name were never allowed. */
    readonly devices: readonly MicDevice[];
    /** Null while nothing is listened to. */
    readonly level: LevelVerdict | null;
    /** What was heard of the last whole chorus; null before one. */
    readonly report: ChorusReport | null;
    /** What is measured now; null when nothing is. */
    readonly calibrating: CalibrationStep | null;
    /** What is known of the open microphone; null where it was never measured. */
    readonly calibration: Calibration | null;
    /** Reeds of the harp in hand whose sound is known at the open microphone. */
    readonly learnt: number;
  };
}

/** The stand, as the ear finds it. */
export type EarStand = Stand<EarState & Song>;

/** What of the page's state the ear reads. */
export type EarReads = EarState & Pick<SongState, 'settings' | 'now'>;

/** Before anybody has asked. */
export const EAR_OFF: EarState['ear'] = {
  status: { kind: 'off' },
  devices: [],
  level: null,
  report: null,
  calibrating: null,
  calibration: null,
  learnt: 0,
};
