type Given<T> = { [Key in keyof T as undefined extends T[Key] ? never : Key]: T[Key] };
type Perhaps<T> = { [Key in keyof T as undefined extends T[Key] ? Key : never]?: Exclude<T[Key], undefined> };

/** Leaves out what is undefined, so that an optional field is absent rather than undefined. */
export const definedOnly = <T extends object>(fields: T): Given<T> & Perhaps<T> => {
  const defined: Record<string, unknown> = {};
  for (const name of Object.keys(fields)) {
    const value = fields[name as keyof T];
    if (value !== undefined) defined[name] = value;
  }
  return defined as Given<T> & Perhaps<T>;
};
