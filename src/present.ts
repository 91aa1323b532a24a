/** Leaves out of a list what is not there, so that an item can hang on a condition. */
export const present = <T>(all: readonly (T | undefined | null | false)[]): T[] =>
  all.filter((one): one is T => one !== undefined && one !== null && one !== false);
