import type { z } from 'zod';

/** A type error unless a schema yields its event exactly: a missing field, optional or not, does not compile. */
export type Exactly<E, S extends z.ZodType> =
  (<T>() => T extends E ? 1 : 2) extends <T>() => T extends z.output<S> ? 1 : 2 ? S : never;
