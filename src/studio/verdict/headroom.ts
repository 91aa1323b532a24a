import { millilitres, type Millilitres } from '../../glaze/units.ts';

/** So much of a pail may be full that it can still be stirred: common practice. */
export const usablePart = 0.95;

/** What may still go into a pail, with room left to stir. */
export const headroom = (pail: Millilitres, held: number): Millilitres =>
  millilitres(Math.max(0, usablePart * pail - held));
