import type { z } from 'zod';

/** An intersection, or what extends another interface, as the plain object that it comes to. */
type Flat<T> = T extends string | number | boolean
  ? T
  : T extends readonly (infer Item)[]
    ? Flat<Item>[]
    : { [Key in keyof T]: Flat<T[Key]> };

type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;

/** Fails to compile unless a schema yields its type exactly: a forgotten field, optional or not, is a type error. */
export type Exactly<E, S extends z.ZodType> = Same<Flat<E>, Flat<z.output<S>>> extends true ? S : never;
