type Given<T> = { [Key in keyof T as undefined extends T[Key] ? never : Key]: T[Key] };
type Perhaps<T> = { [Key in keyof T as undefined extends T[Key] ? Key : never]?: Exclude<T[Key], undefined> };

/** Leaves out what is undefined, so that an optional field is absent rather than undefined. */
export const definedOnly = <T extends object>(fields: T): Given<T> & Perhaps<T> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Given<T> &
    Perhaps<T>;
