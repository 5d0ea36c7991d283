import type { LevelVerdict } from '../../core/hearing/level-verdict';
import type { MicDevice, MicStatus } from '../../mic/microphone';
import type { SongState } from '../song/song-state';
import type { ChorusReport } from './chorus-report';

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
  };
}

/** What of the page's state the ear reads. */
export type EarReads = EarState & Pick<SongState, 'settings' | 'now'>;

/** Before anybody has asked. */
export const EAR_OFF: EarState['ear'] = { status: { kind: 'off' }, devices: [], level: null, report: null };
