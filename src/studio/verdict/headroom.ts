import { millilitres, type Millilitres } from '../../glaze/units.ts';

/** The part of a pail that may be full so that it can still be stirred: common practice. */
export const usablePart = 0.95;

/** How much more fits into a pail, with room left to stir. */
export const headroom = (pail: Millilitres, held: number): Millilitres =>
  millilitres(Math.max(0, usablePart * pail - held));
