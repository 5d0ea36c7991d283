import { describe, expect, it } from 'vitest';
import { yearUpTo } from '../../../src/core/log/year';

describe('the year of practice', () => {
  // 2026-11-25 was a Wednesday (ISO 8601 calendar; checked against `date -d`).
  it('ends with today, however long ago was practised last', () => {
    const days = ['2025-11-23', '2025-11-24', '2026-11-08', '2026-11-25', '2026-12-01', '9999-12-31'].map(
      (day) => ({ day, minutes: 10 }),
    );
    expect(yearUpTo(days, '2026-11-25').map(({ day, week, weekday }) => [day, week, weekday])).toEqual([
      ['2025-11-24', 0, 0],
      ['2026-11-08', 49, 6],
      ['2026-11-25', 52, 2],
    ]);
  });
});
