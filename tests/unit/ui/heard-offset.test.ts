import { expect, it } from 'vitest';
import { asHz, asSeconds } from '../../../src/core/theory/units';
import { offsetOf } from '../../../src/ui/ear/heard-offset';
import { heardNote } from '../../helpers/heard-note';

it('writes the cents of the reed that is lit, and none of the note that follows it', () => {
  // 4 draw of a C harp is D5, 587.33 Hz (equal temperament); C5, two semitones lower, is another note.
  const ended = { ...heardNote(['4D', 1, 2]), offset: null };
  const note = { ...ended, to: null };
  const hz = (cents: number) => asHz(587.3295 * 2 ** (cents / 1200));
  expect(offsetOf(note, hz(-35), asHz(440))).toBeCloseTo(-35, 1);
  // A bend on its way down has not been named yet.
  expect(offsetOf(note, hz(-100), asHz(440))).toBeCloseTo(-100, 1);
  expect(offsetOf(note, hz(-200), asHz(440))).toBeNull();
  expect(offsetOf({ ...ended, to: asSeconds(2) }, hz(-35), asHz(440))).toBeNull();
});
