import fc from 'fast-check';
import { writeMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { barTicks, METERS } from '../../../src/core/chart/build-chart';
import { phraseMidi } from '../../../src/core/formats/phrase-midi';
import { readMidiFile } from '../../../src/core/formats/read-midi';
import { EVERY_TECHNIQUE } from '../../../src/core/harp/reach';
import { abcMelody } from '../../../src/core/melody/abc-melody';
import type { Melody } from '../../../src/core/melody/melody';
import { harpsForMelody } from '../../../src/core/melody/melody-harps';
import { midiMelodies } from '../../../src/core/melody/midi-melody';
import { musicXmlMelodies } from '../../../src/core/melody/musicxml-melody';
import { onHarp } from '../../../src/core/phrase/phrase';
import type { XmlNode } from '../../../src/core/sheets/xml-node';
import { asTicks } from '../../../src/core/theory/units';
import { notesOf, readMidi } from '../../helpers/midi-reading';
import { readXml } from '../../helpers/musicxml-reading';
import { anyHarpPhrase } from '../../helpers/phrase-arbitraries';
import { soakRuns } from '../../helpers/soak';

const only = (read: readonly Melody[] | Melody | string): Melody => {
  if (typeof read === 'string') throw new Error(read);
  const melody = 'notes' in read ? read : read[0];
  if (melody === undefined) throw new Error('no melody');
  return melody;
};

/** `key+length` words, `r` for rests. */
const row = (melody: Melody): string =>
  melody.notes.map(({ key, length }) => `${key ?? 'r'}+${length}`).join(' ');

const abc = (...lines: readonly string[]): Melody => only(abcMelody(['X:1', ...lines].join('\n')));

describe('a melody in ABC', () => {
  // Standard 2.1: §4.1 pitch, §4.2 accidentals, §4.3 lengths, §4.4 broken rhythm, §4.11 ties, §4.13 tuplets.
  it.each([
    ['middle C and octaves', ['L:1/4', 'K:C', "C c c' C,|"], '60+480 72+480 84+480 48+480'],
    ['the signature', ['L:1/4', 'K:D', 'F C B A|'], '66+480 61+480 71+480 69+480'],
    ['modes: E Dorian has two sharps', ['L:1/4', 'K:Edor', 'E F G c|'], '64+480 66+480 67+480 73+480'],
    [
      'signs up to the bar line',
      ['L:1/4', 'K:C', '^F F =F F|F2 _B2|'],
      '66+480 66+480 65+480 65+480 65+960 70+960',
    ],
    [
      'lengths',
      ['L:1/8', 'K:C', 'C2 D/ E/ F3 G//G// z/ z|'],
      '60+480 62+120 64+120 65+720 67+60 67+60 r+360',
    ],
    ['broken rhythm', ['L:1/4', 'K:C', 'C>D E<F|'], '60+720 62+240 64+240 65+720'],
    ['triplets', ['L:1/8', 'K:C', '(3CDE F2 G4|'], '60+160 62+160 64+160 65+480 67+960'],
    ['ties', ['L:1/4', 'K:C', 'C3 D-|D2 E2|'], '60+1440 62+1440 64+960'],
    [
      'five in a compound meter',
      ['M:6/8', 'L:1/8', 'K:C', '(5CDEFG C3|'],
      '60+144 62+144 64+144 65+144 67+144 60+720',
    ],
    ['another length within a line', ['L:1/4', 'K:C', 'C2 [L:1/8]D2 E2|'], '60+960 62+480 64+480'],
    ['voices laid over each other', ['L:1/4', 'K:C', 'c2 d2 & E4|e4|'], '72+960 74+960 76+1920'],
    [
      'voices that the head declares',
      ['L:1/4', 'V:1', 'V:2', 'K:D', '[V:1] F2 c2|', '[V:2] D4|', 'V:1', 'd4|'],
      '66+960 73+960 74+1920',
    ],
    ['no upbeat in free meter', ['M:none', 'L:1/4', 'K:C', 'G.|C2 E2|'], '67+480 60+960 64+960 r+1440'],
    ['an upbeat before its bar', ['L:1/4', 'K:C', 'G|C2 E2|'], 'r+1440 67+480 60+960 64+960'],
  ])('%s', (_, lines, expected) => {
    expect(row(abc(...lines))).toBe(expected);
  });

  it('takes the first voice, ending and tune, the highest of a chord, and says so', () => {
    const melody = abc('T:Door bell', 'M:2/4', 'L:1/4', 'K:G', '|:G [GBd]|1 A2:|2 B2|]', 'V:2', 'C C|');
    expect(row(melody)).toBe('67+480 74+480 69+960');
    expect(melody).toMatchObject({ name: 'Door bell', meter: '4/4', tonic: 7 });
    expect(melody.left).toEqual([
      'What is repeated was read once.',
      'Of notes that begin together the highest was taken.',
      'Of several endings the first was read.',
      'Only the first voice was read.',
      'Its meter, 2/4, is written in bars of 4/4; the lengths stay.',
    ]);
  });

  it('is at most sixteen bars, and counts what it leaves out', () => {
    const melody = abc('L:1/1', 'K:C', 'C|'.repeat(20));
    expect(melody.notes).toHaveLength(16);
    expect(melody.left).toEqual(['A phrase holds 16 bars: 4 notes after them were left out.']);
  });
});

const note = (step: string, octave: number, duration: number, more = ''): string =>
  `<note>${more}<pitch><step>${step}</step><octave>${octave}</octave></pitch><duration>${duration}</duration><voice>1</voice></note>`;

const score = (...measures: readonly string[]): XmlNode =>
  readXml(
    `<score-partwise><part-list><score-part id="P1"><part-name>Harp</part-name></score-part></part-list><part id="P1">${measures
      .map((inner) => `<measure>${inner}</measure>`)
      .join('')}</part></score-partwise>`,
  );

const HEAD =
  '<attributes><divisions>2</divisions><key><fifths>-1</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time></attributes>';

describe('a melody in MusicXML', () => {
  // MusicXML 4.0: divisions of a quarter, chord, tie, backup, transpose.
  it('reads pitches, lengths, chords, ties, rests and second voices', () => {
    const tie = '<tie type="stop"/>';
    const melody = only(
      musicXmlMelodies(
        score(
          `${HEAD}${note('F', 4, 2)}${note('A', 4, 2, '<chord/>')}<note><rest/><duration>2</duration><voice>1</voice></note>${note('C', 5, 4)}`,
          `${note('C', 5, 4, tie)}${note('G', 4, 4)}<backup><duration>8</duration></backup>${note('C', 3, 8).replace('<voice>1', '<voice>2')}`,
        ),
      ),
    );
    expect(row(melody)).toBe('69+480 r+480 72+1920 67+960');
    expect(melody).toMatchObject({ name: 'Harp', meter: '4/4', tonic: 5 });
    expect(melody.left).toEqual([
      'Only the first voice was read.',
      'Of notes that begin together the highest was taken.',
    ]);
  });

  it('sounds as a transposing part says', () => {
    const inB = HEAD.replace(
      '</attributes>',
      '<transpose><chromatic>-2</chromatic></transpose></attributes>',
    );
    expect(row(only(musicXmlMelodies(score(`${inB}${note('D', 5, 8)}`))))).toBe('72+1920');
  });

  it('refuses what is none in words', () => {
    expect(musicXmlMelodies(readXml('<score-timewise/>'))).toContain('partwise');
    expect(musicXmlMelodies(readXml('<html/>'))).toContain('no MusicXML');
    expect(musicXmlMelodies(score(HEAD))).toContain('no notes');
  });
});

describe('a melody in MIDI', () => {
  it('reads what an independent writer (midi-file) wrote: running status, two channels, percussion aside', () => {
    const on = (deltaTime: number, noteNumber: number, channel = 0) =>
      ({ type: 'noteOn', deltaTime, noteNumber, channel, velocity: 90 }) as const;
    const off = (deltaTime: number, noteNumber: number, channel = 0) =>
      ({ type: 'noteOff', deltaTime, noteNumber, channel, velocity: 0 }) as const;
    const bytes = writeMidi(
      {
        header: { format: 1, numTracks: 2, ticksPerBeat: 96 },
        tracks: [
          [
            {
              type: 'timeSignature',
              deltaTime: 0,
              numerator: 3,
              denominator: 4,
              metronome: 24,
              thirtyseconds: 8,
            },
            { type: 'keySignature', deltaTime: 0, key: 1, scale: 0 },
            { type: 'endOfTrack', deltaTime: 0 },
          ],
          [
            { type: 'trackName', deltaTime: 0, text: 'Tune' },
            ...[on(0, 67), on(0, 40, 2), on(0, 38, 9), off(96, 67), on(0, 71), off(48, 71), off(0, 40, 2)],
            ...[off(0, 38, 9), on(48, 74), off(96, 74)],
            { type: 'endOfTrack', deltaTime: 0 },
          ],
        ],
      },
      { running: true },
    );
    const melodies = midiMelodies(new Uint8Array(bytes));
    expect(typeof melodies === 'string' ? melodies : melodies.map(({ name }) => name)).toEqual([
      'Tune, channel 1',
      'Tune, channel 3',
    ]);
    expect(row(only(melodies))).toBe('67+480 71+240 r+240 74+480');
    expect(only(melodies)).toMatchObject({ meter: '3/4', tonic: 7, left: [] });
  });

  it('takes notes that were played in to the nearest sixteenth or triplet, and says so', () => {
    const at = [3, 251, 470, 735, 951];
    const events = at.flatMap((tick, i) => [
      {
        type: 'noteOn',
        deltaTime: i === 0 ? tick : tick - (at[i - 1] ?? 0) - 200,
        noteNumber: 60 + i,
        channel: 0,
        velocity: 80,
      } as const,
      { type: 'noteOff', deltaTime: 200, noteNumber: 60 + i, channel: 0, velocity: 0 } as const,
    ]);
    const bytes = writeMidi({
      header: { format: 0, numTracks: 1, ticksPerBeat: 480 },
      tracks: [[...events, { type: 'endOfTrack', deltaTime: 0 }]],
    });
    const melody = only(midiMelodies(new Uint8Array(bytes)));
    expect(row(melody)).toBe('60+240 61+240 62+240 63+240 64+160 r+800');
    expect(melody.left).toEqual(['The notes were played in: each went to the nearest sixteenth or triplet.']);
  });

  it('gives back the phrase that was written, on the harp it was written for; a second reader finds the same notes', () => {
    fc.assert(
      fc.property(anyHarpPhrase, ({ harp, phrase }) => {
        const bar = barTicks(METERS[phrase.meter]);
        const [first] = phrase.notes;
        const last = phrase.notes.at(-1);
        if (first === undefined || last === undefined) return;
        const from = Math.floor(first.at / bar) * bar;
        if (last.at + last.length - from > 16 * bar) return;
        const bytes = phraseMidi(phrase, { name: 'Round', harp, tempo: 96 });
        const keys = notesOf(readMidi(bytes).tracks[0]);
        expect(keys).toHaveLength(
          onHarp(phrase, harp).notes.reduce(
            (sum, { sounds }) => sum + new Set(sounds.map(({ pitch }) => pitch)).size,
            0,
          ),
        );
        const melody = only(midiMelodies(bytes));
        expect(melody.left.filter((each) => !each.includes('empty bar'))).toEqual([]);
        const search = { tuning: harp.tuning, technique: EVERY_TECHNIQUE, meter: phrase.meter };
        const [best] = harpsForMelody(melody.notes, search);
        expect(best?.harpKey).toBe(harp.key);
        expect(best?.phrase.notes).toEqual(
          phrase.notes.map((each) => ({ ...each, at: asTicks(each.at - from) })),
        );
      }),
      { numRuns: soakRuns(1000) },
    );
  });

  it('never throws: cut short, with bytes changed, or of any bytes; and refuses in words', () => {
    fc.assert(
      fc.property(
        anyHarpPhrase,
        fc.nat(),
        fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 5 }),
        (made, cut, changes) => {
          const bytes = phraseMidi(made.phrase, { name: 'x', harp: made.harp, tempo: 60 });
          for (const [at, value] of changes) bytes[at % bytes.length] = value;
          const read = midiMelodies(bytes.subarray(0, cut % (bytes.length + 1)));
          return typeof read === 'string' ? read.length > 20 : read.every(({ notes }) => notes.length > 0);
        },
      ),
      { numRuns: soakRuns(400) },
    );
    expect(readMidiFile(new Uint8Array([1, 2, 3]))).toContain('no MIDI file');
    expect(readMidiFile(new Uint8Array(1_000_001))).toContain('1 MB');
    const frames = Uint8Array.from('MThd\0\0\0\x06\0\0\0\x01', (letter) => letter.charCodeAt(0));
    expect(readMidiFile(new Uint8Array([...frames, 0xe7, 0x28]))).toContain('film frames');
  });
});
