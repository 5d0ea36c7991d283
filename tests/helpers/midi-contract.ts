import type { MidiPorts } from '../../src/midi/midi-ports';
import type { FakeMidi } from './fake-midi';

/**
 * What the program relies on in the keyboards and instruments of a machine: the thin shell over a stand-in for the
 * browser's device list, in memory and in a real browser that was handed the stand-in for its own. Each `act` is carried
 * into the browser as text: it may use nothing but its argument.
 */
export interface MidiBehaviour {
  readonly does: string;
  readonly act: (stage: MidiStage) => Promise<unknown>;
  readonly expected: unknown;
}

/** Ports that nothing was done with, and the devices behind them. */
export interface MidiStage {
  readonly ports: MidiPorts;
  readonly hardware: FakeMidi;
  /** What the ports told from the start: kinds of status, and bytes. */
  readonly told: string[];
}

/** Begins to write down what ports tell. */
export const midiStage = (ports: MidiPorts, hardware: FakeMidi): MidiStage => {
  const told: string[] = [];
  ports.onStatus(({ kind }) => told.push(kind));
  ports.onBytes(({ bytes }) => told.push([...bytes].join(' ')));
  return { ports, hardware, told };
};

export const MIDI_BEHAVIOURS: readonly MidiBehaviour[] = [
  {
    does: 'are off and ask nobody until they are opened',
    act: async ({ ports, hardware, told }) => {
      hardware.plug('Keys');
      ports.send('', [{ bytes: [0xf8], at: 0 }]);
      ports.close();
      return [ports.status(), await ports.allowed(), hardware.asked(), hardware.sent(), told];
    },
    expected: [{ kind: 'off' }, false, 0, [], []],
  },
  {
    does: 'open what is plugged in: a listener opens an input, the first message an output',
    act: async ({ ports, hardware, told }) => {
      hardware.plug('Keys');
      hardware.plugOut('Box');
      const before = [hardware.stateOf('Keys'), hardware.stateOf('Box')];
      const status = await ports.open();
      const after = [hardware.stateOf('Keys'), hardware.stateOf('Box')];
      ports.send('Box', [{ bytes: [0xf8], at: 5 }]);
      hardware.send('Keys', 0x90, 60, 1);
      return [before, status, after, hardware.stateOf('Box'), hardware.sentWhole(), told.at(-1)];
    },
    expected: [
      ['connected closed', 'connected closed'],
      { kind: 'open', inputs: ['Keys'], outputs: ['Box'], gone: [] },
      ['connected open', 'connected closed'],
      'connected open',
      [{ to: 'Box', bytes: [0xf8], at: 5 }],
      '144 60 1',
    ],
  },
  {
    does: 'miss what is pulled, bear being asked to send to it, and take it up when it is back',
    act: async ({ ports, hardware, told }) => {
      hardware.plug('Keys');
      hardware.plugOut('Box');
      await ports.open();
      ports.send('', [{ bytes: [0xf8], at: 0 }]);
      hardware.sent();
      hardware.pull('Keys');
      hardware.pull('Box');
      const away = [ports.status(), hardware.stateOf('Keys'), hardware.stateOf('Box')];
      ports.send('', [{ bytes: [0xfa], at: 0 }]);
      hardware.plugOut('Box');
      hardware.plug('Keys');
      const back = [ports.status(), hardware.stateOf('Keys'), hardware.stateOf('Box')];
      ports.send('', [{ bytes: [0xfb], at: 0 }]);
      hardware.send('Keys', 0xc0, 1);
      return [away, back, hardware.sent(), told.at(-1)];
    },
    expected: [
      [
        { kind: 'open', inputs: [], outputs: [], gone: ['Box', 'Keys'] },
        'disconnected pending',
        'disconnected pending',
      ],
      [{ kind: 'open', inputs: ['Keys'], outputs: ['Box'], gone: [] }, 'connected open', 'connected open'],
      ['fb'],
      '192 1',
    ],
  },
  {
    does: 'send to one of two by its name, or to both',
    act: async ({ ports, hardware }) => {
      hardware.plugOut('Box');
      hardware.plugOut('Other');
      await ports.open();
      ports.send('Other', [{ bytes: [0xf8], at: 0 }]);
      const one = hardware.sentWhole().map(({ to }) => to);
      ports.send('', [{ bytes: [0xf8], at: 0 }]);
      return [one, hardware.sentWhole().map(({ to }) => to)];
    },
    expected: [['Other'], ['Box', 'Other']],
  },
  {
    does: 'say why where they are refused, and can be asked again',
    act: async ({ ports, hardware }) => {
      hardware.refuse('NotAllowedError');
      const refused = await ports.open();
      return [refused.kind === 'trouble' && refused.why, hardware.asked()];
    },
    expected: ['denied', 1],
  },
  {
    does: 'hear nothing once they are closed, and an answer that comes too late opens nothing',
    act: async ({ ports, hardware, told }) => {
      hardware.plug('Keys');
      const opening = ports.open();
      ports.close();
      await opening;
      const heard = hardware.send('Keys', 0x90, 60, 1);
      await ports.open();
      ports.close();
      return [ports.status().kind, heard, hardware.send('Keys', 0x90, 60, 1), told];
    },
    expected: ['off', false, false, ['asking', 'off', 'asking', 'open', 'off']],
  },
  {
    does: 'tell the last moment before the page is left, until nobody wants it',
    act: async ({ ports, hardware }) => {
      let left = 0;
      const leave = ports.onLeaving(() => {
        left += 1;
      });
      hardware.leave();
      leave();
      hardware.leave();
      return left;
    },
    expected: 1,
  },
];
