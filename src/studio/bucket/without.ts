/**
 * A thing without one of its fields; the same thing when it has none. Node keeps a thing that a field was deleted from
 * as a table, and takes a hundred times as long to copy it: a bucket's state is copied several times for an entry.
 */
export const without = <T extends object, Name extends keyof T>(one: T, name: Name): Omit<T, Name> => {
  if (!(name in one)) return one;
  const { [name]: _, ...rest } = one;
  return rest;
};
