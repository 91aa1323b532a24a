/** Removes repeats and keeps the order: the logged entry and the next step may have the same caution. */
export const onceEach = <T>(all: readonly T[]): T[] => [
  ...new Map(all.map((one) => [JSON.stringify(one), one])).values(),
];
