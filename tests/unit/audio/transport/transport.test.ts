import { describe, expect, it } from 'vitest';
import { heldAtBar, heldInstead, heldUpcoming } from '../../../../src/audio/transport/held-place';
import { playheadAt } from '../../../../src/audio/transport/playhead-at';
import { createTransport } from '../../../../src/audio/transport/rolling-transport';
import type { ScheduledNote } from '../../../../src/audio/transport/scheduled-note';
import type { Program } from '../../../../src/core/arranger/program';
import { plainProgram, plainSections } from '../../../helpers/plain-sections';

/** What was handed over and not taken back, as the player would have it. */
const rig = () => {
  let now = 0;
  let notes: ScheduledNote[] = [];
  const handed: { readonly note: ScheduledNote; readonly when: number }[] = [];
  const transport = createTransport({
    now: () => now,
    source: plainSections,
    sink: {
      start: (note) => {
        notes.push(note);
        handed.push({ note, when: now });
      },
      cut: (at) => {
        notes = notes
          .filter((note) => note.at < at)
          .map((note) =>
            note.event.part === 'drums' || note.event.part === 'click'
              ? note
              : { ...note, until: Math.min(note.until, at) },
          );
      },
    },
  });
  return {
    transport,
    handed,
    now: () => now,
    notes: (part?: string) =>
      notes.filter(({ event }) => !part || event.part === part).sort((one, other) => one.at - other.at),
    /** Moves the clock in steps, ticking after each. */
    run: (to: number, step = 0.1) => {
      while (now < to) {
        now = Math.min(to, now + step);
        transport.tick();
      }
    },
    bar: () => {
      const position = playheadAt(transport.timeline(), now);
      return (
        position && {
          kind: position.section.kind,
          bar: position.section.barNumbers[position.bar],
          beat: position.beat,
        }
      );
    },
  };
};

const gapsOf = (notes: readonly ScheduledNote[]): number[] =>
  notes.slice(1).map(({ at }, index) => Math.round((at - notes[index].until) * 1e6) / 1e6);

const started = (program: Program, fromBar = 0) => {
  const band = rig();
  band.transport.start(program, fromBar, 0.1);
  return band;
};

describe('pausing', () => {
  const paused = (at: number) => {
    const band = started(plainProgram(12, 120, { choruses: 2 }));
    band.run(at);
    const heard = playheadAt(band.transport.timeline(), band.now());
    const held = heard && band.transport.hold(heard);
    if (!held) throw new Error('nothing was heard');
    return { ...band, held };
  };

  it('is silent and goes on with the bar it was in, every note of it', () => {
    // 120 beats a minute: a bar is 2 s; count-in to 2.1, bar 3 of the form from 6.1.
    const { transport, held, notes, run, bar } = paused(7.5);
    expect([transport.playing(), held.playhead.section.kind, held.playhead.bar]).toEqual([
      false,
      'chorus',
      2,
    ]);
    run(10);
    const before = notes().length;
    expect(notes().every((note) => note.at < 7.5)).toBe(true);
    transport.goOn(held, 10.1);
    run(12);
    expect(bar()).toEqual({ kind: 'chorus', bar: 2, beat: 3 });
    const first = notes().slice(before, before + 3);
    expect(first.map(({ at }) => Math.round(at * 1000))).toEqual([10100, 10100, 10100]);
    run(12.2);
    expect(bar()).toEqual({ kind: 'chorus', bar: 3, beat: 0 });
    run(10.1 + 22 * 2 + 0.2, 0.5);
    expect(transport.playing()).toBe(false);
  });

  it('goes on at the same bar of what was chosen meanwhile, or at the bar clicked', () => {
    const { held } = paused(7.5);
    const faster = heldInstead(plainSections, held, plainProgram(12, 200, { choruses: 2, countIn: 0 }));
    expect([faster.playhead.section.index, faster.playhead.bar, faster.program.tempo]).toEqual([0, 2, 200]);
    const elsewhere = heldAtBar(plainSections, held, 8);
    expect([elsewhere.playhead.section.kind, elsewhere.playhead.bar]).toEqual(['chorus', 8]);
    expect(heldUpcoming(plainSections, elsewhere)?.chorus).toBe(1);
  });

  it('paused in the count-in, enters the chorus where the player clicks', () => {
    const { held } = paused(1);
    const entered = heldAtBar(plainSections, held, 4);
    expect(entered.playhead.section.kind).toBe('count-in');
    expect(heldUpcoming(plainSections, entered)?.barNumbers[0]).toBe(4);
  });
});

describe('playing on', () => {
  it.each([0.1, 0.5, 1, 1.6])('hands every note over in time when the page looks every %s s', (step) => {
    const band = started(plainProgram(12, 120, { choruses: 3 }));
    band.run(80, step);
    expect(band.transport.late()).toBe(0);
    expect(band.handed.filter(({ note, when }) => note.at < when)).toEqual([]);
    expect(band.notes()).toHaveLength(4 + 3 * 12 * 9);
  });

  it('counts what came late after a block longer than the window, and leaves out what is long past', () => {
    const band = started(plainProgram(12, 120));
    band.run(4);
    band.run(8, 4);
    expect(band.transport.late()).toBeGreaterThan(0);
    expect(band.handed.filter(({ note, when }) => note.at < when - 0.05)).toEqual([]);
  });

  it('leaves no gap and no overlap in the bass from chorus to chorus', () => {
    const band = started(plainProgram(2, 90, { choruses: 4 }));
    band.run(30);
    expect(new Set(gapsOf(band.notes('bass')))).toEqual(new Set([0]));
  });

  it('ends after the last chorus and has nothing up next there', () => {
    const band = started(plainProgram(2, 120, { choruses: 1 }));
    band.run(3);
    expect(band.transport.sectionAfter(band.now())).toBeNull();
    expect(band.transport.playing()).toBe(true);
    band.run(7);
    expect(band.transport.playing()).toBe(false);
    expect(band.bar()).toBeNull();
  });

  it('looks ahead to the section that follows', () => {
    const band = started(plainProgram(2, 120));
    band.run(1);
    expect(band.transport.sectionAfter(band.now())?.kind).toBe('chorus');
  });

  it('enters at a bar after the count-in', () => {
    const band = started(plainProgram(12, 120), 8);
    band.run(2);
    expect(band.bar()).toEqual({ kind: 'count-in', bar: null, beat: 3 });
    band.run(2.2);
    expect(band.bar()).toEqual({ kind: 'chorus', bar: 8, beat: 0 });
  });
});

describe('stop', () => {
  it('takes back everything to come, and twice is once', () => {
    const band = started(plainProgram(12, 120));
    band.run(5);
    band.transport.stop();
    band.transport.stop();
    expect(band.notes().filter(({ at }) => at >= band.now())).toEqual([]);
    expect(band.notes('bass').filter(({ until }) => until > band.now())).toEqual([]);
    expect(band.bar()).toBeNull();
    const before = band.handed.length;
    band.run(10);
    expect(band.handed).toHaveLength(before);
  });
});

describe('change while playing', () => {
  const changes: readonly [string, Program][] = [
    ['tempo up', plainProgram(12, 240)],
    ['tempo down', plainProgram(12, 60)],
    ['notes', plainProgram(12, 120, { seed: 5 })],
    ['a shorter form', plainProgram(8, 120, { seed: 5 })],
    ['a longer form', plainProgram(24, 120)],
    ['no count-in', plainProgram(12, 120, { countIn: 0, seed: 3 })],
  ];
  it.each(changes)('%s: same place, no gap in the bass, heard within a beat', (_, program) => {
    const band = started(plainProgram(12, 120));
    band.run(11.3);
    const before = band.bar();
    band.transport.change(program);
    band.run(band.now() + 0.031, 0.0155);
    expect(band.bar()).toMatchObject({
      kind: 'chorus',
      bar: (before?.bar ?? -1) % program.chart.bars.length,
    });
    band.run(20);
    expect(Math.max(...gapsOf(band.notes('bass')))).toBeLessThanOrEqual(0);
    expect(Math.min(...gapsOf(band.notes('bass')))).toBeGreaterThanOrEqual(0);
    const next = band.notes('bass').find(({ at }) => at > 11.3 + 0.04);
    expect(next?.at).toBeLessThanOrEqual(11.3 + 0.03 + 60 / program.tempo);
  });

  it('keeps the beat when only the tempo changes', () => {
    const band = started(plainProgram(12, 120));
    band.run(10.35);
    band.transport.change(plainProgram(12, 60));
    band.run(14);
    const beats = band.notes('drums').map(({ at }) => Number(at.toFixed(3)));
    // Cut at 10.38 s, 0.22 s before the beat at 10.6 s: at half the tempo that beat comes 0.44 s later.
    expect(beats.filter((at) => at > 10.1 && at < 13)).toEqual([10.82, 11.82, 12.82]);
  });

  it('does not touch what sounds when only later sections change', () => {
    const band = started(plainProgram(4, 120));
    band.run(5);
    const before = band.handed.length;
    band.transport.change(plainProgram(4, 120, { choruses: 1 }));
    expect(band.handed.slice(before)).toEqual([]);
    band.run(12);
    expect(band.transport.playing()).toBe(false);
  });

  it('takes back a chorus already handed over when it is no longer wanted', () => {
    const band = started(plainProgram(4, 120));
    band.run(9.6);
    expect(band.notes().some(({ at }) => at > 10.1)).toBe(true);
    band.transport.change(plainProgram(4, 120, { choruses: 1 }));
    expect(band.notes().filter(({ at }) => at >= 10.1 - 1e-9)).toEqual([]);
  });

  it('goes on from the last chorus when it is beyond the new end', () => {
    const band = started(plainProgram(2, 120, { choruses: 5 }));
    band.run(15);
    band.transport.change(plainProgram(2, 120, { choruses: 2, seed: 1 }));
    band.run(16);
    expect(playheadAt(band.transport.timeline(), band.now())?.section.chorus).toBe(1);
  });

  it('takes up the chord that sounds over the cut', () => {
    const band = started(plainProgram(12, 120));
    band.run(11);
    band.transport.change(plainProgram(12, 120, { seed: 2 }));
    const taken = band.notes('chords').filter(({ offset }) => offset > 0);
    expect(taken).toHaveLength(1);
    expect(taken[0].at).toBeCloseTo(11.03, 6);
    expect(taken[0].event.pitch).toBe(62);
  });
});

describe('seek', () => {
  it.each([
    ['forward', 9],
    ['back', 0],
    ['to the bar one is in', 4],
  ])('%s, at the next beat', (_, bar) => {
    const band = started(plainProgram(12, 120));
    band.run(10.8);
    expect(band.bar()?.bar).toBe(4);
    band.transport.seek(bar);
    band.run(11.0, 0.05);
    expect(band.bar()?.bar).toBe(4);
    band.run(11.15, 0.05);
    expect(band.bar()).toEqual({ kind: 'chorus', bar, beat: 0 });
    band.run(20);
    expect(new Set(gapsOf(band.notes('bass')))).toEqual(new Set([0]));
  });

  it('reaches a bar before the one the chorus was entered at', () => {
    const band = started(plainProgram(12, 120), 8);
    band.run(4);
    band.transport.seek(2);
    band.run(5);
    expect(band.bar()?.bar).toBe(2);
  });

  it('in the count-in chooses where the chorus is entered', () => {
    const band = started(plainProgram(12, 120));
    band.run(1);
    band.transport.seek(7);
    band.run(2);
    expect(band.bar()).toEqual({ kind: 'count-in', bar: null, beat: 3 });
    band.run(2.2);
    expect(band.bar()).toEqual({ kind: 'chorus', bar: 7, beat: 0 });
  });

  it('does nothing when stopped', () => {
    const band = rig();
    band.transport.seek(3);
    band.transport.change(plainProgram(12, 120));
    band.transport.refill();
    expect(band.handed).toEqual([]);
  });
});
