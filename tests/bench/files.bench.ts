import { bench, describe } from 'vitest';
import { midiMelodies } from '../../src/core/melody/midi-melody';
import { readAbc } from '../../src/core/sheets/read-abc';
import { measured } from '../helpers/bench-depth';

/**
 * Files as full as they may be, of what once took every part to be compared with every other: minutes for a file
 * that now takes less than a second. Each must grow with its file and no faster.
 */

/** A MIDI file of one track of notes as fast as a file can hold them, by running status: delta, key, velocity. */
const flood = (count: number, velocity: (i: number) => number): Uint8Array => {
  const size = 3 * count + 1;
  const file = new Uint8Array(22 + size);
  file.set([0x4d, 0x54, 0x68, 0x64, 0, 0, 0, 6, 0, 0, 0, 1, 1, 0xe0, 0x4d, 0x54, 0x72, 0x6b]);
  new DataView(file.buffer).setUint32(18, size);
  for (let i = 0; i < count; i += 1) file.set([i % 7, 60, velocity(i)], 23 + 3 * i);
  file.set([0, 0x90], 22);
  return file;
};

describe('a MIDI file grows with its notes', () => {
  for (const count of measured([19_000, 190_000], [1900])) {
    const stuck = flood(count, () => 100);
    const played = flood(count, (i) => 100 * (1 - (i % 2)));
    bench(`${count} notes that never end`, () => {
      midiMelodies(stuck);
    });
    bench(`${count / 2} notes played one after the other`, () => {
      midiMelodies(played);
    });
  }
});

describe('an ABC tune grows with its line', () => {
  for (const length of measured([48_000, 480_000], [4800])) {
    for (const [what, filling] of [
      ['brackets that stay open', '['],
      ['signs without a note', '^'],
      ['rests of many bars', '|Z9999'],
    ] as const) {
      const tune = `X:1\nK:C\n"C"${filling.repeat(length / filling.length)}`;
      bench(`${length} characters: ${what}`, () => {
        readAbc(tune);
      });
    }
  }
});
