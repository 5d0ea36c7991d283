import { describe, expect, it } from 'vitest';
import { FEELS, feelOf } from '../../../src/core/feels/feels';
import { TEMPO_RANGE } from '../../../src/core/settings/tempo';

describe('feels', () => {
  it.each(FEELS)('$name has an id and a name of its own', (feel) => {
    expect(feelOf(feel.id)).toBe(feel);
    expect(FEELS.filter(({ id, name }) => id === feel.id || name === feel.name)).toEqual([feel]);
  });

  it.each(FEELS)('$name starts inside its tempo range, which the page can set', ({ tempo }) => {
    expect(tempo.low < tempo.usual && tempo.usual < tempo.high).toBe(true);
    expect(tempo.low).toBeGreaterThanOrEqual(TEMPO_RANGE.low);
    expect(tempo.high).toBeLessThanOrEqual(TEMPO_RANGE.high);
  });
});
