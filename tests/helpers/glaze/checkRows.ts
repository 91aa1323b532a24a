import { describe, expect, it } from 'vitest';
import { allowance, referenceRows, type ReferenceRow } from './referenceRows.ts';

/** The formula for a row: the first pattern that matches the row's id without its topic. */
export type Formulas = readonly (readonly [pattern: RegExp, formula: (row: ReferenceRow) => number])[];

/**
 * Declares a test for every row of these topics. It fails for a row without a formula, and for a topic without rows.
 */
export const checkRows = (topics: Readonly<Record<string, Formulas>>): void => {
  for (const [topic, formulas] of Object.entries(topics)) {
    const rows = referenceRows.filter((row) => row.topic === topic);
    describe(`published and independently computed values of ${topic}`, () => {
      it('are there', () => expect(rows).not.toHaveLength(0));

      it.each(rows)('$id: $quantity [$seen] $source', (row) => {
        const name = row.id.slice(topic.length + 1);
        const formula = formulas.find(([pattern]) => pattern.test(name))?.[1];
        if (!formula) throw new Error(`no formula for ${row.id}`);
        const value = formula(row);
        const off = Math.abs(value - row.expected.value);
        expect(off, `ours is ${value} ${row.expected.unit}`).toBeLessThanOrEqual(
          allowance(row) * (1 + 1e-12),
        );
        const [low = value, high = value] = row.expected.range ?? [];
        expect(value).toBeGreaterThanOrEqual(low);
        expect(value).toBeLessThanOrEqual(high);
      });
    });
  }
};
