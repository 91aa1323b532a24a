import type { z } from 'zod';

/** Fails to compile unless a schema yields its event exactly: a forgotten field, optional or not, is a type error. */
export type Exactly<E, S extends z.ZodType> =
  (<T>() => T extends E ? 1 : 2) extends <T>() => T extends z.output<S> ? 1 : 2 ? S : never;
