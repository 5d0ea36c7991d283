/** Why no keyboard can be heard. */
export type MidiTrouble =
  /** The browser has no MIDI, or gives it to no page like this one (not served securely). */
  | 'unsupported'
  /** The player or the system said no. */
  | 'denied'
  | 'failed';

/** Whether keyboards and pedals are listened to, and what keeps the page from it. */
export type MidiStatus =
  | { readonly kind: 'off' }
  /** The browser asks the player. */
  | { readonly kind: 'asking' }
  /** Names of what is plugged in; `gone` of what was unplugged since, and is taken up again when it is back. */
  | {
      readonly kind: 'open';
      readonly inputs: readonly string[];
      readonly outputs: readonly string[];
      readonly gone: readonly string[];
    }
  | { readonly kind: 'trouble'; readonly why: MidiTrouble; readonly detail: string };

/** A message as it came. */
export interface MidiBytes {
  readonly bytes: Iterable<number>;
  /** When the device sent it, in seconds of page time. */
  readonly at: number;
  /** Seconds gone by since then, as far as the browser tells. */
  readonly age: number;
}

/** A message to be sent. */
export interface TimedBytes {
  readonly bytes: readonly number[];
  /** Page time in ms at which it is to go out; what is past goes out at once. */
  readonly at: number;
}

/** Keyboards, pedals and instruments on this machine. No method throws. */
export interface MidiPorts {
  status(): MidiStatus;
  /** Asks the browser for them and listens to all. Resolves with the status that came of it. */
  open(): Promise<MidiStatus>;
  /** Whether opening would ask nobody. */
  allowed(): Promise<boolean>;
  /** Listens no longer; idempotent. */
  close(): void;
  onStatus(listener: (status: MidiStatus) => void): () => void;
  /** Sends to the instruments of a name, or with an empty one to all; what is not plugged in gets nothing. */
  send(to: string, messages: readonly TimedBytes[]): void;
  /** Called when the page is left: the last moment to send something. Returns the unsubscriber. */
  onLeaving(listener: () => void): () => void;
  onBytes(listener: (message: MidiBytes) => void): () => void;
}
