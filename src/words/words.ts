import type { en } from './en.ts';

/** Every sentence that a person reads. Another language satisfies the same type. */
export type Words = typeof en;
