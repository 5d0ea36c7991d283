/** What chords do beside bass and drums, as a band leader hears it in printed choruses. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Section } from '../../../src/core/arranger/program';
import { FEEL_IDS, type FeelId, feelOf } from '../../../src/core/feels/feels';
import { chordShape } from '../../../src/core/players/chord-scale';
import type { Style } from '../../../src/core/players/style';
import type { NoteEvent } from '../../../src/core/score/score';
import type { Chord } from '../../../src/core/theory/chord';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

type Form = Parameters<typeof testChart>[0];

/** Choruses of a feel under the breathing arc; 1 and 4 are of middling energy. */
const choruses = (
  feel: FeelId,
  form: Form,
  style: Partial<Style> = {},
  indices = [1, 4],
): readonly Section[] => {
  const chart = testChart(form, 7, feelOf(feel).meter ?? '4/4');
  const program = testProgram(feel, {
    chart,
    style: { seed: 3, ...style },
    plan: { arc: 'breathe', turnarounds: 'varied' },
  });
  return indices.map((index) => sectionOf(program, index));
};

const standard = FEEL_IDS.flatMap((feel) => choruses(feel, 'standard'));

interface Stroke {
  readonly at: number;
  readonly length: number;
  readonly pitches: readonly number[];
}

const strokesIn = (notes: readonly NoteEvent[]): readonly Stroke[] => {
  const strokes = new Map<number, Stroke>();
  for (const { at, length, pitch } of notes) {
    const { pitches = [], length: before = 0 } = strokes.get(at) ?? {};
    strokes.set(at, { at, length: Math.max(length, before), pitches: [...pitches, pitch] });
  }
  return [...strokes.values()];
};

const share = (flags: readonly boolean[]): number => flags.filter(Boolean).length / flags.length;

const holdsGuideOf = (chord: Chord, pitches: readonly number[]): boolean => {
  const { third, seventh } = chordShape(chord);
  return pitches.some((pitch) => [third, seventh].includes((pitch - chord.root + 120) % 12));
};

describe('chords', () => {
  it.each([
    ['minor-slow', 'piano'],
    ['minor-slow', 'electric-piano'],
    ['minor-slow', 'organ'],
    ['slow-12-8', 'electric-piano'],
    ['slow-drag', 'organ'],
  ] as const)('of slow feels sound from the first beat of a bar on: %s on the %s', (feel, chords) => {
    for (const section of choruses(feel, 'minor-b', { chords }, [0, 1, 4])) {
      const notes = partOf(section, 'chords');
      const { bars, meter } = section.chart;
      const sounding = bars.map((bar) =>
        notes.some(({ at, length }) => at < bar.at + meter.beatTicks && at + length > bar.at + 10),
      );
      expect(sounding).not.toContain(false);
    }
  });

  it('are never held and, within the beat, struck and held again', () => {
    const slow = [
      ...choruses('minor-slow', 'standard', { chords: 'electric-piano' }, [0, 1]),
      ...choruses('slow-12-8', 'standard', { chords: 'organ', seed: 11 }, [0, 1]),
    ];
    const stumbles = slow.flatMap((section) =>
      section.chart.bars.map((_, bar) => {
        const { beatTicks } = section.chart.meter;
        const [first, second] = strokesIn(inBar(section, bar, 'chords'));
        return (
          first?.at === 0 && second !== undefined && second.at < beatTicks && second.length > 2 * beatTicks
        );
      }),
    );
    expect(stumbles).not.toContain(true);
  });

  it('play on through a turnaround’s bar of one chord: they do not beat its quarters', () => {
    const bars = [1, 2, 3, 4, 5, 6, 7, 8].flatMap((seed) =>
      choruses('shuffle', 'minor-b', { seed }, [1]).flatMap((section) => {
        const bar = section.chart.bars.length - 2;
        if (section.chart.bars[bar]?.chords.length !== 1) return [];
        const strokes = strokesIn(inBar(section, bar, 'chords')).map(({ at }) => at);
        return [[0, 480, 960, 1440].every((at) => strokes.includes(at))];
      }),
    );
    expect(bars.length).toBeGreaterThan(2);
    expect(bars).not.toContain(true);
  });

  it('come early with the next chord where its own bar begins without them', () => {
    const early = standard.flatMap((section) => {
      const { bars, meter } = section.chart;
      return bars.slice(0, -1).flatMap((bar, index) => {
        const [chord, next] = [bar.chords.at(-1)?.chord, bars[index + 1]?.chords[0]?.chord];
        const strokes = strokesIn(inBar(section, index, 'chords'));
        const last = strokes.at(-1);
        const following = inBar(section, index + 1, 'chords')[0];
        if (chord === undefined || next === undefined || last === undefined || following === undefined)
          return [];
        const chop = strokes.length > 2 && strokes.every(({ at }) => at % meter.beatTicks > 0);
        const offBeat = last.at >= bar.length - meter.beatTicks / 2 - 1;
        if (chop || !offBeat || chord.symbol === next.symbol || following.at === 0) return [];
        // Two notes are the shuffle's figure, or what the bass has left of a chord.
        return last.pitches.length < 3 ? [] : [holdsGuideOf(next, last.pitches)];
      });
    });
    expect(early.length).toBeGreaterThan(15);
    expect(early).not.toContain(false);
  });

  it('keep the shuffle’s figure of two notes to chords of the blues: no two-five is played with it', () => {
    for (const section of choruses('double-shuffle', 'jazz-swing', { seed: 5 }, [1, 2])) {
      const strokes = strokesIn(partOf(section, 'chords'));
      for (const { chord, at, length } of section.chart.bars.flatMap(({ chords }) => chords)) {
        if (!chordShape(chord).minor) continue;
        const fifths = strokes
          .filter((stroke) => stroke.at >= at && stroke.at < at + length)
          .filter(({ pitches }) =>
            pitches.every((pitch) => [0, 7].includes((pitch - chord.root + 120) % 12)),
          );
        expect(fifths).toEqual([]);
      }
    }
  });

  it('go on with their top notes within the bar', () => {
    const turned = standard.flatMap((section) =>
      section.chart.bars.flatMap((bar, index) => {
        if (bar.chords.length > 1) return [];
        // The last stroke may be the next chord's.
        const strokes = strokesIn(inBar(section, index, 'chords')).filter(
          ({ pitches }) => pitches.length > 2,
        );
        const [first, ...others] = strokes.slice(0, -1);
        const late = others.at(-1);
        if (first === undefined || late === undefined || late.at < bar.length / 2) return [];
        return [Math.max(...first.pitches) !== Math.max(...late.pitches)];
      }),
    );
    expect(turned.length).toBeGreaterThan(60);
    expect(share(turned)).toBeGreaterThan(0.2);
  });
});
