/** Each of them once, in order: what was logged and what is to be done may warn of the same thing. */
export const onceEach = <T>(all: readonly T[]): T[] => [
  ...new Map(all.map((one) => [JSON.stringify(one), one])).values(),
];
