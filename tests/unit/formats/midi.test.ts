import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Program, Section } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { buildChart } from '../../../src/core/chart/build-chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { type MidiSong, writeMidi } from '../../../src/core/formats/midi';
import { bigEndian, variableLength } from '../../../src/core/formats/midi-bytes';
import type { PartId } from '../../../src/core/score/score';
import { DEFAULT_PLAN, DEFAULT_STYLE } from '../../../src/core/settings/defaults';
import { asBpm, asPitchClass, asTicks } from '../../../src/core/theory/units';
import { eventsOf, notesOf, readMidi } from '../../helpers/midi-reading';
import { scoreNote, sectionOf, twelveBars } from '../../helpers/sections';

const VOICES = { bass: 'fingered-bass', chords: 'organ' } as const;
const songOf = (sections: readonly Section[], more: Partial<MidiSong> = {}): MidiSong => ({
  title: 'Thursday class',
  sections,
  voices: VOICES,
  ...more,
});
const reading = (sections: readonly Section[], more: Partial<MidiSong> = {}) =>
  readMidi(writeMidi(songOf(sections, more)));
const trackOf = (file: ReturnType<typeof reading>, name: string) =>
  file.tracks.find((track) => track.name === name);

describe('a MIDI file', () => {
  it('names its tracks and leaves out parts that are silent or not asked for', () => {
    const events = [
      scoreNote('click', [0, 60, 76]),
      scoreNote('drums', [0, 60, 36]),
      scoreNote('bass', [0, 480, 43]),
      scoreNote('lead', [0, 480, 67]),
    ];
    expect(reading([sectionOf(events)]).tracks.map(({ name }) => name)).toEqual([
      'Thursday class',
      'Bass',
      'Harmonica',
      'Drums',
      'Click',
    ]);
    expect(
      reading([sectionOf(events)], { parts: ['bass', 'chords'] }).tracks.map(({ name }) => name),
    ).toEqual(['Thursday class', 'Bass']);
  });

  it('marks sections and chord changes, and no chords in a count-in', () => {
    const chart = twelveBars();
    const file = reading(
      [
        sectionOf([], {
          chart: { ...chart, bars: chart.bars.slice(0, 1), length: asTicks(1920) },
          kind: 'count-in',
        }),
        sectionOf([], { chart }),
        sectionOf([], { chart, chorus: 1, kind: 'ending' }),
      ].map((section) => ({ ...section, score: { ...section.score, length: section.chart.length } })),
    );
    const markers = eventsOf(file.tracks[0], 'marker').map(({ at, text }) => [at / 1920, text]);
    expect(markers.slice(0, 8)).toEqual([
      [0, 'Count-in'],
      [1, 'Chorus 1'],
      [1, 'G7'],
      [5, 'C7'],
      [7, 'G7'],
      [9, 'D7'],
      [10, 'C7'],
      [11, 'G7'],
    ]);
    expect(markers.slice(8, 10)).toEqual([
      [13, 'Ending'],
      [13, 'G7'],
    ]);
  });

  it('writes tempo, meter and key where they change, and only there', () => {
    const steps = [
      { at: asTicks(0), bpm: asBpm(100) },
      { at: asTicks(960), bpm: asBpm(80) },
    ];
    const first = sectionOf([], { bpm: 100 });
    const { tracks } = reading([
      first,
      { ...first, tempo: steps },
      sectionOf([], { chart: twelveBars('12/8', 0), bpm: 60 }),
    ]);
    const length = first.score.length;
    expect(
      eventsOf(tracks[0], 'setTempo').map(({ at, microsecondsPerBeat }) => [at, microsecondsPerBeat]),
    ).toEqual([
      [0, 600000],
      [length + 960, 750000],
      [2 * length, 666667],
    ]);
    expect(
      eventsOf(tracks[0], 'timeSignature').map(({ at, numerator, denominator }) => [
        at,
        numerator,
        denominator,
      ]),
    ).toEqual([
      [0, 4, 4],
      [2 * length, 12, 8],
    ]);
    expect(eventsOf(tracks[0], 'keySignature').map(({ at, key }) => [at, key])).toEqual([
      [0, 1],
      [2 * length, 0],
    ]);
  });

  it('changes the key with the sections of a chart, and back with the next chorus', () => {
    const chart = buildChart({ form: 'strains', key: asPitchClass(0), meter: '4/4' });
    const section = sectionOf([], { chart });
    const { tracks } = reading([section, { ...section, chorus: 1 }]);
    expect(eventsOf(tracks[0], 'keySignature').map(({ at, key }) => [at / 1920, key])).toEqual([
      [0, 0],
      [28, -1],
      [60, 0],
      [88, -1],
    ]);
  });

  it('moves a part that is pushed by its milliseconds at the tempo of the place, never before the start', () => {
    const events = [
      scoreNote('bass', [0, 480, 40]),
      scoreNote('bass', [480, 480, 41]),
      scoreNote('drums', [480, 60, 38]),
    ];
    const section = sectionOf(events, { bpm: 120 });
    const late = reading([section], { push: { bass: 25 } });
    expect(notesOf(trackOf(late, 'Bass')).map(({ from, to }) => [from, to])).toEqual([
      [24, 504],
      [504, 984],
    ]);
    expect(notesOf(trackOf(late, 'Drums')).map(({ from }) => from)).toEqual([480]);
    expect(
      notesOf(trackOf(reading([section], { push: { bass: -25 } }), 'Bass')).map(({ from }) => from),
    ).toEqual([0, 456]);
  });

  it('ends a note where its key is struck again and keeps the louder of two at once', () => {
    const events = [
      scoreNote('chords', [0, 960, 60, 70]),
      scoreNote('chords', [480, 480, 60, 50]),
      scoreNote('chords', [480, 480, 60, 90]),
      scoreNote('chords', [480, 480, 64, 40]),
    ];
    expect(notesOf(reading([sectionOf(events)]).tracks[1])).toEqual([
      { from: 0, to: 480, key: 60, velocity: 70 },
      { from: 480, to: 960, key: 60, velocity: 90 },
      { from: 480, to: 960, key: 64, velocity: 40 },
    ]);
  });

  it('keeps any title', () => {
    const bytes = writeMidi(songOf([], { title: 'Blues für Ω 🎵' }));
    const { tracks } = readMidi(bytes);
    const latin = tracks[0]?.name ?? '';
    expect(new TextDecoder().decode(Uint8Array.from([...latin].map((c) => c.charCodeAt(0))))).toBe(
      'Blues für Ω 🎵',
    );
  });

  it.each([
    ['A key', scoreNote('bass', [0, 1, 128])],
    ['A key', scoreNote('bass', [0, 1, -1])],
    ['A velocity', scoreNote('bass', [0, 1, 60, 128])],
  ])('refuses what the format cannot hold: %s', (name, note) => {
    expect(() => writeMidi(songOf([sectionOf([note])]))).toThrow(`${name} must be from 0 to 127`);
    expect(() => writeMidi(songOf([sectionOf([], { bpm: 3 })]))).toThrow(RangeError);
  });
});

describe('glides', () => {
  const bends = (events: Parameters<typeof sectionOf>[0]) => {
    const track = reading([sectionOf(events)]).tracks[1];
    return eventsOf(track, 'pitchBend').map(({ at, value }) => [at, value] as const);
  };

  it('start at their distance with the note and are back in the middle in time', () => {
    const values = bends([scoreNote('lead', [480, 960, 69], { from: -2, ticks: 40 })]);
    expect(values).toEqual([
      [480, -8192],
      [490, -6144],
      [500, -4096],
      [510, -2048],
      [520, 0],
    ]);
  });

  it('end with a short note, and where the next note begins', () => {
    expect(bends([scoreNote('lead', [0, 20, 69], { from: 1, ticks: 400 })])).toEqual([
      [0, 4096],
      [10, 2048],
      [20, 0],
    ]);
    const cut = bends([
      scoreNote('lead', [0, 480, 69], { from: 1, ticks: 480 }),
      scoreNote('lead', [15, 480, 71]),
    ]);
    expect(cut.at(-1)).toEqual([15, 0]);
    expect(cut.every(([at]) => at <= 15)).toBe(true);
  });

  it('bend both notes of a chord and leave the wheel in the middle', () => {
    const chord = [69, 72].map((pitch) => scoreNote('lead', [0, 480, pitch], { from: -1, ticks: 100 }));
    const values = bends(chord);
    expect(values[0]).toEqual([0, -4096]);
    expect(values.at(-1)).toEqual([100, 0]);
  });

  it('are written for no part that has none', () => {
    const track = reading([sectionOf([scoreNote('lead', [0, 480, 69])])]).tracks[1];
    expect(eventsOf(track, 'controller')).toEqual([]);
    expect(eventsOf(track, 'pitchBend')).toEqual([]);
  });
});

const PARTS: readonly (readonly [PartId, string])[] = [
  ['bass', 'Bass'],
  ['chords', 'Chords'],
  ['drums', 'Drums'],
  ['click', 'Click'],
];

describe('the band’s own songs', () => {
  it('come back note for note, in any form, key and feel', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FORM_IDS),
        fc.integer({ min: 0, max: 11 }),
        fc.constantFrom('shuffle', 'slow-12-8', 'swing', 'straight'),
        fc.nat(),
        (form, key, feel, seed) => {
          const meter = feel === 'slow-12-8' ? '12/8' : '4/4';
          const program: Program = {
            chart: buildChart({ form, key: asPitchClass(key), meter }),
            style: { ...DEFAULT_STYLE, feel, seed },
            tempo: asBpm(90),
            plan: { ...DEFAULT_PLAN, choruses: 2, ritard: true },
          };
          const sections = Array.from({ length: 8 }, (_, index) => sectionAt(program, index)).flatMap(
            (section) => (section === null ? [] : [{ ...section, placing: { parts: {}, limbs: {} } }]),
          );
          const file = reading(sections);
          let start = 0;
          const starts = sections.map(({ score }) => {
            start += score.length;
            return start - score.length;
          });
          for (const [part, name] of PARTS) {
            const expected = sections.flatMap(({ score }, index) =>
              score.events
                .filter((event) => event.part === part)
                .map((event) => [(starts[index] ?? 0) + event.at, event.pitch, event.velocity]),
            );
            const found = notesOf(trackOf(file, name)).map(({ from, key: pitch, velocity }) => [
              from,
              pitch,
              velocity,
            ]);
            const byTime = (a: readonly number[], b: readonly number[]) =>
              (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0);
            expect(found).toEqual(expected.toSorted(byTime));
          }
          for (const { events } of file.tracks)
            expect(events.at(-1)).toMatchObject({ type: 'endOfTrack', at: start });
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('numbers as bytes', () => {
  it('read back by the rule they were written by', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0x0fffffff }), (value) => {
        const bytes = variableLength(value);
        expect(bytes.slice(0, -1).every((byte) => byte >= 128) && (bytes.at(-1) ?? 255) < 128).toBe(true);
        expect(bytes.reduce((sum, byte) => sum * 128 + (byte % 128), 0)).toBe(value);
        expect(bigEndian(value, 4).reduce((sum, byte) => sum * 256 + byte, 0)).toBe(value);
      }),
    );
  });

  it.each([-1, 0x10000000, 0.5, Number.NaN])('refuse %d', (value) => {
    expect(() => variableLength(value)).toThrow(RangeError);
  });

  it.each([
    [256, 1],
    [-1, 2],
    [1.5, 2],
  ])('refuse %d in %i bytes', (value, count) => {
    expect(() => bigEndian(value, count)).toThrow(RangeError);
  });
});
