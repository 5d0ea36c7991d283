import { describe, expect, it } from 'vitest';
import { createVariedNotes } from '../../../../src/audio/soundfont/varied-note';
import type { VoiceNote, VoiceSound } from '../../../../src/audio/synthesis/voice';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asMidi, asSeconds } from '../../../../src/core/theory/units';

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
      expect(part).toEqual(whole?.slice(0, part?.length));
    }
  });

  it('are whole where the sound goes round', () => {
    const { render } = rendering({ from: RATE, to: 2 * RATE });
    expect(createVariedNotes(render)('organ', noteAt(60, { held: 0.1 }))?.samples.length).toBe(
      SECONDS * RATE,
    );
  });

  it('are rendered once a key in a song of fifty, whole, however long each is held', () => {
    const { asked, render } = rendering();
    const varied = createVariedNotes(render);
    for (const held of [0.2, 0.4]) {
      for (let midi = 36; midi < 86; midi += 1) varied('piano', noteAt(midi, { held }));
    }
    expect(asked.length).toBe(50);
    expect(asked.every((note) => note.held === undefined)).toBe(true);
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
