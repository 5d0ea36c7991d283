import { createListeners } from '../listeners/listeners';
import type { MidiBytes, MidiPorts, MidiStatus, MidiTrouble } from './midi-ports';

/** What of the access is needed (Web MIDI API, W3C, “MIDIAccess”, “MIDIInput”). */
export type MidiAccess = Pick<MIDIAccess, 'inputs' | 'onstatechange'>;

/** What of the browser is needed. */
export interface MidiGround {
  /** Absent where the browser has no MIDI. */
  readonly request?: (() => Promise<MidiAccess>) | undefined;
  /** Whether the player has allowed it before, as far as the browser tells. */
  readonly granted: () => Promise<boolean>;
  /** Page time in ms, which events are stamped with (High Resolution Time, W3C). */
  readonly now: () => number;
}

/** Reasons by the name of the error ("requestMIDIAccess"). */
const REASONS: Readonly<Record<string, MidiTrouble>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotSupportedError: 'unsupported',
};

const nameOf = ({ name }: Pick<MIDIInput, 'name'>): string => name?.trim() || 'A device without a name';

/** @param now page time in ms. */
const bytesOf = ({ data, timeStamp }: MIDIMessageEvent, now: number): MidiBytes => ({
  bytes: data ?? [],
  at: timeStamp / 1000,
  age: Math.max(0, now - timeStamp) / 1000,
});

/** Everything that sends MIDI to this machine, as one. */
export const createMidiPorts = ({ request, granted, now }: MidiGround): MidiPorts => {
  const statuses = createListeners<MidiStatus>();
  const messages = createListeners<MidiBytes>();
  let status: MidiStatus = { kind: 'off' };
  let access: MidiAccess | null = null;
  /** Which opening is the latest: an answer to an earlier one, or after closing, counts no more. */
  let turn = 0;
  const set = (next: MidiStatus): MidiStatus => {
    status = next;
    statuses.tell(next);
    return next;
  };
  const listen = (from: MidiAccess): MidiStatus => {
    const before = status.kind === 'open' ? [...status.inputs, ...status.gone] : [];
    const inputs: string[] = [];
    from.inputs.forEach((port) => {
      // A port that was pulled stays in hand and is opened again when it is back, but sends nothing.
      if (port.state === 'disconnected') return;
      inputs.push(nameOf(port));
      port.onmidimessage = (event) => messages.tell(bytesOf(event, now()));
    });
    return set({ kind: 'open', inputs, gone: [...new Set(before)].filter((name) => !inputs.includes(name)) });
  };
  const deaf = (): void => {
    if (access === null) return;
    access.onstatechange = null;
    access.inputs.forEach((port) => {
      port.onmidimessage = null;
    });
    access = null;
  };
  return {
    status: () => status,
    open: async () => {
      turn += 1;
      const mine = turn;
      if (request === undefined) return set({ kind: 'trouble', why: 'unsupported', detail: '' });
      deaf();
      set({ kind: 'asking' });
      try {
        const given = await request();
        if (mine !== turn) return status;
        access = given;
        given.onstatechange = () => listen(given);
        return listen(given);
      } catch (error) {
        if (mine !== turn) return status;
        const { name = '', message = String(error) } = error instanceof Error ? error : {};
        return set({ kind: 'trouble', why: REASONS[name] ?? 'failed', detail: message });
      }
    },
    allowed: async () => request !== undefined && (await granted().catch(() => false)),
    close: () => {
      turn += 1;
      deaf();
      if (status.kind !== 'off') set({ kind: 'off' });
    },
    onStatus: statuses.add,
    onBytes: messages.add,
  };
};
