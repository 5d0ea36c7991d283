import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createBarCaller } from '../../../../src/audio/transport/bar-caller';
import { placeSection, type Timeline } from '../../../../src/audio/transport/timeline';
import { plainProgram, plainSections } from '../../../helpers/plain-sections';

const program = plainProgram(2, 120);
const [count, chorus] = [plainSections(program, 0, 0), plainSections(program, 1, 0)];
if (count === null || chorus === null) throw new Error('the plain program has both');
/** A count-in from 10 to 12 s, two bars of chorus to 16 s. */
const timeline: Timeline = [placeSection(count, 10), placeSection(chorus, 12)];

describe('calling bars', () => {
  let heard = 0;
  let started = 0;
  beforeEach(() => {
    vi.useFakeTimers();
    started = Date.now();
    heard = 9.9;
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  const rig = (every: number) => {
    const calls: (string | null)[] = [];
    const caller = createBarCaller({
      outputTime: () => heard + (Date.now() - started) / 1000,
      timeline: () => timeline,
      call: (position) => {
        const late =
          heard +
          (Date.now() - started) / 1000 -
          (position ? [10, 12, 14][position.section.index + position.bar] : 0);
        calls.push(
          position && `${position.section.kind} ${position.bar} ${late < 0.005 ? 'in time' : 'late'}`,
        );
      },
    });
    const pulse = setInterval(() => caller.look(), every);
    return { calls, caller, end: () => clearInterval(pulse) };
  };

  it('calls every bar once, at its beginning', () => {
    const { calls, caller, end } = rig(97);
    vi.advanceTimersByTime(8000);
    end();
    caller.stop();
    caller.stop();
    expect(calls).toEqual(['count-in 0 late', 'chorus 0 in time', 'chorus 1 in time', null]);
  });

  it('leaves out what went by while nobody looked', () => {
    const { calls, end } = rig(4500);
    vi.advanceTimersByTime(5000);
    end();
    expect(calls).toEqual(['chorus 1 late']);
  });

  it('has nothing to say before the music', () => {
    const { calls, caller, end } = rig(50);
    caller.look();
    caller.stop();
    end();
    expect(calls).toEqual([]);
  });
});
