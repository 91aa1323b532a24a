import { gravity } from '../../glaze/units.ts';

/** The gravity of a bucket's dry powder until a keeper says another (common practice: clay, feldspar and silica lie near it). */
export const usualSolids = gravity(2.6);
