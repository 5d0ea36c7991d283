import { describe, expect, it } from 'vitest';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { soundId, tab } from '../../../src/core/harp/tab';
import { DEFAULT_PLAN, DEFAULT_SETTINGS, DEFAULT_STYLE } from '../../../src/core/settings/defaults';
import { placeInSong } from '../../../src/core/takes/place-in-song';
import { readSeconds } from '../../../src/core/takes/read-seconds';
import { writtenPasses } from '../../../src/core/takes/take-bars';
import { takeMidi } from '../../../src/core/takes/take-midi';
import type { TakeNote } from '../../../src/core/takes/take-note';
import { type TakeEvent, takePasses } from '../../../src/core/takes/take-passes';
import { shortsOf, takeMix } from '../../../src/core/takes/take-sound';
import { createTape, tapeBytes } from '../../../src/core/takes/take-tape';
import { asBpm, asCents, asSeconds } from '../../../src/core/theory/units';
import { C_HARP, heardNote } from '../../helpers/heard-note';
import { eventsOf, notesOf, readMidi } from '../../helpers/midi-reading';
import { twelveBars } from '../../helpers/sections';

/** Two beats a second, so that a bar lasts two seconds and a chorus 24. */
const program = {
  chart: twelveBars(),
  style: DEFAULT_STYLE,
  tempo: asBpm(120),
  plan: { ...DEFAULT_PLAN, countInBars: 1, intro: 'none', choruses: 3, repeat: null },
} as const;
const chorus = (index: number) => {
  const section = sectionAt(program, 1 + index);
  if (section === null) throw new Error('The song is shorter');
  return section;
};
const eventsFrom = (notes: readonly TakeNote[]): readonly TakeEvent[] =>
  notes.map((heard) => ({ kind: 'note', heard }));
const bar = (section: ReturnType<typeof chorus>, index: number): TakeEvent => ({
  kind: 'bar',
  playhead: { section, bar: index, beat: 0, ticks: section.chart.bars[index].at },
});
const choices = { settings: DEFAULT_SETTINGS, harp: C_HARP };
const VOICES = { bass: 'upright-bass', chords: 'piano' } as const;

describe('a recording placed in a song', () => {
  it('has its notes at the ticks that have gone by, and none before the song or after it', () => {
    const heard = placeInSong(
      [heardNote(['4D', 1, 1.5]), heardNote(['5D', 3.5, 4]), heardNote(['4B', 27.1, 27.4])],
      { ...program, plan: { ...program.plan, choruses: 1, ending: 'stop' } },
      2.5,
    );
    // 120 beats a minute are 960 ticks of 480 a beat in a second (arithmetic).
    expect(heard.map(({ playhead }) => playhead && [playhead.bar, playhead.beat, playhead.ticks])).toEqual([
      null,
      [0, 2, 960],
      null,
    ]);
  });

  it('goes on into the next chorus', () => {
    const [note] = placeInSong([heardNote(['4D', 27, 27.5])], program, 1);
    expect([note?.playhead?.section.chorus, note?.playhead?.bar]).toEqual([1, 1]);
  });
});

describe('the ways through a song', () => {
  const first = chorus(0);
  const second = chorus(1);
  const at = (section: typeof first, index: number, beat: number, seconds: number): TakeEvent => ({
    kind: 'note',
    heard: {
      note: heardNote(['4D', seconds, seconds + 0.3]),
      playhead: { section, bar: index, beat, ticks: section.chart.bars[index].at + 480 * beat },
    },
  });

  it('keep a note told late in the chorus it began in, and a chorus without a note among the others', () => {
    const third = chorus(2);
    const events = [
      bar(first, 0),
      at(first, 0, 1, 1),
      bar(second, 0),
      at(first, 11, 3, 23.9),
      bar(third, 0),
      at(third, 0, 0, 48),
    ];
    const passes = takePasses(events);
    expect(passes.map(({ section, notes }) => [section?.chorus, notes.length])).toEqual([
      [0, 2],
      [1, 0],
      [2, 1],
    ]);
  });

  it('begin anew where the band was sent back, and go on where the chorus was made anew', () => {
    const remade = { ...first };
    const back = takePasses([at(first, 6, 0, 12), at(remade, 7, 0, 14), at(first, 2, 0, 16)]);
    expect(back.map(({ notes }) => notes.length)).toEqual([2, 1]);
  });

  it('are free where no band played', () => {
    const loose: TakeEvent = { kind: 'note', heard: { note: heardNote(['4B', 0, 1]), playhead: null } };
    expect(takePasses([loose, loose, at(first, 0, 0, 3)]).map(({ section }) => section === null)).toEqual([
      true,
      false,
    ]);
    expect(takePasses([bar(first, 0)])).toEqual([]);
  });
});

describe('a take as tab', () => {
  it('has every note under its bar, and of a chorus what was hit', () => {
    const notes = placeInSong(
      [heardNote(['2D', 0, 0.4]), heardNote(["3D'", 2.5, 3]), heardNote(['4B', 3, 3.4])],
      program,
      0,
    );
    const [pass] = writtenPasses(takePasses(eventsFrom(notes)), choices);
    if (pass === undefined || pass.kind === 'free') throw new Error('A chorus is written in bars');
    expect(
      pass.bars
        .slice(0, 3)
        .map((each) => [each.number, each.notes.map(({ sound }) => sound && tab(sound, 'signs'))]),
    ).toEqual([
      [1, ['-2']],
      [2, ["-3'", '4']],
      [3, []],
    ]);
    expect(pass.bars[1]?.notes.map(({ share }) => share)).toEqual([0.25, 0.5]);
    // 2 draw of a C harp is G, the root of the first bar.
    expect(pass.report?.heard.bars[0]?.counts.chord).toBe(1);
  });

  it('is in phrases where nothing was played to', () => {
    const notes = [heardNote(['4B', 0, 0.5]), heardNote(['4D', 0.6, 1]), heardNote(['5B', 2.5, 3])];
    const [pass] = writtenPasses(
      takePasses(eventsFrom(notes.map((note) => ({ note, playhead: null })))),
      choices,
    );
    if (pass?.kind !== 'free') throw new Error('Nothing was played to');
    expect(pass.phrases.map((phrase) => phrase.map(({ sound }) => sound && soundId(sound)))).toEqual([
      ['4B', '4D'],
      ['5B'],
    ]);
  });
});

describe('a take as MIDI, read by an independent library', () => {
  it('has its notes where they were played in the bars, over the band and its chords', () => {
    const notes = placeInSong(
      [heardNote(['2D', 0.5, 0.9]), heardNote(['4D', 25, 25.5], { level: -14 })],
      program,
      0,
    );
    const file = readMidi(takeMidi(takePasses(eventsFrom(notes)), { title: 'Thursday', voices: VOICES }));
    const track = file.tracks.find(({ name }) => name === 'Harmonica');
    // 2 draw is G4 (67), 4 draw D5 (74); the second chorus begins after 12 bars of 1920 ticks.
    expect(notesOf(track).map(({ from, to, key }) => [from, to - from, key])).toEqual([
      [480, 384, 67],
      [12 * 1920 + 960, 480, 74],
    ]);
    const [soft, loud] = notesOf(track);
    expect(loud?.velocity).toBeGreaterThan(soft?.velocity ?? 0);
    expect(file.tracks.map(({ name }) => name)).toContain('Bass');
    expect(eventsOf(file.tracks[0], 'marker').map(({ text }) => text)).toContain('Chorus 2');
  });

  it('has every hole of a grip, which is one sign of the tab', () => {
    const [low, high] = [heardNote(['1D', 0.5, 0.9]), heardNote(['4D', 0.5, 0.9])];
    const grip = { ...low, together: high.sound === null ? [] : [high.sound] };
    const passes = takePasses(eventsFrom(placeInSong([grip], program, 0)));
    const track = readMidi(takeMidi(passes, { title: 'Thursday', voices: VOICES })).tracks.find(
      ({ name }) => name === 'Harmonica',
    );
    // 1 and 4 draw of a C harp are D4 and D5, an octave.
    expect(notesOf(track).map(({ from, to, key }) => [from, to - from, key])).toEqual([
      [480, 384, 62],
      [480, 384, 74],
    ]);
    const [pass] = writtenPasses(passes, choices);
    const bars = pass?.kind === 'free' ? [] : (pass?.bars ?? []);
    expect(
      bars[0]?.notes.map(({ sound, together }) => [sound, ...together].map((each) => each && soundId(each))),
    ).toEqual([['1D', '4D']]);
  });

  it('has a scoop as pitch bend, and what was played without a band at 120 beats a minute', () => {
    const movement = { start: asCents(-100), settling: asSeconds(0.1), end: asCents(0) };
    const note = heardNote(['4D', 3, 4], { movement });
    const passes = takePasses(
      eventsFrom([
        { note: heardNote(['4B', 1, 2]), playhead: null },
        { note, playhead: null },
      ]),
    );
    const file = readMidi(takeMidi(passes, { title: 'Thursday', voices: VOICES }));
    const track = file.tracks.find(({ name }) => name === 'Harmonica');
    expect(notesOf(track).map(({ from, to }) => [from, to])).toEqual([
      [0, 960],
      [1920, 2880],
    ]);
    const bends = eventsOf(track, 'pitchBend');
    expect(bends[0]?.at).toBe(1920);
    expect(bends[0]?.value).toBeLessThan(-3000);
    expect(bends.at(-1)?.value).toBe(0);
    expect(
      eventsOf(file.tracks[0], 'setTempo').map(({ microsecondsPerBeat }) => microsecondsPerBeat),
    ).toEqual([500_000]);
  });
});

describe('a tape', () => {
  const block = (at: number, value: number) => ({
    at,
    heard: new Int16Array(100).fill(value),
    sent: new Int16Array(100),
  });

  it('holds no more than it is made for, and knows the times of what it holds', () => {
    const tape = createTape(100, 3);
    for (let second = 10; second < 20; second += 1) tape.push(block(second, second));
    expect([tape.seconds(), tape.bytes(), tape.since()]).toEqual([3, tapeBytes(3, 100), 17]);
    const { heard, timeOf } = tape.contents();
    expect([heard.length, heard[0], heard[299]]).toEqual([300, 17, 19]);
    expect([timeOf(16), timeOf(17), timeOf(18.5), timeOf(25)]).toEqual([null, 0, 1.5, null]);
  });

  it('spends nothing on pauses of listening', () => {
    const tape = createTape(100, 10);
    tape.push(block(5, 1));
    tape.push(block(60, 2));
    expect(tape.seconds()).toBe(2);
    expect([5.5, 30, 60.5].map(tape.contents().timeOf)).toEqual([0.5, null, 1.5]);
  });

  it('takes 11.5 MB a minute at 48 kHz', () => {
    // 2 sides of 2 bytes, 48000 times a second (arithmetic).
    expect(tapeBytes(60, 48_000)).toBe(11_520_000);
  });
});

describe('a take over the band', () => {
  const RATE = 1000;
  /** A burst of so many ms at a second. */
  const burst = (at: number, value: number): Int16Array =>
    shortsOf(
      Float32Array.from({ length: 2 * RATE }, (_, i) =>
        i >= Math.round(at * RATE) && i < Math.round(at * RATE) + 100 ? value : 0,
      ),
    );
  const sound = { sampleRate: RATE, heard: burst(1.05, 0.02), sent: burst(1, 0.2), late: 0.05 };

  it('has both at the moment they were played at, about as loud, below the ceiling', () => {
    const mix = takeMix(sound, 'band');
    const whole = mix.piece(0, mix.frames);
    const heard = [...whole.entries()].filter(([, value]) => value > 1e-3);
    expect([heard[0]?.[0], heard.at(-1)?.[0]]).toEqual([1000, 1099]);
    // The harp comes 2 dB above the band's 0.2: 0.2 + 0.25.
    expect(whole[1050]).toBeCloseTo(0.452, 2);
    const loud = takeMix({ ...sound, sent: burst(1, 0.9) }, 'band');
    expect(Math.max(...loud.piece(0, loud.frames))).toBeLessThanOrEqual(0.9);
  });

  it('is the same in pieces', () => {
    const mix = takeMix(sound, 'band');
    const pieces = [0, 700, 1400].flatMap((from) => [...mix.piece(from, 700)]);
    expect(pieces).toEqual([...mix.piece(0, mix.frames)]);
  });

  it('is the microphone alone where that is asked for', () => {
    const mix = takeMix(sound, 'alone');
    expect(shortsOf(mix.piece(0, mix.frames))).toEqual(sound.heard);
  });
});

describe('a typed time', () => {
  it('is seconds, or minutes and seconds', () => {
    expect(
      ['12.5', '1:05', ' 0 ', '3,5', '-1', 'soon', '1:2:3', '99999999']
        .map(readSeconds)
        .map((each) => (typeof each === 'string' ? '?' : each)),
    ).toEqual([12.5, 65, 0, 3.5, '?', '?', '?', '?']);
  });
});
