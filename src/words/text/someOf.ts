/** So many of something: `1 line`, `3 lines`. */
export const someOf = (count: number, one: string, many: string): string =>
  `${count} ${count === 1 ? one : many}`;
