import { describe, expect, it } from 'vitest';
import { createVariedNotes } from '../../../../src/audio/soundfont/varied-note';
import type { VoiceNote, VoiceSound } from '../../../../src/audio/synthesis/voice';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asMidi, asSeconds } from '../../../../src/core/theory/units';
import { firstDifference } from '../../../helpers/samples';

const RATE = 48_000;
const SECONDS = 6;

/** A tone that dies away, whatever the key. */
const TONE = Float32Array.from(
  { length: SECONDS * RATE },
  (_, i) => 0.3 * Math.exp(-i / RATE) * Math.sin((2 * Math.PI * 262 * i) / RATE),
);

/** A renderer, and what it was asked for. */
const rendering = (loop: VoiceSound['loop'] = null) => {
  const asked: VoiceNote[] = [];
  const render = (_: unknown, note: VoiceNote): VoiceSound => {
    asked.push(note);
    return { samples: TONE, loop, release: asSeconds(0.2) };
  };
  return { asked, render };
};

const noteAt = (midi: number, rest: Partial<VoiceNote> = {}): VoiceNote => ({
  midi: asMidi(midi),
  hz: hzOf(asMidi(midi)),
  velocity: 100,
  sampleRate: RATE,
  seed: 2,
  ...rest,
});

describe('notes made of one recording', () => {
  it('of which it is known how long they are held are the beginning of the whole, sample for sample', () => {
    for (const [voice, held] of [
      ['piano', 0.3],
      ['piano', 2.5],
      ['sticks', 0.1],
    ] as const) {
      const whole = createVariedNotes(rendering().render)(voice, noteAt(60))?.samples;
      const part = createVariedNotes(rendering().render)(voice, noteAt(60, { held }))?.samples;
      expect(part?.length).toBeGreaterThanOrEqual((held + 0.2) * RATE);
      expect(part?.length).toBeLessThan((held + 1.5) * RATE);
      expect(firstDifference(part ?? [], whole?.subarray(0, part?.length) ?? [])).toBe(-1);
    }
  });

  it('are whole where the sound goes round', () => {
    const { render } = rendering({ from: RATE, to: 2 * RATE });
    expect(createVariedNotes(render)('organ', noteAt(60, { held: 0.1 }))?.samples.length).toBe(
      SECONDS * RATE,
    );
  });

  it('are rendered once a key in a song of fifty, as far as short notes go, and whole for longer ones', () => {
    const { asked, render } = rendering();
    const varied = createVariedNotes(render);
    const play = (held: number) => {
      for (let midi = 36; midi < 86; midi += 1) varied('piano', noteAt(midi, { held }));
    };
    play(0.2);
    play(0.4);
    expect(asked.length).toBe(50);
    expect(asked.every((note) => note.held === 1.9)).toBe(true);
    play(3);
    play(0.2);
    expect(asked.length).toBe(100);
    expect(asked.slice(50).every((note) => note.held === undefined)).toBe(true);
  });

  it('are as loud whichever stroke is asked for first', () => {
    const { asked, render } = rendering();
    createVariedNotes(render)('piano', noteAt(60, { seed: 3 }));
    expect(asked.map(({ seed }) => seed)).toEqual([0]);
  });

  it('of kits are rendered whole', () => {
    const { asked, render } = rendering();
    createVariedNotes(render)('sticks', noteAt(51, { held: 0.1 }));
    expect(asked.map(({ held }) => held)).toEqual([undefined]);
  });

  it('of more keys than are kept are rendered again, those first that were not asked for longest', () => {
    const { asked, render } = rendering();
    const varied = createVariedNotes(render);
    for (let midi = 30; midi < 90; midi += 1) varied('piano', noteAt(midi, { held: 0.1 }));
    varied('piano', noteAt(89, { held: 0.1 }));
    expect(asked.length).toBe(60);
    varied('piano', noteAt(30, { held: 0.1 }));
    expect(asked.length).toBe(61);
  });
});
