import { describe, expect, it } from 'vitest';
import { writeMidi } from '../../../src/core/formats/midi';
import { bendRange, bendValue } from '../../../src/core/formats/midi-bend';
import { variableLength } from '../../../src/core/formats/midi-bytes';
import { eventsOf, notesOf, readMidi } from '../../helpers/midi-reading';
import { scoreNote, sectionOf, twelveBars } from '../../helpers/sections';

const VOICES = { bass: 'upright-bass', chords: 'piano' } as const;
const hex = (bytes: Iterable<number>): string =>
  [...bytes].map((byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join(' ');

describe('Standard MIDI-File Format Spec. 1.1, International MIDI Association', () => {
  // The specification's own table has 0, 7F, 80, 2000, 3FFF and 4000 (from memory); 320 and 480 follow its rule.
  it.each([
    [0, '00'],
    [127, '7F'],
    [128, '81 00'],
    [320, '82 40'],
    [480, '83 60'],
    [8192, 'C0 00'],
    [16383, 'FF 7F'],
    [16384, '81 80 00'],
    [0x0fffffff, 'FF FF FF 7F'],
  ])('writes %i as the variable-length quantity %s', (value, bytes) => {
    expect(hex(variableLength(value))).toBe(bytes);
  });

  it('begins with a header of six bytes: format 1, number of tracks, 480 ticks a quarter', () => {
    const file = writeMidi({
      title: '',
      sections: [sectionOf([scoreNote('bass', [0, 480, 40])])],
      voices: VOICES,
    });
    expect(hex(file.slice(0, 14))).toBe('4D 54 68 64 00 00 00 06 00 01 00 02 01 E0');
  });

  // Tempo is microseconds a quarter; a dotted-quarter beat of 60 is 90 quarters (arithmetic on the rule).
  it.each([
    ['4/4', 120, '07 A1 20', 500000],
    ['4/4', 90, '0A 2C 2B', 666667],
    ['12/8', 60, '0A 2C 2B', 666667],
    ['6/8', 80, '07 A1 20', 500000],
    ['3/4', 240, '03 D0 90', 250000],
  ] as const)('writes %s at %i as FF 51 03 %s', (meter, bpm, bytes, microseconds) => {
    const file = writeMidi({
      title: '',
      sections: [sectionOf([], { chart: twelveBars(meter), bpm })],
      voices: VOICES,
    });
    expect(hex(file)).toContain(`FF 51 03 ${bytes}`);
    expect(eventsOf(readMidi(file).tracks[0], 'setTempo').map((event) => event.microsecondsPerBeat)).toEqual([
      microseconds,
    ]);
  });

  // FF 58 04 nn dd cc bb: numerator, power of two, MIDI clocks a beat, 32nds a quarter (layout from memory).
  it.each([
    ['4/4', '04 02 18 08'],
    ['3/4', '03 02 18 08'],
    ['12/8', '0C 03 24 08'],
    ['6/8', '06 03 24 08'],
  ] as const)('writes the meter %s as FF 58 04 %s', (meter, bytes) => {
    const file = writeMidi({
      title: '',
      sections: [sectionOf([], { chart: twelveBars(meter) })],
      voices: VOICES,
    });
    expect(hex(file)).toContain(`FF 58 04 ${bytes}`);
  });

  // FF 59 02 sf mi: sharps or minus flats, 0 major or 1 minor; the circle of fifths (layout from memory).
  it.each([
    [0, 'major', 0],
    [7, 'major', 1],
    [5, 'major', -1],
    [3, 'major', -3],
    [6, 'major', 6],
    [1, 'major', -5],
    [11, 'major', 5],
    [9, 'minor', 0],
    [4, 'minor', 1],
    [0, 'minor', -3],
    [1, 'minor', 4],
  ] as const)('gives key %i %s a signature of %i', (key, mode, fifths) => {
    const chart = {
      ...twelveBars('4/4', key),
      mode,
      tonic: mode === 'minor' && key === 1 ? 'C#' : twelveBars('4/4', key).tonic,
    };
    const { tracks } = readMidi(
      writeMidi({ title: '', sections: [sectionOf([], { chart })], voices: VOICES }),
    );
    expect(eventsOf(tracks[0], 'keySignature')).toMatchObject([
      { key: fifths, scale: mode === 'minor' ? 1 : 0 },
    ]);
  });

  it('ends every track with FF 2F 00', () => {
    const file = writeMidi({
      title: '',
      sections: [sectionOf([scoreNote('drums', [0, 60, 36])])],
      voices: VOICES,
    });
    const { tracks } = readMidi(file);
    expect(tracks.map(({ events }) => events.at(-1)?.type)).toEqual(['endOfTrack', 'endOfTrack']);
    expect(hex(file.slice(-3))).toBe('FF 2F 00');
  });
});

describe('General MIDI 1 sound set: programs are printed 1–128 and sent 0–127', () => {
  it.each([
    ['bass', { bass: 'upright-bass', chords: 'piano' }, 33],
    ['bass', { bass: 'fingered-bass', chords: 'piano' }, 34],
    ['chords', { bass: 'upright-bass', chords: 'piano' }, 1],
    ['chords', { bass: 'upright-bass', chords: 'electric-piano' }, 5],
    ['chords', { bass: 'upright-bass', chords: 'organ' }, 17],
    ['chords', { bass: 'upright-bass', chords: 'guitar' }, 27],
    ['lead', { bass: 'upright-bass', chords: 'piano' }, 23],
  ] as const)('plays %s of %o with program %i', (part, voices, printed) => {
    const { tracks } = readMidi(
      writeMidi({ title: '', sections: [sectionOf([scoreNote(part, [0, 480, 60])])], voices }),
    );
    expect(eventsOf(tracks[1], 'programChange').map((event) => event.programNumber + 1)).toEqual([printed]);
    expect(eventsOf(tracks[1], 'noteOn').map((event) => event.channel + 1)).not.toContain(10);
  });

  // General MIDI 2 percussion sets: brush set 41 as printed (from memory).
  it('plays brushes with set 41 on channel 10, so that slaps are no hand claps', () => {
    const sections = [sectionOf([scoreNote('drums', [0, 60, 39])])];
    const { tracks } = readMidi(writeMidi({ title: '', sections, voices: { ...VOICES, kit: 'brushes' } }));
    const [change] = eventsOf(tracks[1], 'programChange');
    expect([change?.channel, change?.programNumber]).toEqual([9, 40]);
  });

  it('has percussion on channel 10, without a program', () => {
    const events = [scoreNote('drums', [0, 60, 36]), scoreNote('click', [0, 60, 76])];
    const { tracks } = readMidi(writeMidi({ title: '', sections: [sectionOf(events)], voices: VOICES }));
    for (const track of tracks.slice(1)) {
      expect(eventsOf(track, 'noteOn').map((event) => event.channel + 1)).toEqual([10]);
      expect(eventsOf(track, 'programChange')).toEqual([]);
    }
  });
});

describe('pitch bend: 14 bits, 8192 in the middle (from memory of the MIDI 1.0 specification)', () => {
  it.each([
    [-1, 2, 4096],
    [-3, 12, 6144],
    [0, 2, 8192],
    [-2, 2, 0],
    [2, 2, 16383],
  ])('puts %i semitones within ±%i at %i', (semitones, range, value) => {
    expect(bendValue(semitones, range)).toBe(value);
  });

  it('sets the range by registered parameter 0,0 and releases it', () => {
    const glide = scoreNote('lead', [480, 960, 69], { from: -3, ticks: 240 });
    const { tracks } = readMidi(writeMidi({ title: '', sections: [sectionOf([glide])], voices: VOICES }));
    const controls = eventsOf(tracks[1], 'controller').map(({ controllerType, value }) => [
      controllerType,
      value,
    ]);
    expect(controls).toEqual([
      [101, 0],
      [100, 0],
      [6, 3],
      [38, 0],
      [101, 127],
      [100, 127],
    ]);
    expect(bendRange([{ from: 0, to: 1, event: glide }])).toBe(3);
  });
});

describe('swing in the ticks: a shuffle is the triplet with its middle note left out, so the off-beat is at 2/3', () => {
  it('keeps tick 320 of 480', () => {
    const events = [scoreNote('drums', [0, 60, 51]), scoreNote('drums', [320, 60, 51])];
    const { tracks, ticksPerBeat } = readMidi(
      writeMidi({ title: '', sections: [sectionOf(events)], voices: VOICES }),
    );
    expect(notesOf(tracks[1]).map(({ from }) => from / ticksPerBeat)).toEqual([0, 2 / 3]);
  });
});
