import { createListeners } from '../listeners/listeners';
import type { MidiBytes, MidiPorts, MidiStatus, MidiTrouble } from './midi-ports';

/** What of the access is needed (Web MIDI API, W3C, “MIDIAccess”, “MIDIInput”, “MIDIOutput”). */
export type MidiAccess = Pick<MIDIAccess, 'inputs' | 'outputs' | 'onstatechange'>;

/** What of the browser is needed. */
export interface MidiGround {
  /** Absent where the browser has no MIDI. */
  readonly request?: (() => Promise<MidiAccess>) | undefined;
  /** Whether the player has allowed it before, as far as the browser tells. */
  readonly granted: () => Promise<boolean>;
  /** Page time in ms, which events are stamped with (High Resolution Time, W3C). */
  readonly now: () => number;
  /** Calls back when the page is left. Returns the unsubscriber. */
  readonly onLeaving: (listener: () => void) => () => void;
}

/** Reasons by the name of the error ("requestMIDIAccess"). */
const REASONS: Readonly<Record<string, MidiTrouble>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotSupportedError: 'unsupported',
};

const nameOf = ({ name }: Pick<MIDIPort, 'name'>): string => name?.trim() || 'A device without a name';

/** @param now page time in ms. */
const bytesOf = ({ data, timeStamp }: MIDIMessageEvent, now: number): MidiBytes => ({
  bytes: data ?? [],
  at: timeStamp / 1000,
  age: Math.max(0, now - timeStamp) / 1000,
});

/** A port that was pulled stays in hand, and is opened again when it is back, but nothing comes or goes. */
const isThere = ({ state }: Pick<MIDIPort, 'state'>): boolean => state !== 'disconnected';

const pluggedIn = (ports: MIDIInputMap | MIDIOutputMap): readonly string[] => {
  const names: string[] = [];
  ports.forEach((port) => {
    if (isThere(port)) names.push(nameOf(port));
  });
  return names;
};

const troubleOf = (error: unknown): MidiStatus => {
  const { name = '', message = String(error) } = error instanceof Error ? error : {};
  return { kind: 'trouble', why: REASONS[name] ?? 'failed', detail: message };
};

/** Everything that sends MIDI to this machine as one, and what it can be sent to. */
export const createMidiPorts = (ground: MidiGround): MidiPorts => new Ports(ground);

class Ports implements MidiPorts {
  private readonly ground: MidiGround;
  private readonly statuses = createListeners<MidiStatus>();
  private readonly messages = createListeners<MidiBytes>();
  private current: MidiStatus = { kind: 'off' };
  private access: MidiAccess | null = null;
  /** Which opening is the latest: an answer to an earlier one, or after closing, counts no more. */
  private turn = 0;
  readonly onStatus = this.statuses.add;
  readonly onBytes = this.messages.add;
  readonly onLeaving: MidiPorts['onLeaving'];

  constructor(ground: MidiGround) {
    this.ground = ground;
    this.onLeaving = ground.onLeaving;
  }

  status(): MidiStatus {
    return this.current;
  }

  async open(): Promise<MidiStatus> {
    this.turn += 1;
    const { turn } = this;
    const { request } = this.ground;
    if (request === undefined) return this.set({ kind: 'trouble', why: 'unsupported', detail: '' });
    this.deafen();
    this.set({ kind: 'asking' });
    try {
      const given = await request();
      if (turn !== this.turn) return this.current;
      this.access = given;
      given.onstatechange = () => this.listen(given);
      return this.listen(given);
    } catch (error) {
      return turn === this.turn ? this.set(troubleOf(error)) : this.current;
    }
  }

  async allowed(): Promise<boolean> {
    const { request, granted } = this.ground;
    return request !== undefined && (await granted().catch(() => false));
  }

  close(): void {
    this.turn += 1;
    this.deafen();
    if (this.current.kind !== 'off') this.set({ kind: 'off' });
  }

  send(...[to, messages]: Parameters<MidiPorts['send']>): void {
    this.access?.outputs.forEach((port) => {
      if (!isThere(port) || (to !== '' && nameOf(port) !== to)) return;
      try {
        for (const { bytes, at } of messages) port.send([...bytes], at);
      } catch {
        // Pulled a moment ago (InvalidStateError): the change of state that follows says so.
      }
    });
  }

  /** Ports are opened by being listened to, which is a change of state too: nothing that is known is told again. */
  private set(next: MidiStatus): MidiStatus {
    if (JSON.stringify(next) === JSON.stringify(this.current)) return this.current;
    this.current = next;
    this.statuses.tell(next);
    return next;
  }

  private listen(from: MidiAccess): MidiStatus {
    const { current } = this;
    const before = current.kind === 'open' ? [...current.inputs, ...current.outputs, ...current.gone] : [];
    from.inputs.forEach((port) => {
      if (isThere(port))
        port.onmidimessage = (event) => this.messages.tell(bytesOf(event, this.ground.now()));
    });
    const [inputs, outputs] = [pluggedIn(from.inputs), pluggedIn(from.outputs)];
    const gone = [...new Set(before)].filter((name) => !inputs.includes(name) && !outputs.includes(name));
    return this.set({ kind: 'open', inputs, outputs, gone });
  }

  private deafen(): void {
    if (this.access === null) return;
    this.access.onstatechange = null;
    this.access.inputs.forEach((port) => {
      port.onmidimessage = null;
    });
    this.access = null;
  }
}
