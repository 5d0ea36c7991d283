import type { MidiAccess, MidiGround } from '../../src/midi/create-midi-ports';

/** A message as it went out. */
export interface Sent {
  readonly to: string;
  readonly bytes: readonly number[];
  readonly at: number;
}

type Port = Pick<MIDIPort, 'name' | 'type' | 'state' | 'connection'>;

/**
 * A browser's MIDI in memory, with the states of the Web MIDI API (W3C, “MIDIPort”): a port is connected or disconnected,
 * and closed until a listener or a first message opens it; pulled while it is open it is pending, and open again when it
 * is back. Every change of either is an event. A port that was pulled stays in hand.
 */
export const createFakeMidi = () => {
  const inputs = new Map<string, MIDIInput>();
  const outputs = new Map<string, MIDIOutput>();
  const access: MidiAccess = {
    inputs: inputs as unknown as MIDIInputMap,
    outputs: outputs as unknown as MIDIOutputMap,
    onstatechange: null,
  };
  const sent: Sent[] = [];
  const leaving = new Set<() => void>();
  let refusal: Error | null = null;
  let asked = 0;
  let isGranted = false;
  let time = 0;
  let late = 0;
  const told = (): void => {
    access.onstatechange?.call(access as MIDIAccess, new Event('statechange') as MIDIConnectionEvent);
  };
  const change = (port: Port | undefined, made: Partial<Port>): void => {
    if (port === undefined) return;
    Object.assign(port, made);
    told();
  };
  const open = (port: Port): void => {
    if (port.connection === 'closed') change(port, { connection: 'open' });
  };
  const newInput = (name: string): MIDIInput => {
    let listener: MIDIInput['onmidimessage'] = null;
    const port = {
      ...{ name, type: 'input', state: 'disconnected', connection: 'closed' },
      get onmidimessage() {
        return listener;
      },
      // Setting a listener opens the port (“onmidimessage”).
      set onmidimessage(next: MIDIInput['onmidimessage']) {
        listener = next;
        if (next !== null) open(port as unknown as Port);
      },
    };
    return port as unknown as MIDIInput;
  };
  const newOutput = (name: string): MIDIOutput => {
    const port = {
      ...{ name, type: 'output', state: 'disconnected', connection: 'closed' },
      // Sending opens the port; one that is not there refuses (“send”).
      send: (bytes: Iterable<number>, at = 0) => {
        if (port.state === 'disconnected') throw new DOMException('not there', 'InvalidStateError');
        open(port as unknown as Port);
        sent.push({ to: name, bytes: [...bytes], at });
      },
    };
    return port as unknown as MIDIOutput;
  };
  const connect = (port: Port): void =>
    change(port, {
      state: 'connected',
      connection: port.connection === 'pending' ? 'open' : port.connection,
    });
  const disconnect = (port: Port | undefined): void =>
    change(port, {
      state: 'disconnected',
      connection: port?.connection === 'open' ? 'pending' : (port?.connection ?? 'closed'),
    });
  const plugIn = <Each extends MIDIPort>(
    ports: Map<string, Each>,
    name: string,
    make: (name: string) => Each,
  ): void => {
    const port = ports.get(name) ?? make(name);
    ports.set(name, port);
    connect(port);
  };
  const ground: MidiGround = {
    request: async () => {
      asked += 1;
      if (refusal !== null) throw refusal;
      isGranted = true;
      return access;
    },
    granted: async () => isGranted,
    now: () => time,
    onLeaving: (listener) => {
      leaving.add(listener);
      return () => leaving.delete(listener);
    },
  };
  return {
    ground,
    access,
    asked: () => asked,
    grant: () => {
      isGranted = true;
    },
    refuse: (name: string) => {
      refusal = new DOMException('said no', name);
    },
    /** Plugs a device in, or in again. */
    plug: (name: string) => plugIn(inputs, name, newInput),
    /** Plugs an instrument in that can be sent to. */
    plugOut: (name: string) => plugIn(outputs, name, newOutput),
    /** Pulls it out; `keeps` whether the browser keeps its port in the list. */
    pull: (name: string, keeps = true) => {
      const ports = [inputs.get(name), outputs.get(name)];
      if (!keeps) for (const all of [inputs, outputs]) all.delete(name);
      for (const port of ports) disconnect(port);
      told();
    },
    /** State and connection of a port. */
    stateOf: (name: string): string => {
      const port = inputs.get(name) ?? outputs.get(name);
      return port === undefined ? 'none' : `${port.state} ${port.connection}`;
    },
    /** What went out since it was asked last: as hexadecimal bytes, or whole. */
    sent: (): readonly string[] =>
      sent.splice(0).map(({ bytes }) => bytes.map((byte) => byte.toString(16)).join(' ')),
    sentWhole: (): readonly Sent[] => sent.splice(0),
    /** Leaves the page. */
    leave: () => {
      for (const listener of leaving) listener();
    },
    /** Lets page time go by, in ms. */
    pass: (milliseconds: number) => {
      time += milliseconds;
    },
    /** Lets messages come so many ms after they were sent. */
    delay: (milliseconds: number) => {
      late = milliseconds;
    },
    /** Sends bytes as a device does, stamped with the time they are sent at; whether anybody listens. */
    send: (name: string, ...bytes: readonly number[]): boolean => {
      const port = inputs.get(name);
      const listener = port?.onmidimessage;
      if (port === undefined || !listener || port.state === 'disconnected') return false;
      listener.call(port, {
        data: Uint8Array.from(bytes),
        timeStamp: time - late,
      } as unknown as MIDIMessageEvent);
      return true;
    },
  };
};

export type FakeMidi = ReturnType<typeof createFakeMidi>;
