import type { MidiAccess, MidiGround } from '../../src/midi/create-midi-ports';

/** A browser's MIDI in memory, with the states of the Web MIDI API: ports come and go, and stay in hand when pulled. */
export const createFakeMidi = () => {
  const ports = new Map<string, MIDIInput>();
  const access: MidiAccess = { inputs: ports as unknown as MIDIInputMap, onstatechange: null };
  let refusal: Error | null = null;
  let asked = 0;
  let isGranted = false;
  let time = 0;
  let late = 0;
  const told = (): void => {
    access.onstatechange?.call(access as MIDIAccess, new Event('statechange') as MIDIConnectionEvent);
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
  };
  return {
    ground,
    asked: () => asked,
    grant: () => {
      isGranted = true;
    },
    refuse: (name: string) => {
      refusal = new DOMException('said no', name);
    },
    /** Plugs a device in, or in again. */
    plug: (name: string) => {
      const port = ports.get(name) ?? { name, state: 'disconnected', onmidimessage: null };
      ports.set(name, Object.assign(port, { state: 'connected' }) as MIDIInput);
      told();
    },
    /** Pulls it out; `keeps` whether the browser keeps its port in the list. */
    pull: (name: string, keeps = true) => {
      const port = ports.get(name);
      if (port !== undefined) Object.assign(port, { state: 'disconnected' });
      if (!keeps) ports.delete(name);
      told();
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
      const port = ports.get(name);
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
