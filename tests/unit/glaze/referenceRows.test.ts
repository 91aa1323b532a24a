import { expect, it } from 'vitest';
import { referenceRows } from '../../helpers/glaze/referenceRows.ts';

it('no reference row is there twice, and none has lost its source or its mark', () => {
  expect(new Set(referenceRows.map(({ id }) => id)).size).toBe(referenceRows.length);
  for (const { id, source, seen } of referenceRows) {
    expect(source, id).not.toBe('');
    expect(['seen', 'computed', 'memory'], id).toContain(seen);
  }
});

it('every row that the formulas are held to is there', () => {
  const mine = referenceRows.filter(({ topic }) => topic !== 'timezone');
  expect(mine.length).toBeGreaterThanOrEqual(254);
});
