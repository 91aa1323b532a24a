import type { Checked } from '../../../src/glaze/checked.ts';

/** The value of a formula that must not refuse here. */
export const must = <T>(result: Checked<T>): T => {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.outOfRange)}`);
  return result.value;
};
