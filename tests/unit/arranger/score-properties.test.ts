import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Section } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { BASS_HIGH, BASS_LOW } from '../../../src/core/players/bass-register';
import { CLICK_KEYS } from '../../../src/core/players/click';
import { COMPING_REGISTER, ROOMY_REGISTER } from '../../../src/core/players/voicing';
import { DRUM_KEYS } from '../../../src/core/score/drum-kit';
import { compareEvents } from '../../../src/core/score/finish-score';
import type { NoteEvent } from '../../../src/core/score/score';
import { anyPlan, anyProgram, fullBand } from '../../helpers/program-arbitraries';
import { partOf, sectionOf } from '../../helpers/score-events';
import { soakRuns } from '../../helpers/soak';

const RUNS = { numRuns: soakRuns(400) };

const overlapping = (events: readonly NoteEvent[], sameVoice: (a: NoteEvent, b: NoteEvent) => boolean) =>
  events.flatMap((a, i) =>
    events
      .slice(i + 1)
      .filter((b) => sameVoice(a, b) && b.at < a.at + a.length)
      .map((b) => `${a.part} ${a.pitch} at ${a.at} into ${b.at}`),
  );

const chordChanges = (section: Section) => {
  const spans = section.chart.bars.flatMap((bar) => bar.chords);
  return spans.filter((span, i) => i === 0 || span.chord.symbol !== spans[i - 1]?.chord.symbol);
};

describe('every section of every plan', () => {
  it('is sorted, inside its bounds, finite, and no voice overlaps itself', () => {
    fc.assert(
      fc.property(anyProgram(anyPlan), fc.nat(5), (program, index) => {
        const section = sectionAt(program, index);
        if (section === null) return;
        const { events, length } = section.score;
        expect(events).toEqual([...events].sort(compareEvents));
        for (const event of events) {
          expect(Number.isInteger(event.at) && Number.isInteger(event.length)).toBe(true);
          expect(event.at).toBeGreaterThanOrEqual(0);
          expect(event.length).toBeGreaterThan(0);
          expect(event.at + event.length).toBeLessThanOrEqual(length);
          expect(event.velocity).toBeGreaterThanOrEqual(1);
          expect(event.velocity).toBeLessThanOrEqual(127);
        }
        const bass = overlapping(partOf(section, 'bass'), () => true);
        const others = overlapping(events, (a, b) => a.part === b.part && a.pitch === b.pitch);
        expect([...bass, ...others]).toEqual([]);
      }),
      RUNS,
    );
  });

  it('keeps every part in its register', () => {
    fc.assert(
      fc.property(anyProgram(anyPlan), fc.nat(4), (program, index) => {
        const section = sectionAt(program, index);
        if (section === null) return;
        const chords = program.style.leaveRoom ? ROOMY_REGISTER : COMPING_REGISTER;
        const drums: readonly number[] = Object.values(DRUM_KEYS);
        const clicks: readonly number[] = Object.values(CLICK_KEYS);
        const inRegister = ({ part, pitch }: NoteEvent): boolean => {
          if (part === 'bass') return pitch >= BASS_LOW && pitch <= BASS_HIGH;
          if (part === 'chords' || part === 'second') return pitch >= chords.low && pitch <= chords.high;
          return (part === 'drums' ? drums : clicks).includes(pitch);
        };
        expect(section.score.events.filter((event) => !inRegister(event))).toEqual([]);
      }),
      RUNS,
    );
  });

  it('is the same for the same program and seed, byte for byte', () => {
    fc.assert(
      fc.property(anyProgram(anyPlan), fc.nat(3), (program, index) => {
        const copy = JSON.parse(JSON.stringify(program)) as typeof program;
        expect(JSON.stringify(sectionAt(program, index))).toBe(JSON.stringify(sectionAt(copy, index)));
      }),
      { numRuns: 25 },
    );
  });

  it('describes its bars: contiguous, filled by chords, as long as the score', () => {
    fc.assert(
      fc.property(anyProgram(anyPlan), fc.nat(5), (program, index) => {
        const section = sectionAt(program, index);
        if (section === null) return;
        const { bars, length } = section.chart;
        const ends = bars.map((bar) => bar.at + bar.length);
        expect(bars.map((bar) => bar.at)).toEqual([0, ...ends.slice(0, -1)]);
        expect(ends.at(-1)).toBe(length);
        expect(section.score.length).toBe(length);
        expect(section.barNumbers).toHaveLength(bars.length);
        expect(section.tempo[0]?.at).toBe(0);
        for (const bar of bars) {
          const spans = bar.chords.map((span) => [span.at, span.at + span.length]);
          expect(
            spans.flat().filter((tick, i, all) => i % 2 === 1 && i < all.length - 1 && all[i + 1] !== tick),
          ).toEqual([]);
          expect([spans[0]?.[0], spans.at(-1)?.[1]]).toEqual([bar.at, bar.at + bar.length]);
        }
      }),
      RUNS,
    );
  });
});

describe('choruses of the full band', () => {
  it('have something to hear in every bar, from bass and drums', () => {
    fc.assert(
      fc.property(anyProgram(fullBand), fc.nat(20), (program, chorus) => {
        const section = sectionOf(program, chorus);
        for (const bar of section.chart.bars) {
          const starts = (part: string) =>
            section.score.events.some((e) => e.part === part && e.at >= bar.at && e.at < bar.at + bar.length);
          expect([starts('bass'), starts('drums')]).toEqual([true, true]);
        }
      }),
      RUNS,
    );
  });

  it('have the root (or slash bass) in the bass wherever a chord begins', () => {
    fc.assert(
      fc.property(anyProgram(fullBand), fc.nat(20), (program, chorus) => {
        const section = sectionOf(program, chorus);
        const bass = partOf(section, 'bass');
        for (const { at, chord } of chordChanges(section)) {
          expect([chord.symbol, at, bass.find((note) => note.at === at)?.pitch ?? -1].at(2)).toSatisfy(
            (pitch: number) => pitch % 12 === chord.bass,
          );
        }
      }),
      RUNS,
    );
  });

  it('have chord tones in the bass on strong beats', () => {
    fc.assert(
      fc.property(anyProgram(fullBand), fc.nat(20), (program, chorus) => {
        const section = sectionOf(program, chorus);
        const { beats, beatTicks } = section.chart.meter;
        const spans = section.chart.bars.flatMap((bar) => bar.chords);
        const strong = section.chart.bars.flatMap((bar) =>
          // In half time a pattern's third beat is the next bar's first.
          (beats === 4 && program.style.time !== 'half-time' ? [0, 2] : [0]).map(
            (beat) => bar.at + beat * beatTicks,
          ),
        );
        const wrong = partOf(section, 'bass')
          .filter((note) => strong.includes(note.at))
          .filter((note) => {
            const chord = spans.findLast((span) => span.at <= note.at)?.chord;
            const allowed = [chord?.bass, ...(chord?.tones ?? []).map((tone) => tone.pitchClass)];
            return !allowed.some((pitchClass) => pitchClass === note.pitch % 12);
          });
        expect(wrong).toEqual([]);
      }),
      RUNS,
    );
  });

  it('mark every chord change within the chord, in the chord part', () => {
    fc.assert(
      fc.property(anyProgram(fullBand), fc.nat(20), (program, chorus) => {
        const section = sectionOf(program, chorus);
        const { beatTicks } = section.chart.meter;
        const chords = partOf(section, 'chords');
        for (const { at, length } of chordChanges(section)) {
          const heard = chords.some(
            (n) => n.at + n.length > at - beatTicks && n.at < at + Math.max(length, beatTicks * 4),
          );
          expect(heard).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('differ from one another', () => {
    fc.assert(
      fc.property(anyProgram(fullBand), (program) => {
        const steady = { ...program, plan: { ...program.plan, keys: { kind: 'same' } as const } };
        const scores = [0, 1, 2, 3].map((chorus) => JSON.stringify(sectionOf(steady, chorus).score.events));
        expect(new Set(scores).size).toBe(4);
      }),
      { numRuns: 20 },
    );
  });
});
