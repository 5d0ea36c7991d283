import { asSeconds } from '../core/theory/units';
import type { MicInput, MicTrouble, Processing } from './microphone';

/** Reasons by the name of the error (Media Capture and Streams, W3C, "getUserMedia"). */
const REASONS: Readonly<Record<string, MicTrouble>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotFoundError: 'missing',
  OverconstrainedError: 'unplugged',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

/** Why a browser gave no microphone. */
export const troubleOf = (error: unknown): MicTrouble =>
  error instanceof Error || error instanceof DOMException ? (REASONS[error.name] ?? 'failed') : 'failed';

/** Asks for a microphone as it is: without what browsers do to make speech clearer. */
export const wishesFor = (device: string | null): MediaStreamConstraints => ({
  audio: {
    ...(device === null ? {} : { deviceId: { exact: device } }),
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    channelCount: { ideal: 1 },
  },
});

const NAMES = {
  'echo cancellation': 'echoCancellation',
  'noise suppression': 'noiseSuppression',
  'automatic gain': 'autoGainControl',
} as const satisfies Readonly<Record<Processing, keyof MediaTrackSettings>>;

const isProcessing = (name: string): name is Processing => Object.hasOwn(NAMES, name);

/** Reads back what the browser gave. */
export const inputOf = (track: Pick<MediaStreamTrack, 'label' | 'getSettings'>): MicInput => {
  const settings: MediaTrackSettings & { readonly latency?: unknown } = track.getSettings();
  const { latency } = settings;
  return {
    id: settings.deviceId ?? '',
    name: track.label,
    processing: Object.keys(NAMES)
      .filter(isProcessing)
      .filter((name) => settings[NAMES[name]] !== undefined && settings[NAMES[name]] !== false),
    latency: typeof latency === 'number' && latency > 0 && latency < 1 ? asSeconds(latency) : null,
  };
};
