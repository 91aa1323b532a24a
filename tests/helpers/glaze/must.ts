import type { Checked } from '../../../src/glaze/checked.ts';

/** The value of a formula; throws if the formula refuses. */
export const must = <T>(result: Checked<T>): T => {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.outOfRange)}`);
  return result.value;
};
