import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMidi } from '../../../src/core/midi/midi-message';
import { actionOf, type Pedal, pressOf, withPedal } from '../../../src/core/midi/pedals';
import { soakRuns } from '../../helpers/soak';

// MIDI 1.0 Detailed Specification (MMA), tables I to III: status bytes and how many data bytes each has.
describe('MIDI bytes', () => {
  it.each([
    ['a key on channel 1', [0x90, 60, 100], [{ kind: 'on', channel: 1, key: 60, velocity: 100 }]],
    ['velocity 0 lets a key go', [0x95, 60, 0], [{ kind: 'off', channel: 6, key: 60 }]],
    ['a key let go with velocity', [0x80, 61, 64], [{ kind: 'off', channel: 1, key: 61 }]],
    ['a pedal', [0xb0, 64, 127], [{ kind: 'control', channel: 1, controller: 64, value: 127 }]],
    ['a program', [0xcf, 4], [{ kind: 'program', channel: 16, program: 4 }]],
    ['pressure and wheel, which say nothing here', [0xa0, 60, 9, 0xd0, 9, 0xe0, 0, 64], []],
    [
      'running status',
      [0x90, 60, 100, 64, 100, 60, 0],
      [
        { kind: 'on', channel: 1, key: 60, velocity: 100 },
        { kind: 'on', channel: 1, key: 64, velocity: 100 },
        { kind: 'off', channel: 1, key: 60 },
      ],
    ],
    [
      'a clock in the middle of a message',
      [0x90, 60, 0xf8, 100],
      [{ kind: 'on', channel: 1, key: 60, velocity: 100 }],
    ],
    [
      'system exclusive, passed over',
      [0xf0, 0x7e, 1, 2, 3, 0xf7, 0xc0, 1],
      [{ kind: 'program', channel: 1, program: 1 }],
    ],
    [
      'song position ends running status',
      [0x90, 60, 1, 0xf2, 1, 2, 60, 1],
      [{ kind: 'on', channel: 1, key: 60, velocity: 1 }],
    ],
    ['cut short', [0x90, 60], []],
    ['data without a status', [60, 100], []],
  ] as const)('are read: %s', (_, bytes, messages) => {
    expect(readMidi(bytes)).toEqual(messages);
  });

  it('never throw, and give only what MIDI can say', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => {
        for (const message of readMidi(bytes)) {
          const { kind, channel, ...values } = message;
          expect(channel).toBeGreaterThan(0);
          expect(channel).toBeLessThan(17);
          for (const value of Object.values(values)) expect(value).toBeLessThan(128);
        }
      }),
      { numRuns: soakRuns(4) },
    );
  });
});

describe('pedals', () => {
  const control = (value: number) => ({ kind: 'control', channel: 1, controller: 64, value }) as const;

  it('are pressed once, however they move while they are down', () => {
    let down: ReadonlySet<string> = new Set();
    const presses = [0, 40, 64, 90, 127, 70, 10, 127, 0].map((value) => {
      const press = pressOf(control(value), down);
      down = press.down;
      return press.sign !== null;
    });
    expect(presses).toEqual([false, false, true, false, false, false, false, true, false]);
  });

  it('do one thing each, and a thing is done by one', () => {
    const first: Pedal = { kind: 'control', channel: 1, number: 64, action: 'play' };
    const other: Pedal = { ...first, number: 67, action: 'next song' };
    const both = withPedal(withPedal([], first), other);
    expect(actionOf(both, { kind: 'control', channel: 1, number: 64 })).toBe('play');
    expect(actionOf(both, { kind: 'control', channel: 2, number: 64 })).toBeNull();
    const moved = withPedal(both, { ...first, action: 'next song' });
    expect(moved).toEqual([{ ...first, action: 'next song' }]);
  });
});
