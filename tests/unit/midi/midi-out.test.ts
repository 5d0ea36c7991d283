import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CLOCK_AT_REST, clockAt, clockStopped } from '../../../src/core/midi/out-clock';
import {
  channelOf,
  noteMessage,
  outChoices,
  PULSE_TICKS,
  silenceMessages,
  songPosition,
} from '../../../src/core/midi/out-messages';
import { soakRuns } from '../../helpers/soak';

const hex = (bytes: readonly number[]): string => bytes.map((byte) => byte.toString(16)).join(' ');

// MIDI 1.0 Detailed Specification (MMA), tables II, III, V and VI.
describe('messages for an instrument outside', () => {
  it('are a status byte and data bytes below 128', () => {
    const note = { at: 0, part: 'bass', pitch: 43, velocity: 90 } as const;
    expect(hex(noteMessage({ ...note, kind: 'on' }))).toBe('90 2b 5a');
    expect(hex(noteMessage({ ...note, kind: 'off' }))).toBe('80 2b 40');
    // A note struck with velocity 0 would be one let go.
    expect(hex(noteMessage({ ...note, kind: 'on', velocity: 0.2, pitch: 200 }))).toBe('90 7f 1');
    // General MIDI 1: percussion on channel 10.
    expect(hex(noteMessage({ ...note, kind: 'on', part: 'drums', pitch: 42 }))).toBe('99 2a 5a');
    expect(channelOf('drums')).toBe(10);
    // All notes off and all sound off are channel mode messages 123 and 120.
    expect(silenceMessages([1, 10, 1]).map(hex)).toEqual(['b0 7b 0', 'b0 78 0', 'b9 7b 0', 'b9 78 0']);
  });

  it('have song positions of fourteen bits, the low seven first, counted in sixteenths', () => {
    expect(hex(songPosition(0))).toBe('f2 0 0');
    // Twelve bars of 4/4: 192 sixteenths, 1 · 128 + 64.
    expect(hex(songPosition(192))).toBe('f2 40 1');
    expect(hex(songPosition(99_999))).toBe('f2 7f 7f');
  });

  it('are chosen by words of which strange ones are passed over', () => {
    expect(outChoices(['drums', 'clock', 'x', 'click', 'clock'])).toEqual(['clock', 'drums']);
  });
});

/** A pulse so many pulses into a section. */
const pulse = (index: number, at: number, countsIn = false) =>
  ({ kind: 'pulse', at: 0, section: { index, countsIn }, ticks: at * PULSE_TICKS }) as const;

/** What a follower, as the specification has it, would know: whether it runs, and at which pulse it stands. */
const follow = () => {
  let runs = false;
  let next = 0;
  let heard = 0;
  return {
    take: (bytes: readonly number[]): void => {
      const [status = 0, low = 0, high = 0] = bytes;
      if (status === 0xfa) [runs, next] = [true, 0];
      if (status === 0xfb) runs = true;
      if (status === 0xfc) runs = false;
      if (status === 0xf2) next = 6 * (low + 128 * high);
      if (status !== 0xf8 || !runs) return;
      heard = next;
      next += 1;
    },
    runs: () => runs,
    heard: () => heard,
  };
};

describe('the clock', () => {
  const play = (pulses: readonly ReturnType<typeof pulse>[]) => {
    let clock = CLOCK_AT_REST;
    return pulses.map((each) => {
      const step = clockAt(clock, each);
      clock = step.clock;
      return step.messages.map(hex).join(', ');
    });
  };

  it('lets the tempo be found while the band counts in, and starts with the song', () => {
    expect(play([pulse(0, 94, true), pulse(0, 95, true), pulse(1, 0), pulse(1, 1)])).toEqual([
      ...['f8', 'f8', 'fa, f8', 'f8'],
    ]);
  });

  it('goes on from one section into the next', () => {
    expect(play([pulse(0, 0), pulse(0, 1), pulse(1, 0), pulse(1, 1)]).slice(2)).toEqual(['f8', 'f8']);
  });

  it('is told where the band is after a jump, at the next sixteenth', () => {
    const told = play([pulse(0, 0), pulse(0, 1), pulse(0, 100), pulse(0, 101), pulse(0, 102), pulse(0, 103)]);
    expect(told.slice(2)).toEqual(['fc, f8', 'f8', 'f2 11 0, fb, f8', 'f8']);
  });

  it('stops with the band, and goes on from there after a pause, from the beginning after a stop', () => {
    const { clock } = clockAt(CLOCK_AT_REST, pulse(0, 0));
    const paused = clockStopped(clock, false);
    expect(paused.messages.map(hex)).toEqual(['fc']);
    expect(clockStopped(paused.clock, false).messages).toEqual([]);
    expect(clockAt(paused.clock, pulse(0, 24)).messages.map(hex)).toEqual(['f2 4 0', 'fb', 'f8']);
    const over = clockStopped(clock, true);
    expect(clockAt(over.clock, pulse(0, 0)).messages.map(hex)).toEqual(['fa', 'f8']);
  });

  it('leads whoever follows it to the band’s own pulse, wherever the band jumps', () => {
    const run = fc.record({ at: fc.nat({ max: 400 }), pulses: fc.integer({ min: 1, max: 40 }) });
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 8 }), (runs) => {
        const follower = follow();
        let clock = CLOCK_AT_REST;
        const astray: string[] = [];
        for (const { at, pulses } of runs) {
          for (let i = 0; i < pulses; i += 1) {
            const step = clockAt(clock, pulse(0, at + i));
            clock = step.clock;
            for (const bytes of step.messages) follower.take(bytes);
            if (follower.runs() && follower.heard() !== at + i)
              astray.push(`${follower.heard()} for ${at + i}`);
            // At the latest it is back after a sixteenth.
            if (i >= 6 && !follower.runs()) astray.push(`still at ${at + i}`);
          }
        }
        expect(astray).toEqual([]);
      }),
      { numRuns: soakRuns(60) },
    );
  });
});
