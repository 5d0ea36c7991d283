import { describe, expect, it } from 'vitest';
import { addNote, beginNote, cutNote, type MixNote } from '../../../../src/audio/export/note-samples';

const RATE = 48_000;

const note = (until: number, release: number): MixNote => ({
  part: 'bass',
  pitch: 31,
  voice: 'upright-bass',
  sound: 1,
  rate: 1,
  glide: { ratio: 1, seconds: 0 },
  envelope: { at: 0, level: 1, until, release },
});

describe('a note of a file', () => {
  it('that is cut while it is let go dies away by the cut, as a source of the browser does', () => {
    const sound = { samples: new Float32Array(RATE).fill(1), loop: null };
    const ringing = beginNote(note(0.1, 0.03), sound, RATE);
    // 10 ms before it would be over.
    cutNote(ringing, 0.12, RATE);
    const out = new Float32Array(0.2 * RATE);
    addNote(out, ringing, 0, { scratch: new Float32Array(out.length), sampleRate: RATE });
    // "setTargetAtTime" (Web Audio API): the level there times e to the minus time by the constant, 2 ms here.
    for (const after of [0, 0.001, 0.005, 0.0105, 0.015, 0.019])
      expect(out[Math.round((0.12 + after) * RATE)]).toBeCloseTo((1 / 3) * Math.exp(-after / 0.002), 5);
    expect(out[Math.ceil(0.1401 * RATE)]).toBe(0);
  });

  it('that is cut ends with its samples all the same', () => {
    const sound = { samples: new Float32Array(0.125 * RATE).fill(1), loop: null };
    const ringing = beginNote(note(0.1, 0.03), sound, RATE);
    cutNote(ringing, 0.12, RATE);
    expect(ringing.end).toBe(0.125 * RATE);
  });
});
